"""What does the exact model make of a plan, and which plan is its solution?

Nothing here knows the solver: its variables are handed through, its values asked for.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any, Protocol

from sootline.core.basis import ComponentId, PlaceId
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.shop import Shop
from sootline.core.washplan.steps import RACK, Drying, HandWash, Load, Task

Number = Any  # a variable of the solver
Value = Callable[[Number], int]


@dataclass(kw_only=True)
class Slot:
    """One load that a washer may run: its start, its end, and the family it takes."""

    start: Number
    out: Number
    end: Number
    used: Number
    families: dict[int, Number]
    inside: dict[int, Number]


@dataclass(kw_only=True)
class Run:
    """One run that a cabinet may make."""

    start: Number
    end: Number
    inside: dict[int, Number]


class Model(Protocol):
    """The variables of a call: per item, per washer its slots, per cabinet its runs."""

    instance: Instance
    shop: Shop
    end: int
    wet: list[Number]
    prep: list[Number]
    hand: list[Number]
    dry: list[Number]
    check: list[Number]
    ready: list[Number]
    covered: dict[int, Number]
    slots: list[list[Slot]]
    runs: list[list[Run]]


def hints(model: Model, known: Plan) -> Iterator[tuple[Number, int]]:
    """Say of every variable what the known plan makes it."""
    items = model.shop.items
    number = {item.pieces[0].id: i for i, item in enumerate(items)}
    for task in known.prep:
        at = task.start
        for piece in task.pieces:
            yield model.prep[number[piece]], at
            at += items[number[piece]].prep
    for load in known.loads:
        for piece in load.pieces:
            yield model.wet[number[piece]], load.unload_end
    for step in known.hand:
        yield model.wet[number[step.piece]], step.end
        yield model.hand[number[step.piece]], step.start
    for drying in known.dry:
        yield model.dry[number[drying.piece]], drying.start
    for task in known.inspect:
        at = task.start
        for piece in task.pieces:
            yield model.check[number[piece]], at
            at += items[number[piece]].inspect
    yield from _slot_hints(model, known, number)
    for i, flag in model.covered.items():
        yield flag, int(items[i].pieces[0].id in known.spares)
    for ready, member in zip(model.ready, model.instance.members, strict=True):
        yield ready, known.ready[member.id]


def _slot_hints(
    model: Model, known: Plan, number: dict[ComponentId, int]
) -> Iterator[tuple[Number, int]]:
    for washer, slots in zip(model.instance.washers, model.slots, strict=True):
        loads = sorted(
            (load for load in known.loads if load.washer == washer.id),
            key=lambda load: load.load_start,
        )
        for at, slot in enumerate(slots):
            load = loads[at] if at < len(loads) else None
            inside = {number[piece] for piece in load.pieces} if load else set()
            yield slot.used, int(load is not None)
            yield slot.start, load.load_start if load else model.end
            yield slot.out, load.unload_start if load else model.end
            yield slot.end, load.unload_end if load else model.end
            for family, flag in slot.families.items():
                same = load is not None and model.shop.families[family] == load.family
                yield flag, int(same)
            for i, x in slot.inside.items():
                yield x, int(i in inside)
    for c in range(len(model.runs)):
        yield from _run_hints(model, known, c, number)


def _run_hints(
    model: Model, known: Plan, c: int, number: dict[ComponentId, int]
) -> Iterator[tuple[Number, int]]:
    closed: dict[tuple[int, int], set[int]] = {}
    for step in known.dry:
        if step.where == model.instance.open_cabinets[c].id:
            closed.setdefault((step.start, step.end), set()).add(number[step.piece])
    ran = sorted(closed.items())
    for at, run in enumerate(model.runs[c]):
        (start, end), inside = ran[at] if at < len(ran) else ((model.end, model.end), set())
        yield run.start, start
        yield run.end, end
        for i, x in run.inside.items():
            yield x, int(i in inside)


def read_plan(model: Model, value: Value) -> Plan:
    """Read the plan that was found, minute by minute."""
    items, instance = model.shop.items, model.instance
    ids = [item.pieces[0].id for item in items]
    covered = _lent(model, value)
    done = [value(model.check[i]) + item.inspect for i, item in enumerate(items)]
    ready = list(model.shop.release)
    for i, item in enumerate(items):
        if i not in covered:
            ready[item.member] = max(ready[item.member], done[i])
    return Plan(
        instance=instance.name,
        loads=tuple(sorted(_loads(model, value, ids), key=lambda load: load.load_start)),
        prep=tuple(
            Task(pieces=(ids[i],), start=value(at), end=value(at) + items[i].prep)
            for i, at in enumerate(model.prep)
            if items[i].prep
        ),
        hand=tuple(
            HandWash(
                station=list(instance.stations)[items[i].station], piece=ids[i],
                start=value(at), end=value(at) + items[i].hand,
            )
            for i, at in enumerate(model.hand)
            if items[i].hand
        ),
        dry=tuple(_dryings(model, value, ids)),
        inspect=tuple(
            Task(pieces=(ids[i],), start=value(at), end=done[i])
            for i, at in enumerate(model.check)
            if items[i].inspect
        ),
        spares=tuple(ids[i] for i in sorted(covered)),
        ready={member.id: ready[m] for m, member in enumerate(instance.members)},
        objective=sum(p * at for p, at in zip(model.shop.priority, ready, strict=True)),
        makespan=max(_through(model, value, i, done[i]) for i in range(len(items))),
    )  # fmt: skip


def _through(model: Model, value: Value, i: int, checked: int) -> int:
    """Return when a piece is through: a check of no minutes is not a step of its own."""
    return checked if model.shop.items[i].inspect else _dried(model, value, i)[1]


def _lent(model: Model, value: Value) -> set[int]:
    """List the pieces that spares stand in for; who has no priority gets none."""
    return {
        i
        for i, flag in model.covered.items()
        if model.shop.priority[model.shop.items[i].member] and value(flag)
    }


def _loads(model: Model, value: Value, ids: list[ComponentId]) -> Iterator[Load]:
    instance = model.instance
    for w, slots in enumerate(model.slots):
        for slot in slots:
            inside = [i for i, x in slot.inside.items() if value(x)]
            if not inside:
                continue
            family = model.shop.items[inside[0]].family
            programme = model.shop.machine[w][family]
            assert programme is not None  # a washer's pieces have a programme there
            start = value(slot.start)
            yield Load(
                washer=instance.washers[w].id, family=model.shop.families[family],
                load_start=start, prog_start=start + instance.load_min,
                prog_end=start + instance.load_min + programme[1],
                unload_start=value(slot.out), unload_end=value(slot.end),
                pieces=tuple(ids[i] for i in inside),
            )  # fmt: skip


def _dried(model: Model, value: Value, i: int) -> tuple[PlaceId, int]:
    """Return where a piece dries and until when."""
    for cabinet, runs in zip(model.instance.open_cabinets, model.runs, strict=True):
        for run in runs:
            if i in run.inside and value(run.inside[i]):
                return cabinet.id, value(run.end)
    return RACK, value(model.dry[i]) + model.shop.items[i].rack


def _dryings(model: Model, value: Value, ids: list[ComponentId]) -> Iterator[Drying]:
    for i, piece in enumerate(ids):
        where, end = _dried(model, value, i)
        yield Drying(piece=piece, where=where, start=value(model.dry[i]), end=end)
