"""What would people do by hand? Five rules, each a whole choice for the dispatcher.

In all of them a load is formed when a washer comes free, members come in arrival order unless the
rule says otherwise, a member's pieces of one family stay together, and spares go to the first who
can use them. Source: common practice, no published source.
"""

from collections.abc import Iterable
from enum import StrEnum

from sootline.core.washplan.cabinets import Runs, assign_runs, with_forced
from sootline.core.washplan.choice import Choice
from sootline.core.washplan.forming import (
    Formed,
    Group,
    Pick,
    form_loads,
    group_of,
    least_rank,
    wet_times,
)
from sootline.core.washplan.items import Stage
from sootline.core.washplan.shop import Shop


class HandRule(StrEnum):
    """Names of the five rules."""

    FIRST_COME = "first come"
    FILL_THE_DRUM = "fill the drum"
    ALTERNATE = "alternate"
    SHELLS_THEN_LINERS = "shells then liners"
    PRIORITY_ALTERNATE = "priority alternate"


def rule_choice(shop: Shop, rule: HandRule, *, boxed: bool = True) -> Choice:
    """Decide loads, spares and, if boxed, cabinet runs as one of the hand rules does."""
    order = arrival(shop)
    if rule is HandRule.PRIORITY_ALTERNATE:
        order = sorted(order, key=lambda member: -shop.priority[member])
    groups = family_groups(shop, order)
    if rule is HandRule.FILL_THE_DRUM:
        groups = [group_of(shop, group.items, -group.weight) for group in groups]
    return complete(shop, form_loads(shop, groups, _pick(shop, rule)), order, boxed=boxed)


def complete(shop: Shop, formed: Formed, order: list[int], *, boxed: bool = True) -> Choice:
    """Add to formed loads the cabinet runs, the spares, and a first target per member."""
    wet = wet_times(shop, formed, order)
    runs: Runs = assign_runs(shop, wet) if boxed else ((),) * len(shop.cabinets)
    covered = cover(shop, order)
    target = list(shop.release)
    for i, minute in wet.items():
        item = shop.items[i]
        if i not in covered:
            end = minute + item.rack + item.inspect
            target[item.member] = max(target[item.member], end)
    return Choice(
        loads=tuple(tuple(loads) for loads in formed.loads),
        runs=with_forced(shop, runs),
        covered=covered,
        target=tuple(target),
    )


def arrival(shop: Shop) -> list[int]:
    """List the members as they come in; who comes together keeps the instance's order."""
    return sorted(range(len(shop.release)), key=lambda member: shop.release[member])


def family_groups(shop: Shop, order: list[int]) -> list[Group]:
    """Keep each member's pieces of one family together, members in the given order."""
    together: dict[tuple[int, int], list[int]] = {}
    place = {member: at for at, member in enumerate(order)}
    for i in shop.to_wash():
        item = shop.items[i]
        together.setdefault((place[item.member], item.family), []).append(i)
    return [group_of(shop, tuple(items), key[0]) for key, items in together.items()]


def cover(shop: Shop, order: Iterable[int], kept: frozenset[int] = frozenset()) -> frozenset[int]:
    """Hand out spares to the first who can use them; what is given or kept stays given."""
    left = dict(shop.stock)
    covered = set(kept)
    for i in kept:
        if shop.items[i].pieces[0].id not in shop.given:
            left[shop.items[i].kind] = left.get(shop.items[i].kind, 0) - 1
    of_member: dict[int, list[int]] = {}
    for i, item in enumerate(shop.items):
        if item.pieces[0].id in shop.given:
            covered.add(i)
        elif item.stage < Stage.DONE:
            of_member.setdefault(item.member, []).append(i)
    for member in order:
        for i in of_member.get(member, ()):
            kind = shop.items[i].kind
            if left.get(kind, 0) > 0 and i not in covered:
                left[kind] -= 1
                covered.add(i)
    return frozenset(covered)


def _pick(shop: Shop, rule: HandRule) -> Pick:
    if rule is HandRule.FIRST_COME:
        return least_rank
    if rule is HandRule.FILL_THE_DRUM:
        return _heaviest
    turn = _shells_first(shop)
    if rule is HandRule.SHELLS_THEN_LINERS:
        return lambda groups, _: min((group.family for group in groups), key=turn.index)

    turn_of = list(turn)

    def alternate(groups: list[Group], _: int) -> int:
        family = min((group.family for group in groups), key=turn_of.index)
        turn_of.remove(family)
        turn_of.append(family)
        return family

    return alternate


def _heaviest(groups: list[Group], last: int) -> int:  # noqa: ARG001 - one of the picks
    weight: dict[int, int] = {}
    for group in groups:
        weight[group.family] = weight.get(group.family, 0) + group.weight
    return max(weight, key=lambda family: (weight[family], -family))


def _shells_first(shop: Shop) -> list[int]:
    """Order families by mean weight of a piece: shells are the heaviest pieces of a set."""
    weight, count = [0] * len(shop.families), [0] * len(shop.families)
    for item in shop.items:
        if item.family >= 0:
            weight[item.family] += item.weight
            count[item.family] += item.count
    return sorted(range(len(shop.families)), key=lambda f: -weight[f] / max(1, count[f]))
