"""How much could be reached at the very most? Put a price on every contested piece and let go.

With any prices that are not negative, let each person choose freely and pay; what they gain in all,
plus the price of the whole stock, is never less than the best possible distribution (Lagrangian
relaxation; A. M. Geoffrion, Mathematical Programming Study 2, 1974). Prices are moved towards what
people ask for on average (the volume algorithm; F. Barahona and R. Anbil, Mathematical Programming
87, 2000), which also shows who rides in the relaxed optimum. Bounds are whole numbers, so exact.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from sootline.core.riding.matching.kernel import Group, Mode

#: gains and bounds are in this many parts of one unit of worth
FINE = 1 << 12
_ROUNDS = 10
_WEIGHT = 0.1  # of the newest choice in the average
_PATIENCE = 5


@dataclass(frozen=True, kw_only=True)
class Pricing:
    """What each person of a group gains at some prices, and the bound that follows.

    Args:
        gains: per person and mode, worth less prices, in parts; may be negative.
        bound: no distribution is worth more, in parts.
    """

    gains: tuple[tuple[int, ...], ...]
    bound: int

    def best(self, person: int) -> int:
        """Return what the person gains by the best choice, 0 by not riding."""
        return max(0, *self.gains[person])


class Market:
    """The prices of one group's contested stocks, moved until the bound they give is small.

    Args:
        counts: how many pieces each contested stock has.
        bonus: what a crew at strength is worth.
    """

    def __init__(self, group: Group, counts: Mapping[int, int], bonus: int) -> None:
        self._group = group
        self._counts = counts
        self._bonus = bonus * FINE
        self._speed = 1.0
        self._bills = [[_bill(mode) for mode in modes] for modes in group.modes]
        self._prices = dict.fromkeys(counts, 0)
        self.pricing, choice = self._evaluate(self._prices)
        self._asked = {stock: float(n) for stock, n in self._ask(choice, self._prices).items()}
        #: per person and mode, how often it was chosen, on average and lately
        self.shares = [_picked(len(modes), c) for modes, c in zip(group.modes, choice, strict=True)]

    def lower(self, reached: int, step: int) -> None:
        """Move the prices some rounds, or until the bound is below `reached` + `step`.

        Args:
            reached: the worth of the best distribution known.
            step: what the smallest improvement looked for is worth.
        """
        idle = 0
        for _ in range(_ROUNDS):
            prices = self._moved(reached * FINE)
            if self.pricing.bound < (reached + step) * FINE or prices == self._prices:
                return
            pricing, choice = self._evaluate(prices)
            self._average(choice, prices)
            if pricing.bound < self.pricing.bound:
                self.pricing, self._prices, idle = pricing, prices, 0
                self._speed = min(2.0, self._speed * 1.1)
                continue
            idle += 1
            if idle == _PATIENCE:
                self._speed, idle = self._speed * 0.7, 0

    def _moved(self, reached: int) -> dict[int, int]:
        """Raise the price of what is asked too often, lower that of what lies idle."""
        over = {s: self._asked[s] - count for s, count in self._counts.items()}
        over = {s: n for s, n in over.items() if n > 0 or self._prices[s]}
        square = sum(n * n for n in over.values())
        step = self._speed * (self.pricing.bound - reached) / square if square else 0.0
        moved = {s: max(0, self._prices[s] + round(step * n)) for s, n in over.items()}
        return {**self._prices, **moved}

    def _average(self, choice: list[int | None], prices: Mapping[int, int]) -> None:
        """Take the newest choice into the average of what is asked and who rides how."""
        asked = self._ask(choice, prices)
        for stock, n in self._asked.items():
            self._asked[stock] = n + _WEIGHT * (asked[stock] - n)
        for shares, picked in zip(self.shares, choice, strict=True):
            for mode, share in enumerate(shares):
                shares[mode] = share + _WEIGHT * ((mode == picked) - share)

    def _evaluate(self, prices: Mapping[int, int]) -> tuple[Pricing, list[int | None]]:
        """Let everybody choose at these prices: what they gain, and which mode they choose."""
        price = prices.__getitem__
        gains = tuple(
            tuple(
                worth
                - sum(map(price, fixed))
                - sum([min(map(price, want)) for want in chosen] if chosen else ())
                for worth, fixed, chosen in bills
            )
            for bills in self._bills
        )
        choice = [_choice(gain) for gain in gains]
        stock = sum(count * prices[s] for s, count in self._counts.items())
        free = Pricing(gains=gains, bound=0)
        extra = self._call_up(free, choice)
        bound = stock + extra + sum(max(0, *gain) for gain in gains)
        return Pricing(gains=gains, bound=bound), choice

    def _call_up(self, pricing: Pricing, choice: list[int | None]) -> int:
        """Let people ride against their own gain where that brings a crew to strength."""
        total = 0
        for crew, lack in self._group.short.items():
            hands = crew_hands(self._group, pricing, crew)[:lack]
            extra = self._bonus - sum(loss for loss, _ in hands)
            if extra > 0:
                total += extra
                for _, person in hands:
                    choice[person] = 0
        return total

    def _ask(self, choice: list[int | None], prices: Mapping[int, int]) -> dict[int, int]:
        """Count the pieces asked of each stock when everybody takes the cheapest that fits."""
        asked = dict.fromkeys(self._counts, 0)
        for modes, picked in zip(self._group.modes, choice, strict=True):
            if picked is not None:
                for want in modes[picked].wants:
                    cheapest = want[0] if len(want) == 1 else min(want, key=prices.__getitem__)
                    asked[cheapest] += 1
        return asked


def crew_hands(group: Group, pricing: Pricing, crew: int) -> list[tuple[int, int]]:
    """List who could ride now for a crew, with what riding now costs each, cheapest first."""
    return sorted(
        (pricing.best(person) - pricing.gains[person][0], person)
        for person, own in enumerate(group.crews)
        if own == crew and group.modes[person][0].level == 0
    )


def _bill(mode: Mode) -> tuple[int, tuple[int, ...], tuple[tuple[int, ...], ...]]:
    """Take a mode apart into worth in parts, stocks without an alternative, and the others."""
    fixed = tuple(want[0] for want in mode.wants if len(want) == 1)
    return mode.worth * FINE, fixed, tuple(want for want in mode.wants if len(want) > 1)


def _choice(gain: tuple[int, ...]) -> int | None:
    best = max(gain)
    return gain.index(best) if best > 0 else None


def _picked(modes: int, choice: int | None) -> list[float]:
    return [float(mode == choice) for mode in range(modes)]
