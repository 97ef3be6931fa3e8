"""When do the steps of a plan fall, if everything is as quick, as likely, or as slow as it may be?

The plan's loads, order and places are kept and only the minutes change: each step starts as soon
as what it follows in the plan has ended, that is its own chain and what was before it in the same
washer, helper, station, rack unit or cabinet. A start is a maximum of ends and an end is a start
plus a duration; both only rise when durations rise, so early is never after likely, nor likely
after late. A delayed helper is assumed to finish after the shift's planned end.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from graphlib import TopologicalSorter
from itertools import pairwise

from sootline.core.basis import (
    BadInputError,
    ComponentId,
    Fault,
    MachineId,
    MemberId,
    MessageId,
    MinuteSpan,
)
from sootline.core.washplan.facts import Piece
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.steps import RACK, Drying


class StepKind(StrEnum):
    """What happens in a step; the order is the order of a piece's way."""

    PREPARE = "prepare"
    LOAD = "load"
    PROGRAMME = "programme"
    UNLOAD = "unload"
    BY_HAND = "by hand"
    DRY = "dry"
    INSPECT = "inspect"


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


@dataclass(kw_only=True)
class _Node:
    """A step as planned, with the numbers of the steps it follows."""

    kind: StepKind
    where: str
    pieces: tuple[ComponentId, ...]
    start: int
    end: int
    family: str = ""
    after: list[int] = field(default_factory=list)
    floor: int = 0


def spread(earliest: Instance, likely: Instance, late: Instance, plan: Plan) -> Spread:
    """Replay a plan of the likely instance with the durations of all three.

    Raises:
        BadInputError: the three differ in more than minutes, or their minutes are out of order.
    """
    faults = [*_disorder(earliest, likely, "earliest"), *_disorder(likely, late, "late")]
    if faults:
        raise BadInputError(faults)
    nodes = _graph(likely, plan)
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


def _nodes(plan: Plan) -> Iterator[_Node]:
    for task in plan.prep:
        yield _Node(
            kind=StepKind.PREPARE, where="", pieces=task.pieces, start=task.start, end=task.end
        )
    for load in plan.loads:
        for kind, start, end in (
            (StepKind.LOAD, load.load_start, load.prog_start),
            (StepKind.PROGRAMME, load.prog_start, load.prog_end),
            (StepKind.UNLOAD, load.unload_start, load.unload_end),
        ):
            yield _Node(
                kind=kind, where=load.washer, pieces=load.pieces, start=start, end=end,
                family=load.family,
            )  # fmt: skip
    for hand in plan.hand:
        yield _Node(
            kind=StepKind.BY_HAND, where=hand.station, pieces=(hand.piece,),
            start=hand.start, end=hand.end,
        )  # fmt: skip
    runs: dict[tuple[str, int], list[Drying]] = {}
    for drying in plan.dry:
        # On the rack each piece hangs for itself; a cabinet run is one step.
        alone = drying.piece if drying.where == RACK else ""
        runs.setdefault((drying.where + alone, drying.start), []).append(drying)
    for steps in runs.values():
        yield _Node(
            kind=StepKind.DRY, where=steps[0].where, pieces=tuple(one.piece for one in steps),
            start=steps[0].start, end=steps[0].end,
        )  # fmt: skip
    for task in plan.inspect:
        yield _Node(
            kind=StepKind.INSPECT, where="", pieces=task.pieces, start=task.start, end=task.end
        )


_WAY = list(StepKind)
_IN_DRUM = (StepKind.LOAD, StepKind.PROGRAMME, StepKind.UNLOAD)
_BY_HELPER = (
    StepKind.PREPARE, StepKind.LOAD, StepKind.UNLOAD, StepKind.BY_HAND, StepKind.INSPECT,
)  # fmt: skip


def _graph(instance: Instance, plan: Plan) -> list[_Node]:
    """Find what each step follows, and put the steps into an order that respects it."""
    nodes = list(_nodes(plan))
    _follow_chains(nodes)
    _follow_places(instance, nodes)
    order = list(
        TopologicalSorter({i: set(node.after) for i, node in enumerate(nodes)}).static_order()
    )
    place = {i: at for at, i in enumerate(order)}
    for node in nodes:
        node.after = [place[i] for i in node.after]
    return [nodes[i] for i in order]


def _follow_chains(nodes: list[_Node]) -> None:
    """Follow the step before of every piece, and in each washer the load before."""
    last_of: dict[str, int] = {}
    for i in sorted(range(len(nodes)), key=lambda i: _WAY.index(nodes[i].kind)):
        node = nodes[i]
        node.after += [last_of[piece] for piece in node.pieces if piece in last_of]
        last_of.update(dict.fromkeys(node.pieces, i))
    drums: dict[str, list[int]] = {}
    for i, node in enumerate(nodes):
        if node.kind is StepKind.LOAD:
            drums.setdefault(node.where, []).append(i)
    for loads in drums.values():
        # Loading, programme and unloading of a load stand next to each other.
        in_time = sorted(loads, key=lambda i: (nodes[i].start, nodes[i + 2].end))
        for before, after in pairwise(in_time):
            nodes[after].after.append(before + 2)


def _follow_places(instance: Instance, nodes: list[_Node]) -> None:
    """Follow whoever had the helper, the station, the rack unit or the cabinet before."""
    units = {piece.id: piece.units for piece in instance.pieces}
    heads = max((count for _, _, count in instance.helpers), default=0)
    helpers = [(0, -1)] * min(heads, len(nodes))
    hung = sum(units[node.pieces[0]] for node in nodes if node.where == RACK)
    slots: dict[str, list[tuple[int, int]]] = {
        RACK: [(0, -1)] * min(instance.rack_units, hung),
        **{
            station: [(0, -1)] * min(count, len(nodes))
            for station, count in instance.stations.items()
        },
        **{box.id: [(0, -1)] for box in instance.cabinets},
    }
    rises = _rises(instance)
    busy = [i for i, node in enumerate(nodes) if node.end > node.start]
    for i in sorted(busy, key=lambda i: nodes[i].start):
        node = nodes[i]
        if node.kind in _BY_HELPER:
            node.floor = max((rise for rise in rises if rise <= node.start), default=0)
            _take(helpers, 1, i, node)
        if node.kind is StepKind.BY_HAND:
            _take(slots[node.where], 1, i, node)
        if node.kind is StepKind.DRY:
            _take(slots[node.where], units[node.pieces[0]] if node.where == RACK else 1, i, node)


def _rises(instance: Instance) -> list[int]:
    """List the minutes at which more helpers come."""
    rises, before, left = [], 0, 0
    for start, end, count in instance.helpers:
        if count > before or start > left:
            rises.append(start)
        before, left = count, end
    return rises


def _take(slots: list[tuple[int, int]], need: int, i: int, node: _Node) -> None:
    """Use the places that became free last, and follow whoever was there."""
    free = [slot for slot in range(len(slots)) if slots[slot][0] <= node.start]
    free.sort(key=lambda slot: slots[slot], reverse=True)
    for slot in free[:need]:
        if slots[slot][1] >= 0:
            node.after.append(slots[slot][1])
        slots[slot] = node.end, i


class _Clock:
    """The durations and floors of one of the three instances."""

    def __init__(self, instance: Instance) -> None:
        self.instance = instance
        self.piece = {piece.id: piece for piece in instance.pieces}
        self.release = {member.id: member.release for member in instance.members}
        self.run = {str(washer.id): washer.programmes for washer in instance.washers}
        self.idle = {(one.before, one.after): one.minutes for one in instance.changeover}
        self.facts = _facts(instance)

    def minutes(self, node: _Node) -> int:
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

    def span(self, node: _Node, nodes: list[_Node], ends: list[int]) -> tuple[int, int]:
        """Return start and end of a step from the ends of those it follows."""
        now = self.instance.begun.minute
        if (node.kind, node.pieces, node.start) in self.facts:
            # What is over is a fact; what runs keeps its start and ends at some time from now.
            running = node.end > now and node.kind is not StepKind.PROGRAMME
            return node.start, max(now, node.start + self.minutes(node)) if running else node.end
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
        for node in _nodes(begun)
        if node.start < instance.begun.minute or node.kind is StepKind.PROGRAMME
    }


def _replay(nodes: list[_Node], instance: Instance) -> list[tuple[int, int]]:
    """Run the graph with one instance's minutes."""
    clock = _Clock(instance)
    spans: list[tuple[int, int]] = []
    ends: list[int] = []
    for node in nodes:
        spans.append(clock.span(node, nodes, ends))
        ends.append(spans[-1][1])
    return spans


def _ready(
    nodes: list[_Node], spans: list[tuple[int, int]], instance: Instance, plan: Plan
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
