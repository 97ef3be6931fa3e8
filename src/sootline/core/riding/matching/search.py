"""Which distribution is best? Search what the prices leave open, and stop at a stated bound.

A choice other than a person's best at the market's prices costs what they gain less; a branch whose
costs bring its bound below what is already reached is left. Where the prices are tight, little is
left to search. Persons are looked at in the order in which a wrong choice would cost most.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sootline.core.riding.matching.kernel import Group, Mode
from sootline.core.riding.matching.prices import FINE, Market, Pricing, crew_hands
from sootline.core.riding.matching.seating import Seating
from sootline.core.riding.matching.walk import Plan, Walk

_STAGES = 30


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
        for _ in range(_STAGES):
            self._market.lower(self._reached, step)
            self._try_greedily()
            if self._market.pricing.bound < (self._reached + step) * FINE:
                return

    def _worth(self, plan: Plan) -> int:
        now: dict[int, int] = {}
        for person, mode in enumerate(plan):
            crew = self._group.crews[person]
            if mode and mode.level == 0 and crew is not None:
                now[crew] = now.get(crew, 0) + 1
        crews = sum(1 for crew, lack in self._group.short.items() if now.get(crew, 0) >= lack)
        return crews * self._steps[0] + sum(mode.worth for mode in plan if mode)

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
