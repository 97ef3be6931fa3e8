"""Which distribution is best? Search what the prices leave open, and stop at a stated bound.

A choice other than a person's best at the market's prices costs what they gain less; a branch whose
costs bring its bound below what is already reached is left. Where the prices are tight, little is
left to search. Persons are looked at in the order in which a wrong choice would cost most.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sootline.core.riding.matching.kernel import Group, Mode
from sootline.core.riding.matching.prices import FINE, Market, Pricing, crew_hands
from sootline.core.riding.matching.seating import Seating
from sootline.core.riding.matching.walk import Plan, Walk

_PATIENCE = 60
_REST = 5  # what a stage takes of the patience when the gap hardly moves
_MOVES = (49, 50)  # it hardly moves when more of it is left than this


@dataclass(frozen=True, kw_only=True)
class Found:
    """The best distribution of a group, and how it was established.

    Args:
        proven: how many of the aims are proven best, in their order.
    """

    plan: Plan
    proven: int


class GroupSearch:
    """The search for one group's best distribution.

    Args:
        counts: pieces per contested stock of the group.
        steps: what one step of each aim is worth, from the first to the last.
        effort: how many choices may be looked at per aim before the bound is stated instead.
    """

    def __init__(
        self, group: Group, counts: Mapping[int, int], steps: Sequence[int], effort: int
    ) -> None:
        self._group = group
        self._counts = counts
        self._steps = steps
        self._effort = effort
        self._market = Market(group, counts, steps[0])
        self._best: Plan = (None,) * len(group.people)
        self._reached = 0

    def run(self) -> Found:
        """Raise each aim in turn to its proven best, or to where the effort ends."""
        proven, sure = 0, True
        for step in self._steps:
            self._lower(step)
            # After an aim left open, the next ones are still raised, but prove nothing.
            sure = sure and self._search(step)
            proven += sure
        return Found(plan=self._best, proven=proven)

    def _lower(self, step: int) -> None:
        """Bring the bound down and the best distribution up, until they meet or rest."""
        patience = _PATIENCE
        while patience > 0:
            gap = self._market.pricing.bound - self._reached * FINE
            self._market.lower(self._reached, step)
            self._try_greedily()
            left = self._market.pricing.bound - self._reached * FINE
            if left < step * FINE:
                return
            patience -= _REST if left * _MOVES[1] > gap * _MOVES[0] else 1

    def _worth(self, plan: Plan) -> int:
        worth = sum(mode.worth for mode in plan if mode)
        if not self._group.short:
            return worth
        now = Counter(
            crew
            for crew, mode in zip(self._group.crews, plan, strict=True)
            if mode and mode.level == 0
        )
        return worth + self._steps[0] * sum(
            now[crew] >= lack for crew, lack in self._group.short.items()
        )

    def _note(self, plan: Plan) -> None:
        worth = self._worth(plan)
        if worth > self._reached:
            self._best, self._reached = plan, worth

    def _try_greedily(self) -> None:
        """Serve people by how often they ride at the prices, then whoever still can be."""
        gains, shares = self._market.pricing.gains, self._market.shares
        offers = [
            (person, mode)
            for person, modes in enumerate(self._group.modes)
            for mode in range(len(modes))
        ]
        offers.sort(key=lambda o: (-shares[o[0]][o[1]], -gains[o[0]][o[1]]))
        crews = self._crews_first(self._market.pricing)
        for first in ((), crews) if crews else ((),):
            seating = Seating(dict(self._counts))
            plan: list[Mode | None] = [None] * len(self._group.people)
            for person, number in (*first, *offers):
                mode = self._group.modes[person][number]
                if plan[person] is None and seating.add(person, mode):
                    plan[person] = mode
            self._note(tuple(plan))

    def _crews_first(self, pricing: Pricing) -> tuple[tuple[int, int], ...]:
        """List those who bring crews to strength, the cheapest crew first."""
        bills = []
        for crew, lack in self._group.short.items():
            hands = crew_hands(self._group, pricing, crew)[:lack]
            bills.append((sum(loss for loss, _ in hands), crew, hands))
        return tuple((person, 0) for _, _, hands in sorted(bills) for _, person in hands)

    def _search(self, step: int) -> bool:
        """Look for anything better by at least a step; say whether all was looked at."""
        walk = Walk(self._group, self._counts, self._market, self._steps[0])
        left = self._effort
        while walk.open:
            if not left:
                return False
            left -= 1
            plan = walk.next((self._reached + step) * FINE)
            if plan:
                self._note(plan)
        return True
