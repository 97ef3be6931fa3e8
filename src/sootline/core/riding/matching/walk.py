"""Which choice comes next, and can anything worth finding still follow from it?"""

from collections.abc import Iterator, Mapping

from sootline.core.riding.matching.kernel import Group, Mode
from sootline.core.riding.matching.prices import FINE, Market, crew_hands
from sootline.core.riding.matching.seating import Seating

Plan = tuple[Mode | None, ...]


class Walk:
    """A walk through the choices of a group's people, depth first, one choice at a time.

    Args:
        counts: pieces per contested stock.
        market: what each choice is worth less prices, how often it was made, and the bound.
        bonus: what a crew at strength is worth.
    """

    def __init__(self, group: Group, counts: Mapping[int, int], market: Market, bonus: int) -> None:
        self._group = group
        self._pricing = pricing = market.pricing
        self._shares = market.shares
        self._bonus = bonus * FINE
        self._seating = Seating(dict(counts))
        self._order = sorted(range(len(group.people)), key=self._clarity, reverse=True)
        self._rank = {person: rank for rank, person in enumerate(self._order)}
        self._hands = {crew: crew_hands(group, pricing, crew) for crew in group.short}
        self._lack = dict(group.short)
        self._plan: list[Mode | None] = [None] * len(group.people)
        self._bounds = [pricing.bound]
        self._choices = [self._offers(0)]

    @property
    def open(self) -> bool:
        """Whether choices are left."""
        return bool(self._choices)

    def next(self, worth_finding: int) -> Plan | None:
        """Make the next choice; return a plan when it was the last person's.

        Args:
            worth_finding: a branch that cannot reach this much, in parts, is left.
        """
        depth = len(self._choices) - 1
        person = self._order[depth]
        self._choose(person, None)
        gain, mode = next(self._choices[-1], (0, self._NO_MORE))
        if mode is self._NO_MORE:
            self._choices.pop()
            self._bounds.pop()
            return None
        bound = self._bound_after(depth, gain, mode)
        if bound < worth_finding or (mode and not self._seating.add(person, mode)):
            return None
        self._choose(person, mode)
        if depth + 1 == len(self._order):
            return tuple(self._plan)
        self._bounds.append(bound)
        self._choices.append(self._offers(depth + 1))
        return None

    _NO_MORE = Mode(level=-1, worth=0, wants=())

    def _clarity(self, person: int) -> float:
        """Say how clearly the relaxed optimum speaks for one choice."""
        shares = self._shares[person]
        return max(*shares, 1 - sum(shares))

    def _offers(self, depth: int) -> Iterator[tuple[int, Mode | None]]:
        """List a person's choices, likeliest first; not to ride is one of them."""
        person = self._order[depth]
        gains, shares = self._pricing.gains[person], self._shares[person]
        rides = zip(shares, gains, self._group.modes[person], strict=True)
        offers: list[tuple[float, int, Mode | None]] = [*rides, (1 - sum(shares), 0, None)]
        offers.sort(key=lambda offer: (-offer[0], -offer[1]))
        return iter([(gain, mode) for _, gain, mode in offers])

    def _choose(self, person: int, mode: Mode | None) -> None:
        """Write a choice into the plan, taking back the one that stood there."""
        old = self._plan[person]
        if old:
            self._seating.remove(person, old)
        crew = self._group.crews[person]
        if crew is not None:
            self._lack[crew] += _now(old) - _now(mode)
        self._plan[person] = mode

    def _bound_after(self, depth: int, gain: int, mode: Mode | None) -> int:
        """Say what can still be reached once the person at this depth has chosen."""
        person = self._order[depth]
        bound = self._bounds[-1] - self._pricing.best(person) + gain
        crew = self._group.crews[person]
        if crew is None:
            return bound
        before = self._crew_extra(crew, self._lack[crew], depth)
        after = self._crew_extra(crew, self._lack[crew] - _now(mode), depth + 1)
        return bound - before + after

    def _crew_extra(self, crew: int, lack: int, depth: int) -> int:
        """Say what bringing a crew to strength may still add, at its members' least loss."""
        if lack <= 0:
            return self._bonus
        losses = [loss for loss, person in self._hands[crew] if self._rank[person] >= depth][:lack]
        return max(0, self._bonus - sum(losses)) if len(losses) == lack else 0


def _now(mode: Mode | None) -> int:
    return 1 if mode and mode.level == 0 else 0
