"""What goes together into the wash, and what stays out?

A sort is what may share; the wash plan alone composes loads, within a sort and its limits.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field

from sootline.core.basis import Bearing, ComponentId, Finding, PlaceId, finding
from sootline.core.care.decisions import Decision, Separation
from sootline.core.gear.catalogue import find_kind
from sootline.core.gear.components import Component
from sootline.core.gear.kinds import WashMethod
from sootline.core.laundry.goods import Goods, entered, practice
from sootline.core.laundry.placing import drying_choice, hand_places, refused_sinks
from sootline.core.laundry.reasons import (
    disinfection_reason,
    kept_out_reason,
    limits_of,
    separation_reason,
)
from sootline.core.laundry.rooms import Company, WashRoom
from sootline.core.laundry.settings import permitted
from sootline.core.laundry.sharing import apart, bagging, place_in_company, sharing_key
from sootline.core.laundry.sorts import DryingChoice, Setting, Sort, Sorting
from sootline.core.rulebook.rules import Rulebook

_AT_SINK = (WashMethod.HAND, WashMethod.BRUSH, WashMethod.WIPE)


@dataclass(frozen=True, kw_only=True)
class _Placed:
    """One component with everything it may use: the key it shares by, settings or sinks."""

    goods: Goods
    method: WashMethod
    key: tuple[str, ...]
    company: Company
    settings: tuple[Setting, ...] = ()
    places: tuple[PlaceId, ...] = ()
    reasons: tuple[Finding, ...]

    @property
    def options(self) -> frozenset[tuple[str, str]]:
        """The washer and programme pairs, or the sinks, that it may use."""
        at_sink = {(str(place), "") for place in self.places}
        return frozenset(at_sink | {(one.washer, one.programme) for one in self.settings})


@dataclass(kw_only=True)
class _Outcome:
    """What has been found so far."""

    placed: list[_Placed] = field(default_factory=list)
    drying: list[DryingChoice] = field(default_factory=list)
    kept_out: list[tuple[ComponentId, Finding]] = field(default_factory=list)
    refused: list[Finding] = field(default_factory=list)


def sort_components(
    *,
    decisions: Sequence[Decision],
    components: Iterable[Component],
    room: WashRoom,
    rulebook: Rulebook,
) -> Sorting:
    """Sort what is decided into what may share, with a reason for every placing and refusal.

    Every decided component comes out exactly once: in a sort, kept out, or refused.

    Raises:
        KeyError: a decision on a component that is not among the components.
        BadInputError: a component of a kind nobody knows.
    """
    known = {component.id: component for component in components}
    outcome = _Outcome(refused=list(refused_sinks(room)))
    for decision in decisions:
        component = known[decision.component]
        goods = Goods(component=component, kind=find_kind(component.kind), decision=decision)
        _place(goods, room, rulebook, outcome)
    return Sorting(
        sorts=tuple(_sorts(outcome.placed, room)),
        drying=tuple(outcome.drying),
        kept_out=tuple(outcome.kept_out),
        refused=tuple(outcome.refused),
    )


def _place(goods: Goods, room: WashRoom, rulebook: Rulebook, outcome: _Outcome) -> None:
    """Put one component where it belongs: kept out, refused, or placed with its options."""
    if reason := kept_out_reason(goods):
        outcome.kept_out.append((goods.id, reason))
        return
    placed, against = _wash(goods, room, rulebook)
    drying = drying_choice(goods, room)
    nowhere = not drying.places and drying.elsewhere is None
    if placed is None or nowhere:
        outcome.refused.extend((*against, *(drying.reasons if nowhere else ())))
        what = "laundry.refused.wash" if placed is None else "laundry.refused.dry"
        names = {"component": goods.id, "kind": goods.kind.id, "method": goods.decision.wash}
        outcome.refused.append(finding(Bearing.FORBIDS, what, entered("room"), **names))
        return
    outcome.placed.append(placed)
    outcome.drying.append(drying)


def _wash(
    goods: Goods, room: WashRoom, rulebook: Rulebook
) -> tuple[_Placed | None, tuple[Finding, ...]]:
    """Find the settings or sinks of one component; without any, the reasons against each."""
    method = goods.decision.wash
    if method in _AT_SINK:
        places = hand_places(goods, room)
        # Gloves and a helmet's padding may share a basin; the method and the hazards decide.
        key = (method.value, *sharing_key(goods, Company.SHELLS, room)[2:])
        placed = _Placed(
            goods=goods, method=method, key=key, company=Company.OWN, places=places,
            reasons=(_by_hand(goods),),
        )  # fmt: skip
        return (placed if places else None), ()
    if method is WashMethod.NONE:
        ground = goods.decision.terms.method.ground
        return None, (finding(Bearing.FORBIDS, "laundry.method.none", ground, component=goods.id),)
    placing = place_in_company(goods, rulebook)
    settings, against = permitted(goods, placing.company, room)
    bag = bagging(goods)
    placed = _Placed(
        goods=goods, method=method, key=sharing_key(goods, placing.company, room),
        company=placing.company, settings=settings,
        reasons=(*placing.reasons, *((bag,) if bag else ()), *against),
    )  # fmt: skip
    return (placed if settings else None), against


def _by_hand(goods: Goods) -> Finding:
    names = {"component": goods.id, "kind": goods.kind.id}
    ground = goods.decision.terms.method.ground
    return finding(Bearing.REQUIRES, f"laundry.by.{goods.decision.wash}", ground, **names)


def _sorts(placed: Sequence[_Placed], room: WashRoom) -> Iterator[Sort]:
    """Form the sorts: those set apart by a hazard after all others where the room wants it."""
    by_key: dict[tuple[str, ...], list[_Placed]] = {}
    for one in placed:
        by_key.setdefault(one.key, []).append(one)
    keys = list(by_key)
    if room.hazards_last:
        keys.sort(key=lambda key: apart(by_key[key][0].goods.decision.separation))
    for key in keys:
        groups = _with_common_options(by_key[key])
        name = ":".join(part for part in key if part)
        for number, group in enumerate(groups, start=1):
            yield _sort(name if len(groups) == 1 else f"{name}/{number}", group, len(groups) > 1)


def _with_common_options(members: list[_Placed]) -> list[list[_Placed]]:
    """Split components that may share until every part has a setting all its members bear.

    Those with the fewest options come first, so that the others join them where they can.
    """
    groups: list[tuple[frozenset[tuple[str, str]], list[_Placed]]] = []
    for one in sorted(members, key=lambda placed: len(placed.options)):
        for index, (common, group) in enumerate(groups):
            if shared := common & one.options:
                groups[index] = (shared, [*group, one])
                break
        else:
            groups.append((one.options, [one]))
    return [sorted(group, key=members.index) for _, group in groups]


def _sort(name: str, group: list[_Placed], split: bool) -> Sort:
    """Make one sort of components that share everything that matters."""
    first = group[0]
    common = frozenset.intersection(*(one.options for one in group))
    reasons = [reason for one in group for reason in one.reasons]
    if split:
        values = {"sort": name, "settings": ", ".join(sorted(f"{a} {b}" for a, b in common))}
        reasons.append(finding(Bearing.NOTES, "laundry.split", practice("wash.split"), **values))
    reasons.extend(separation_reason(one.goods) for one in group if apart(_separation(one)))
    reasons.extend(filter(None, (disinfection_reason(one.goods) for one in group)))
    reasons.extend(limits_of([one.goods for one in group], first.method))
    return Sort(
        id=name,
        method=first.method,
        company=first.company,
        separation=_separation(first),
        components=tuple(one.goods.id for one in group),
        bagged=tuple(one.goods.id for one in group if first.settings and bagging(one.goods)),
        settings=tuple(one for one in first.settings if (one.washer, one.programme) in common),
        places=tuple(place for place in first.places if (str(place), "") in common),
        reasons=tuple(dict.fromkeys(reasons)),
    )


def _separation(placed: _Placed) -> Separation:
    return placed.goods.decision.separation
