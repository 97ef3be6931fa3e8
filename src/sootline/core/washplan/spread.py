"""When do the steps of a plan fall, if everything is as quick, as likely, or as slow as it may be?

The plan's loads, order and places are kept and only the minutes change: each step starts as soon
as what it follows in the plan has ended. A start is a maximum of ends and an end is a start
plus a duration; both only rise when durations rise, so early is never after likely, nor likely
after late. A delayed helper is assumed to finish after the shift's planned end.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sootline.core.basis import (
    BadInputError,
    ComponentId,
    Fault,
    MachineId,
    MemberId,
    MessageId,
    MinuteSpan,
    PlaceId,
)
from sootline.core.washplan.facts import Piece
from sootline.core.washplan.follow import Node, StepKind, find_order, list_nodes
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.steps import RACK


@dataclass(frozen=True, kw_only=True)
class StepSpan:
    """When one step starts and ends.

    Args:
        where: washer, station, rack or cabinet; empty where it has no place.
    """

    kind: StepKind
    where: str
    pieces: tuple[ComponentId, ...]
    start: MinuteSpan
    end: MinuteSpan


@dataclass(frozen=True, kw_only=True)
class Spread:
    """All steps in the order of the plan, and when each member is ready."""

    steps: tuple[StepSpan, ...]
    ready: Mapping[MemberId, MinuteSpan]


def spread(earliest: Instance, likely: Instance, late: Instance, plan: Plan) -> Spread:
    """Replay a plan of the likely instance with the durations of all three.

    Raises:
        BadInputError: the three differ in more than minutes, or their minutes are out of order.
    """
    faults = [*_disorder(earliest, likely, "earliest"), *_disorder(likely, late, "late")]
    if faults:
        raise BadInputError(faults)
    nodes = find_order(likely, plan)
    _mark_said(likely, nodes)
    runs = [_replay(nodes, instance) for instance in (earliest, likely, late)]
    ready = [
        _ready(nodes, run, one, plan)
        for run, one in zip(runs, (earliest, likely, late), strict=True)
    ]
    return Spread(
        steps=tuple(
            StepSpan(
                kind=node.kind,
                where=node.where,
                pieces=node.pieces,
                start=_span([run[i][0] for run in runs]),
                end=_span([run[i][1] for run in runs]),
            )
            for i, node in enumerate(nodes)
        ),
        ready={member.id: _span([one[member.id] for one in ready]) for member in likely.members},
    )


def _span(minutes: list[int]) -> MinuteSpan:
    return MinuteSpan(earliest=minutes[0], likely=minutes[1], late=minutes[2])


def _minutes(instance: Instance) -> Iterator[tuple[str, int]]:
    """List every minute that may differ, each under its name."""
    yield "load_min", instance.load_min
    yield "unload_min", instance.unload_min
    for member in instance.members:
        yield f"members.{member.id}.release", member.release
    for piece in instance.pieces:
        for name in ("prep", "inspect", "hand_min", "dry_rack"):
            yield f"pieces.{piece.id}.{name}", getattr(piece, name)
        if piece.dry_cab is not None:
            yield f"pieces.{piece.id}.dry_cab", piece.dry_cab
    for washer in instance.washers:
        for family, programme in washer.programmes.items():
            yield f"washers.{washer.id}.{family}", programme.min
    for change in instance.changeover:
        yield f"changeover.{change.before}.{change.after}", change.minutes


def _disorder(lower: Instance, upper: Instance, place: str) -> Iterator[Fault]:
    low, high = dict(_minutes(lower)), dict(_minutes(upper))
    for name in sorted(low.keys() | high.keys()):
        if name not in low or name not in high or low[name] > high[name]:
            values = (("value", str(low.get(name))), ("limit", str(high.get(name))))
            yield Fault(
                place=f"{place}.{name}", message=MessageId("washplan.spread_order"), values=values
            )


class _Clock:
    """The durations and floors of one of the three instances."""

    def __init__(self, instance: Instance) -> None:
        self.instance = instance
        self.piece = {piece.id: piece for piece in instance.pieces}
        self.release = {member.id: member.release for member in instance.members}
        self.run = {str(washer.id): washer.programmes for washer in instance.washers}
        self.idle = {(one.before, one.after): one.minutes for one in instance.changeover}
        self.facts = _facts(instance)

    def minutes(self, node: Node) -> int:
        """Return how long a step takes."""
        if node.kind is StepKind.PROGRAMME:
            return self.run[node.where][node.family].min
        if node.kind in (StepKind.LOAD, StepKind.UNLOAD):
            loading = node.kind is StepKind.LOAD
            return self.instance.load_min if loading else self.instance.unload_min
        pieces = [self.piece[one] for one in node.pieces]
        if node.kind is StepKind.DRY:
            return max(_drying(piece, node.where) for piece in pieces)
        name = {StepKind.PREPARE: "prep", StepKind.BY_HAND: "hand_min"}.get(node.kind, "inspect")
        return sum(getattr(piece, name) for piece in pieces)

    def span(self, node: Node, nodes: list[Node], ends: list[int]) -> tuple[int, int]:
        """Return start and end of a step from the ends of those it follows."""
        now = self.instance.begun.minute
        if (node.kind, node.pieces, node.start) in self.facts:
            # What is over is a fact; what runs keeps its start and ends at some time from now.
            running = node.end > now and node.kind is not StepKind.PROGRAMME
            end = max(now, node.start + self.minutes(node), node.said)
            return node.start, end if running else node.end
        start = max(
            [now, node.floor, *(self.release[self.piece[one].member] for one in node.pieces)]
        )
        for other in node.after:
            idle = 0
            if node.kind is StepKind.LOAD and nodes[other].kind is StepKind.UNLOAD:
                idle = self.idle.get((nodes[other].family, node.family), 0)
            start = max(start, ends[other] + idle)
        if node.kind is StepKind.LOAD:
            start = max(start, self.instance.washer_free.get(MachineId(node.where), 0))
        if node.kind is StepKind.DRY:
            start = max(start, self.instance.dryer_free.get(PlaceId(node.where)) or 0)
        return start, start + self.minutes(node)


def _drying(piece: Piece, where: str) -> int:
    if where == RACK:
        return piece.dry_rack
    assert piece.dry_cab is not None  # the plan hung it there
    return piece.dry_cab


def _facts(instance: Instance) -> set[tuple[StepKind, tuple[ComponentId, ...], int]]:
    """List the steps begun before now; their starts are facts."""
    begun = Plan(
        instance="", objective=0, makespan=0, loads=instance.begun.loads, prep=instance.begun.prep,
        hand=instance.begun.hand, dry=instance.begun.dry, inspect=instance.begun.inspect,
    )  # fmt: skip
    return {
        (node.kind, node.pieces, node.start)
        for node in list_nodes(begun)
        if node.start < instance.begun.minute or node.kind is StepKind.PROGRAMME
    }


def _mark_said(likely: Instance, nodes: list[Node]) -> None:
    """Mark drying that runs and that somebody said will take longer than it likely does."""
    clock = _Clock(likely)
    for node in nodes:
        begun = (node.kind, node.pieces, node.start) in clock.facts
        if begun and node.kind is StepKind.DRY and node.end > node.start + clock.minutes(node):
            node.said = node.end


def _replay(nodes: list[Node], instance: Instance) -> list[tuple[int, int]]:
    """Run the graph with one instance's minutes."""
    clock = _Clock(instance)
    spans: list[tuple[int, int]] = []
    ends: list[int] = []
    for node in nodes:
        spans.append(clock.span(node, nodes, ends))
        ends.append(spans[-1][1])
    return spans


def _ready(
    nodes: list[Node], spans: list[tuple[int, int]], instance: Instance, plan: Plan
) -> dict[MemberId, int]:
    """Say when each member is ready in one replay."""
    owner = {piece.id: piece.member for piece in instance.pieces}
    ready = {member.id: member.release for member in instance.members}
    covered = set(plan.spares)
    for node, (_, end) in zip(nodes, spans, strict=True):
        for piece in node.pieces:
            if piece not in covered:
                ready[owner[piece]] = max(ready[owner[piece]], end)
    return ready
