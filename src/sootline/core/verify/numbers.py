"""Is anything ever used beyond its number: helpers, washers, stations, the rack, spares?"""

from collections import Counter
from collections.abc import Iterable, Iterator
from itertools import pairwise

from sootline.core.basis import Fault
from sootline.core.verify.book import Book, fault
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.steps import Load

Use = tuple[int, int, int]  # from minute, to minute, how many


def numbers(instance: Instance, book: Book, plan: Plan) -> Iterator[Fault]:
    """Check every number at every minute."""
    yield from _over("helpers", _helper_uses(instance, plan), instance.helpers)
    for station, count in instance.stations.items():
        uses = [(step.start, step.end, 1) for step in plan.hand if step.station == station]
        yield from _over(f"stations.{station}", uses, _always(count))
    hung = [
        (step.start, step.end, book.pieces[step.piece].units)
        for step in plan.dry
        if step.where == "rack"
    ]
    yield from _over("rack", hung, _always(instance.rack_units))
    yield from _spares(instance, book, plan)


def _always(count: int) -> tuple[Use, ...]:
    return ((0, 10**9, count),)


def _helper_uses(instance: Instance, plan: Plan) -> list[Use]:
    uses = [(task.start, task.end, 1) for task in (*plan.prep, *plan.inspect)]
    uses += [(step.start, step.end, 1) for step in plan.hand]
    for load in plan.loads:
        uses.append((load.load_start, load.load_start + instance.load_min, 1))
        uses.append((load.unload_start, load.unload_start + instance.unload_min, 1))
    return uses


def _over(place: str, uses: Iterable[Use], stock: Iterable[Use]) -> Iterator[Fault]:
    """Find the first minute at which more is used than is there."""
    change: Counter[int] = Counter()
    for sign, spans in ((1, uses), (-1, stock)):
        for start, end, amount in spans:
            if end > start:
                change[start] += sign * amount
                change[end] -= sign * amount
    over = 0
    # After the last use the stock may end below nothing used; only uses can exceed it.
    for minute in sorted(change):
        over += change[minute]
        if over > 0:
            yield fault(place, "number", value=over, minute=minute)
            return


def washers(instance: Instance, plan: Plan) -> Iterator[Fault]:
    """Check that a drum holds one load at a time, with its changeovers, dangerous ones last."""
    idle = {(one.before, one.after): one.minutes for one in instance.changeover}
    facts = {(load.washer, load.load_start, load.pieces) for load in instance.begun.loads}
    for washer in instance.washers:
        mine = sorted(
            (load for load in plan.loads if load.washer == washer.id),
            key=lambda load: (load.load_start, load.unload_end),
        )
        for before, after in pairwise(mine):
            free = before.unload_end + idle.get((before.family, after.family), 0)
            if after.load_start < free:
                place = f"{washer.id}@{after.load_start}"
                yield fault(place, "washer.busy", value=after.load_start, limit=free)
        planned = [one for one in mine if (one.washer, one.load_start, one.pieces) not in facts]
        yield from _late(instance, planned)


def _late(instance: Instance, planned: list[Load]) -> Iterator[Fault]:
    for before, after in pairwise(planned):
        if before.family in instance.late_families and after.family not in instance.late_families:
            place = f"{after.washer}@{after.load_start}"
            yield fault(place, "washer.late_family", value=after.family, limit=before.family)


def _spares(instance: Instance, book: Book, plan: Plan) -> Iterator[Fault]:
    stock = {(spare.type, spare.size): spare.count for spare in instance.spares}
    for piece, times in Counter(plan.spares).items():
        if times > 1:
            yield fault(f"spares.{piece}", "spare.twice", value=times, limit=1)
    kinds = ((book.pieces[one].type, book.pieces[one].size) for one in plan.spares)
    for kind, used in Counter(kinds).items():
        if used > stock.get(kind, 0):
            place = f"spares.{' / '.join(kind)}"
            yield fault(place, "spare.stock", value=used, limit=stock.get(kind, 0))
