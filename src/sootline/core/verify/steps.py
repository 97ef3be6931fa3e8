"""Does every single step last what it must, follow what it must, and suit its machine?"""

from collections.abc import Callable, Iterator

from sootline.core.basis import Fault
from sootline.core.verify.book import Book, fault
from sootline.core.washplan.facts import Piece, Programme
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.steps import Drying, Load, Task


def tasks(book: Book, plan: Plan) -> Iterator[Fault]:
    """Check preparation and inspection: their minutes, and what must come before."""
    for task in plan.prep:
        yield from _task("prep", task, lambda piece: piece.prep, book.release, book)
    for task in plan.inspect:
        yield from _task("inspect", task, lambda piece: piece.inspect, book.dry, book)


def _task(
    step: str, task: Task, minutes: Callable[[Piece], int], after: Callable[[str], int], book: Book
) -> Iterator[Fault]:
    place = f"{step}.{'+'.join(task.pieces)}"
    need = sum(minutes(book.pieces[piece]) for piece in task.pieces)
    if task.end - task.start != need:
        yield fault(place, f"{step}.minutes", value=task.end - task.start, limit=need)
    for piece in task.pieces:
        if task.start < after(piece):
            yield fault(place, f"{step}.early", value=task.start, limit=after(piece), piece=piece)


def hand(book: Book, plan: Plan) -> Iterator[Fault]:
    """Check washing by hand: the right station, the minutes, and preparation before."""
    for step in plan.hand:
        piece, place = book.pieces[step.piece], f"hand.{step.piece}"
        if step.station != piece.hand_station:
            yield fault(place, "hand.station", value=step.station, limit=piece.hand_station)
        if step.end - step.start != piece.hand_min:
            yield fault(place, "hand.minutes", value=step.end - step.start, limit=piece.hand_min)
        if step.start < book.prepared(step.piece):
            yield fault(place, "hand.early", value=step.start, limit=book.prepared(step.piece))


def loads(instance: Instance, book: Book, plan: Plan) -> Iterator[Fault]:
    """Check each drum: programme, contents, limits, times. A load already begun is a fact."""
    washers = {washer.id: washer for washer in instance.washers}
    facts = {(load.washer, load.load_start, load.pieces) for load in instance.begun.loads}
    for i, load in enumerate(plan.loads):
        place = f"loads[{i}]"
        if not load.pieces:
            yield fault(place, "load.empty")
        yield from _unloading(instance, load, place)
        if (load.washer, load.load_start, load.pieces) in facts:
            continue
        programme = washers[load.washer].programmes.get(load.family)
        if programme is None:
            yield fault(place, "load.programme", value=load.family, washer=load.washer)
            continue
        yield from _contents(book, load, programme, place)
        yield from _load_times(instance, book, load, programme, place)


def _contents(book: Book, load: Load, programme: Programme, place: str) -> Iterator[Fault]:
    for piece in (book.pieces[one] for one in load.pieces):
        if piece.family != load.family:
            yield fault(place, "load.family", value=piece.family, limit=load.family, piece=piece.id)
        if piece.hand_station is not None:
            yield fault(place, "load.by_hand", value=piece.id, limit=piece.hand_station)
        if programme.temp > piece.max_temp:
            yield fault(place, "load.temp", value=programme.temp, limit=piece.max_temp)
    weight = sum(book.pieces[piece].weight for piece in load.pieces)
    if weight > programme.cap:
        yield fault(place, "load.weight", value=weight, limit=programme.cap)
    if programme.max_pieces is not None and len(load.pieces) > programme.max_pieces:
        yield fault(place, "load.pieces", value=len(load.pieces), limit=programme.max_pieces)


def _load_times(
    instance: Instance, book: Book, load: Load, programme: Programme, place: str
) -> Iterator[Fault]:
    if load.prog_start - load.load_start != instance.load_min:
        minutes = load.prog_start - load.load_start
        yield fault(place, "load.loading", value=minutes, limit=instance.load_min)
    if load.prog_end - load.prog_start != programme.min:
        minutes = load.prog_end - load.prog_start
        yield fault(place, "load.minutes", value=minutes, limit=programme.min)
    free = instance.washer_free.get(load.washer, 0)
    if load.load_start < free:
        yield fault(place, "load.washer_free", value=load.load_start, limit=free)
    for piece in load.pieces:
        if load.load_start < book.prepared(piece):
            limit = book.prepared(piece)
            yield fault(place, "load.early", value=load.load_start, limit=limit, piece=piece)


def _unloading(instance: Instance, load: Load, place: str) -> Iterator[Fault]:
    if load.unload_end - load.unload_start != instance.unload_min:
        minutes = load.unload_end - load.unload_start
        yield fault(place, "load.unloading", value=minutes, limit=instance.unload_min)
    if load.unload_start < load.prog_end:
        yield fault(place, "load.unload_early", value=load.unload_start, limit=load.prog_end)


def drying(instance: Instance, book: Book, plan: Plan) -> Iterator[Fault]:
    """Check each piece's drying: an allowed place, its full time, after washing.

    How long something has to hang that hung before was said by whoever found it damp.
    """
    begun = set(instance.begun.dry)
    for step in plan.dry:
        piece = book.pieces[step.piece]
        place = f"dry.{step.piece}"
        need = piece.dry_rack if step.where == "rack" else piece.dry_cab
        if need is None:
            yield fault(place, "dry.place", value=step.where)
        elif step.end - step.start < need and step not in begun:
            yield fault(place, "dry.minutes", value=step.end - step.start, limit=need)
        if step.start < book.wet(step.piece):
            yield fault(place, "dry.early", value=step.start, limit=book.wet(step.piece))


def cabinet_runs(instance: Instance, book: Book, plan: Plan) -> Iterator[Fault]:
    """Check that a cabinet is there, opened only between runs and never holds more than it can."""
    begun = {(step.where, step.start) for step in instance.begun.dry}
    for cabinet in instance.cabinets:
        free = instance.dryer_free.get(cabinet.id, 0)
        runs: dict[int, list[Drying]] = {}
        for step in plan.dry:
            if step.where == cabinet.id:
                runs.setdefault(step.start, []).append(step)
        closed_until = 0
        for start, steps in sorted(runs.items()):
            place = f"{cabinet.id}@{start}"
            if (free is None or start < free) and (cabinet.id, start) not in begun:
                yield fault(place, "cabinet.free", value=start, limit=free)
            if start < closed_until:
                yield fault(place, "cabinet.opened", value=start, limit=closed_until)
            if len({step.end for step in steps}) > 1:
                yield fault(place, "cabinet.ends", value=sorted({step.end for step in steps}))
            units = sum(book.pieces[step.piece].units for step in steps)
            if units > cabinet.units:
                yield fault(place, "cabinet.units", value=units, limit=cabinet.units)
            closed_until = max([closed_until, *(step.end for step in steps)])
