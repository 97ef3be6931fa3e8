"""Who rides, from which moment, so that the aims are met in their order?"""

from dataclasses import replace

from sootline.core.riding.matching.demand import Demand, Outcome, Seeker, Stock
from sootline.core.riding.matching.kernel import Group, reduce_demand
from sootline.core.riding.matching.prices import FINE, Market
from sootline.core.riding.matching.scale import Scale
from sootline.core.riding.matching.search import GroupSearch

#: choices looked at per group and aim; past it the bound is stated instead of a proof
EFFORT = 20_000
_STAGES = 30


def match(demand: Demand, effort: int = EFFORT) -> Outcome:
    """Find the best distribution, proven best or with a bound on what could be better.

    The general question is NP-hard (three places of the outfit with contested spares are a
    three-dimensional matching), so no method is quick on every input. Here whatever is not
    contested is settled first, the rest falls into independent groups, and each group is searched
    under a price bound. When a group takes more than `effort` choices, the outcome says which aims
    are proven and how many people could ride at the most.

    Source: R. M. Karp, Reducibility among combinatorial problems (1972), problem 17.
    """
    scale = Scale(demand)
    kernel = reduce_demand(demand, scale)
    levels = [mode.level if mode else None for mode in kernel.settled]
    proven = len(scale.steps)
    for group in kernel.groups:
        found = GroupSearch(group, _counts(group, demand), scale.steps, effort).run()
        for person, mode in zip(group.people, found.plan, strict=True):
            levels[person] = mode.level if mode else None
        proven = min(proven, found.proven)
    best_now = proven >= scale.aims_now
    heads_only = len({seeker.priority for seeker in demand.seekers}) <= 1
    if not heads_only or any(group.short for group in kernel.groups):
        most_now = match(_heads(demand), effort).most_now
    elif best_now:
        most_now = levels.count(0)
    else:
        most_now = _price_bound(_heads(demand))
    return Outcome(
        levels=tuple(levels),
        best_now=best_now,
        best_later=proven >= len(scale.steps) - 1,
        most_now=most_now,
    )


def _heads(demand: Demand) -> Demand:
    """Ask only how many people could ride now, whoever they are."""
    return Demand(
        levels=1,
        stocks=tuple(s if s.level == 0 else Stock(level=0, count=0) for s in demand.stocks),
        seekers=tuple(
            Seeker(needs=tuple(n if n.own == 0 else replace(n, own=None) for n in seeker.needs))
            for seeker in demand.seekers
        ),
    )


def _price_bound(demand: Demand) -> int:
    """Bound how many people can ride when the search did not end."""
    kernel = reduce_demand(demand, Scale(demand))
    most = sum(1 for mode in kernel.settled if mode)
    for group in kernel.groups:
        alone = tuple(tuple(replace(mode, worth=1) for mode in modes) for modes in group.modes)
        market = Market(replace(group, modes=alone), _counts(group, demand), 0)
        for _ in range(_STAGES):
            market.lower(0, 1)
        most += market.pricing.bound // FINE
    return most


def _counts(group: Group, demand: Demand) -> dict[int, int]:
    stocks = sorted({s for modes in group.modes for mode in modes for w in mode.wants for s in w})
    return {stock: demand.stocks[stock].count for stock in stocks}
