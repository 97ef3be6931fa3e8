"""What does each person still need, and what is on the rack? Sizes and ids are already gone.

A level is a moment: 0 is now, each later one an arrival. Something of level 2 is there from the
third moment on. A person rides from the level at which every need is met, and keeps what was given.
"""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Stock:
    """Spares that are alike in every way that matters here.

    Args:
        level: from which moment they are there.
        count: how many.
    """

    level: int
    count: int


@dataclass(frozen=True, kw_only=True)
class Need:
    """One place of the outfit a person must fill, with own gear or with one spare.

    Args:
        own: the moment from which own gear fills it; None is never, as far as known.
        stocks: the indices of the stocks that fit.
        misfits: per stock that fits, how far from a perfect fit, in thousandths; same order.
    """

    own: int | None = None
    stocks: tuple[int, ...] = ()
    misfits: tuple[int, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Seeker:
    """One person who would ride.

    Args:
        priority: how much this person counts against others, at least 1.
        crew: the index of the crew whose minimum this person counts towards; None towards none.
    """

    needs: tuple[Need, ...]
    priority: int = 1
    crew: int | None = None


@dataclass(frozen=True, kw_only=True)
class Demand:
    """The whole question.

    Args:
        levels: how many moments there are, at least 1.
        minimums: per crew, how many must ride now for it to be at strength.
    """

    levels: int
    stocks: tuple[Stock, ...]
    seekers: tuple[Seeker, ...]
    minimums: tuple[int, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """Who rides from which moment, and how well that is established.

    Args:
        levels: per seeker, the moment; None is not at all.
        best_now: whether it is proven that no distribution does better now.
        best_later: whether the same is proven for every later moment, in their order.
        most_now: no distribution lets more people ride now.
    """

    levels: tuple[int | None, ...]
    best_now: bool
    best_later: bool
    most_now: int
