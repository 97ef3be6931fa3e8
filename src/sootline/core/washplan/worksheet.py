"""What does a plan say to those who carry it out: loads in order, handwork, drying, who is back?

Every time is an interval, and nobody is back before a named person's touch check.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from sootline.core.basis import (
    Bearing,
    ComponentId,
    Finding,
    MachineId,
    MemberId,
    MinuteSpan,
    PlaceId,
    Quantity,
    finding,
)
from sootline.core.gear.components import Component
from sootline.core.gear.kinds import WashMethod
from sootline.core.laundry.goods import practice
from sootline.core.laundry.sorts import Sort, Sorting
from sootline.core.washplan.build import Built
from sootline.core.washplan.follow import StepKind
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.spread import Spread, StepSpan
from sootline.core.washplan.steps import Load


@dataclass(frozen=True, kw_only=True)
class LoadSheet:
    """One load: what goes in, on which programme, how heavy of how much, and when.

    Args:
        mass: dry, unweighed components counted as the heaviest of their kind.
        unweighed: those that were counted so.
        start: when loading begins; end: when the drum is empty again [min].
    """

    number: int
    washer: MachineId
    programme: str
    sort: Sort
    components: tuple[ComponentId, ...]
    bagged: tuple[ComponentId, ...]
    mass: Quantity
    limit: Quantity
    unweighed: tuple[ComponentId, ...]
    start: MinuteSpan
    end: MinuteSpan


@dataclass(frozen=True, kw_only=True)
class HandSheet:
    """One piece washed by hand: how, at which kind of place, and when [min]."""

    station: PlaceId
    method: WashMethod
    components: tuple[ComponentId, ...]
    start: MinuteSpan
    end: MinuteSpan


@dataclass(frozen=True, kw_only=True)
class DrySheet:
    """What hangs or lies where, from when to when [min]."""

    where: str
    components: tuple[ComponentId, ...]
    start: MinuteSpan
    end: MinuteSpan


@dataclass(frozen=True, kw_only=True)
class Back:
    """When one member's gear is back, or what it still waits for.

    Args:
        at: when the last washed component is through its check; None when nothing is washed.
        waiting: components that are held, refused or out, so that the set is not complete.
        gate: the touch check without which nothing counts as ready.
    """

    member: MemberId
    at: MinuteSpan | None
    waiting: tuple[ComponentId, ...]
    gate: Finding

    @property
    def complete(self) -> bool:
        """Whether everything of the member that is out of the seat comes back with this plan."""
        return self.at is not None and not self.waiting


@dataclass(frozen=True, kw_only=True)
class Worksheet:
    """The plan in the order of the work."""

    loads: tuple[LoadSheet, ...]
    hand: tuple[HandSheet, ...]
    drying: tuple[DrySheet, ...]
    back: tuple[Back, ...]

    def complete_by(self, minute: int) -> int:
        """Count the members whose gear is likely back, all of it, by a minute [min]."""
        return sum(one.complete and one.at is not None and one.at.likely <= minute
                   for one in self.back)  # fmt: skip


def lay_out(
    built: Built, plan: Plan, spans: Spread, sorting: Sorting, components: Iterable[Component]
) -> Worksheet:
    """Turn a neutral plan back into components, with the interval of every step."""
    known = {component.id: component for component in components}
    sorts = {sort.id: sort for sort in sorting.sorts}
    ordered = sorted(plan.loads, key=lambda load: (load.load_start, load.washer))
    return Worksheet(
        loads=tuple(
            _load(number, load, built, sorts[load.family], spans)
            for number, load in enumerate(ordered, start=1)
        ),
        hand=tuple(_hand(built, sorts, spans)),
        drying=tuple(_dry(built, spans)),
        back=tuple(_back(built, spans, sorting, known)),
    )


def _load(number: int, load: Load, built: Built, sort: Sort, spans: Spread) -> LoadSheet:
    chosen = next(one for one in built.chosen if (one.sort, one.washer) == (sort.id, load.washer))
    inside = _components(built, load.pieces)
    weights = {piece.id: piece.weight for piece in built.instance.pieces}
    weight = sum(weights[piece] for piece in load.pieces) * built.scale.step
    return LoadSheet(
        number=number,
        washer=load.washer,
        programme=chosen.programme,
        sort=sort,
        components=inside,
        bagged=tuple(one for one in inside if one in sort.bagged),
        mass=Quantity(amount=Decimal(weight.numerator) / weight.denominator, unit=built.scale.sign),
        limit=chosen.limit,
        unweighed=tuple(one for one in inside if one in built.unweighed),
        start=_step(spans, StepKind.LOAD, load).start,
        end=_step(spans, StepKind.UNLOAD, load).end,
    )


def _step(spans: Spread, kind: StepKind, load: Load) -> StepSpan:
    wanted = (kind, load.washer, load.pieces)
    return next(step for step in spans.steps if (step.kind, step.where, step.pieces) == wanted)


def _hand(built: Built, sorts: Mapping[str, Sort], spans: Spread) -> Iterator[HandSheet]:
    sort_of = {one.piece: sorts[one.sort] for one in built.carried}
    for step in spans.steps:
        if step.kind is StepKind.BY_HAND:
            yield HandSheet(
                station=PlaceId(step.where),
                method=sort_of[step.pieces[0]].method,
                components=_components(built, step.pieces),
                start=step.start,
                end=step.end,
            )


def _dry(built: Built, spans: Spread) -> Iterator[DrySheet]:
    where = {one.piece: one.dries_at for one in built.carried}
    cabinets = {cabinet.id for cabinet in built.instance.cabinets}
    for step in spans.steps:
        if step.kind is StepKind.DRY:
            in_cabinet = step.where in cabinets
            yield DrySheet(
                where=step.where if in_cabinet else where[step.pieces[0]],
                components=_components(built, step.pieces),
                start=step.start,
                end=step.end,
            )


def _back(
    built: Built, spans: Spread, sorting: Sorting, known: Mapping[ComponentId, Component]
) -> Iterator[Back]:
    """Say of everybody whose gear is in the plan, or waits outside it, when it is back."""
    waiting: dict[MemberId, list[ComponentId]] = {}
    for name in _waiting(built, sorting):
        owner = known[name].owner
        if owner is not None:
            waiting.setdefault(owner, []).append(name)
    coming = {member.id: spans.ready[member.id] for member in built.instance.members}
    gate = finding(Bearing.REQUIRES, "plan.gate.touch_check", practice("wash.touch_check"))
    for member in dict.fromkeys((*coming, *waiting)):
        yield Back(
            member=member,
            at=coming.get(member),
            waiting=tuple(dict.fromkeys(waiting.get(member, ()))),
            gate=gate,
        )


def _waiting(built: Built, sorting: Sorting) -> Iterator[ComponentId]:
    for name, reason in sorting.kept_out:
        if reason.bearing is not Bearing.NOTES:
            yield name
    for refusal in (*sorting.refused, *built.refused):
        if refusal.message.startswith("laundry.refused."):
            yield ComponentId(refusal.value("component"))


def _components(built: Built, pieces: Iterable[ComponentId]) -> tuple[ComponentId, ...]:
    return tuple(one for piece in pieces for one in built.components_of(piece))
