"""Who rides in what, and who does not, why, and until when?"""

from dataclasses import dataclass

from sootline.core.basis import Finding, MemberId, MinuteSpan
from sootline.core.riding.fit import Dimension
from sootline.core.riding.situation import Slot, Unit


@dataclass(frozen=True, kw_only=True)
class Worn:
    """What fills one place of a rider's outfit.

    Args:
        handed: whether it is a spare given out by this answer.
        dimensions: how a spare given out fits; none for what the member has already.
    """

    slot: Slot
    unit: Unit
    handed: bool
    dimensions: tuple[Dimension, ...] = ()


@dataclass(frozen=True, kw_only=True)
class CanRide:
    """One member who can ride, in what.

    Args:
        since: from which minute on.
        interior: whether the member counts for interior work.
    """

    member: MemberId
    crew: str
    since: int
    interior: bool
    outfit: tuple[Worn, ...]


@dataclass(frozen=True, kw_only=True)
class NearMiss:
    """A spare that does not serve, and what is in its way."""

    unit: Unit
    dimensions: tuple[Dimension, ...] = ()
    reasons: tuple[Finding, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Gap:
    """One place of an outfit that stays empty.

    Args:
        own: what the member has for it, not wearable now.
        nearest: the spare that comes closest without fitting, and spares that lack a part.
        taken: spares that fit and are needed for others.
        back: when own gear fills it; None is not known.
        failed: the dimensions in which the nearest spare fails; "none here" is empty.
    """

    slot: Slot
    own: tuple[Unit, ...]
    nearest: tuple[NearMiss, ...]
    taken: tuple[Unit, ...]
    back: MinuteSpan | None

    @property
    def failed(self) -> tuple[str, ...]:
        """Name the dimensions in which the nearest wearable spare fails."""
        failing = (miss.dimensions for miss in self.nearest if miss.dimensions)
        return tuple(one.name for one in next(failing, ()))


@dataclass(frozen=True, kw_only=True)
class CannotRide:
    """One member who cannot ride, and everything in the way.

    Args:
        interior: whether the member is qualified for interior work.
        gaps: what no spare fills; where every gap could be filled but for others, those.
        earliest: when the member rides as far as known: earliest, likely, late; None is unknown.
        in_spare: whether that is in a spare or loan kept for the member, not in own gear.
    """

    member: MemberId
    crew: str
    interior: bool
    gaps: tuple[Gap, ...]
    earliest: MinuteSpan | None
    in_spare: bool = False


@dataclass(frozen=True, kw_only=True)
class CrewStatus:
    """Whether a crew has its minimum of interior-qualified riders."""

    crew: str
    interior: int
    minimum: int

    @property
    def met(self) -> bool:
        """Whether the minimum is met."""
        return self.interior >= self.minimum


@dataclass(frozen=True, kw_only=True)
class Coverage:
    """Who rides at one moment.

    Args:
        minute: from now.
        arrived: the spares and loans that are there since the moment before.
    """

    minute: int
    arrived: tuple[Unit, ...]
    can: tuple[CanRide, ...]
    cannot: tuple[CannotRide, ...]
    crews: tuple[CrewStatus, ...]


@dataclass(frozen=True, kw_only=True)
class Riding:
    """Who can ride now and at each arrival, by one handing-out that serves them all.

    Args:
        moments: now first.
        best_now: whether it is proven that nobody more could ride now.
        best_later: whether the same is proven at each arrival.
        most_now: no distribution lets more people ride now.
    """

    moments: tuple[Coverage, ...]
    away: tuple[MemberId, ...]
    best_now: bool
    best_later: bool
    most_now: int

    @property
    def now(self) -> Coverage:
        """Who can ride now."""
        return self.moments[0]
