"""Which step of a plan waits for which?

A step follows what came before it in its own chain and what was before it in the same washer,
helper, station, rack unit or cabinet.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from enum import StrEnum
from graphlib import TopologicalSorter
from itertools import pairwise

from sootline.core.basis import ComponentId
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


@dataclass(kw_only=True)
class Node:
    """A step as planned, with the numbers of the steps it follows.

    Args:
        floor: the minute at which the helper for it comes.
        said: when it ends because somebody said so; 0 where its minutes count.
    """

    kind: StepKind
    where: str
    pieces: tuple[ComponentId, ...]
    start: int
    end: int
    family: str = ""
    after: list[int] = field(default_factory=list)
    floor: int = 0
    said: int = 0


def list_nodes(plan: Plan) -> Iterator[Node]:
    """List the steps of a plan, each as it is planned."""
    for task in plan.prep:
        yield Node(
            kind=StepKind.PREPARE, where="", pieces=task.pieces, start=task.start, end=task.end
        )
    for load in plan.loads:
        for kind, start, end in (
            (StepKind.LOAD, load.load_start, load.prog_start),
            (StepKind.PROGRAMME, load.prog_start, load.prog_end),
            (StepKind.UNLOAD, load.unload_start, load.unload_end),
        ):
            yield Node(
                kind=kind, where=load.washer, pieces=load.pieces, start=start, end=end,
                family=load.family,
            )  # fmt: skip
    for hand in plan.hand:
        yield Node(
            kind=StepKind.BY_HAND, where=hand.station, pieces=(hand.piece,),
            start=hand.start, end=hand.end,
        )  # fmt: skip
    runs: dict[tuple[str, int], list[Drying]] = {}
    for drying in plan.dry:
        # On the rack each piece hangs for itself; a cabinet run is one step.
        alone = drying.piece if drying.where == RACK else ""
        runs.setdefault((drying.where + alone, drying.start), []).append(drying)
    for steps in runs.values():
        yield Node(
            kind=StepKind.DRY, where=steps[0].where, pieces=tuple(one.piece for one in steps),
            start=steps[0].start, end=steps[0].end,
        )  # fmt: skip
    for task in plan.inspect:
        yield Node(
            kind=StepKind.INSPECT, where="", pieces=task.pieces, start=task.start, end=task.end
        )


_WAY = list(StepKind)
_IN_DRUM = (StepKind.LOAD, StepKind.PROGRAMME, StepKind.UNLOAD)
_BY_HELPER = (
    StepKind.PREPARE, StepKind.LOAD, StepKind.UNLOAD, StepKind.BY_HAND, StepKind.INSPECT,
)  # fmt: skip


def find_order(instance: Instance, plan: Plan) -> list[Node]:
    """Find what each step follows, and put the steps into an order that respects it."""
    nodes = list(list_nodes(plan))
    _follow_chains(nodes)
    _follow_places(instance, nodes)
    order = list(
        TopologicalSorter({i: set(node.after) for i, node in enumerate(nodes)}).static_order()
    )
    place = {i: at for at, i in enumerate(order)}
    for node in nodes:
        node.after = [place[i] for i in node.after]
    return [nodes[i] for i in order]


def _follow_chains(nodes: list[Node]) -> None:
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


def _follow_places(instance: Instance, nodes: list[Node]) -> None:
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


def _take(slots: list[tuple[int, int]], need: int, i: int, node: Node) -> None:
    """Use the places that became free last, and follow whoever was there."""
    free = [slot for slot in range(len(slots)) if slots[slot][0] <= node.start]
    free.sort(key=lambda slot: slots[slot], reverse=True)
    for slot in free[:need]:
        if slots[slot][1] >= 0:
            node.after.append(slots[slot][1])
        slots[slot] = node.end, i
