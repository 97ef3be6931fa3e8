"""What came of a day on which many components were inspected, one by one?

Nothing passes by default: a component nobody inspected, there or not, stays due.
"""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from sootline.core.basis import ComponentId, SetId
from sootline.core.gear import Component, Element, find_kind
from sootline.core.upkeep.inspections.facts import Inspection, InspectionDay
from sootline.core.upkeep.inspections.judging import (
    Bench,
    Judged,
    Result,
    judge_absent,
    judge_inspection,
)

_RANK = list(Result)


@dataclass(frozen=True, kw_only=True)
class ElementJudged:
    """One coat, one pair of trousers, one helmet: the gravest of its parts counts."""

    set: SetId
    element: Element
    result: Result
    components: tuple[ComponentId, ...]


@dataclass(frozen=True, kw_only=True)
class DayResult:
    """What came of an inspection day.

    Args:
        pieces: each planned component, in the plan's order.
        elements: the same element by element.
        unplanned: inspected that day and not on its plan; judged all the same.
    """

    day: InspectionDay
    pieces: tuple[Judged, ...]
    elements: tuple[ElementJudged, ...]
    unplanned: tuple[ComponentId, ...]


def judge_day(
    day: InspectionDay,
    components: Iterable[Component],
    inspections: Sequence[Inspection],
    bench: Bench,
) -> DayResult:
    """Judge a day's inspections; of two of one component the later counts.

    Args:
        inspections: those of this kind and civil day.

    Raises:
        BadInputError: a component's kind is unknown.
    """
    made = {one.component: one for one in sorted(inspections, key=lambda one: one.at)}
    why = {one.component: one.why for one in day.absent}
    unplanned = tuple(one for one in made if one not in day.planned)
    wanted = (*day.planned, *unplanned)
    known = {one.id: one for one in components if one.id in wanted}
    pieces = tuple(
        judge_inspection(known[name], made[name], bench)
        if name in made
        else judge_absent(known[name], day.kind, why.get(name, ""), bench)
        for name in wanted
    )
    return DayResult(day=day, pieces=pieces, elements=_elements(pieces, known), unplanned=unplanned)


def _elements(
    pieces: tuple[Judged, ...], known: dict[ComponentId, Component]
) -> tuple[ElementJudged, ...]:
    grouped: dict[tuple[SetId, Element], list[Judged]] = defaultdict(list)
    for piece in pieces:
        component = known[piece.component]
        name = component.set or SetId(component.id)
        grouped[name, find_kind(component.kind).element].append(piece)
    return tuple(
        ElementJudged(
            set=name,
            element=element,
            result=max((one.result for one in parts), key=_RANK.index),
            components=tuple(one.component for one in parts),
        )
        for (name, element), parts in grouped.items()
    )
