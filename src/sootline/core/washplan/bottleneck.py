"""Which machine, place or helper holds a plan up?"""

from collections.abc import Iterator
from dataclasses import dataclass

from sootline.core.basis import Bearing, Finding, finding
from sootline.core.laundry.goods import practice
from sootline.core.washplan.facts import Piece
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.steps import RACK


@dataclass(frozen=True, kw_only=True)
class Pressure:
    """How long one resource alone keeps a plan going.

    Args:
        resource: "washers", "rack", "cabinets", "helpers", or a hand station.
        busy: minutes of use in all, over every place of the resource [min].
        places: how many there are.
        until: no plan with these loads can be over before, for this resource's sake [min].
    """

    resource: str
    busy: int
    places: int
    until: int

    @property
    def finding(self) -> Finding:
        """Say it as a reason."""
        values = {"busy": self.busy, "places": self.places, "until": self.until}
        message = f"plan.bottleneck.{self.resource}"
        return finding(Bearing.NOTES, message, practice("wash.bottleneck"), **values)


def list_pressures(instance: Instance, plan: Plan) -> tuple[Pressure, ...]:
    """List what the plan needs of every resource, the bottleneck first.

    Each resource starts once its first piece can reach it, shares its minutes evenly over its
    places, and is followed by the shortest way to the end.
    """
    found = [*_washers(instance, plan), *_drying(instance, plan), *_people(instance, plan)]
    return tuple(sorted(found, key=lambda pressure: -pressure.until))


def _washers(instance: Instance, plan: Plan) -> Iterator[Pressure]:
    if not plan.loads:
        return
    used = {load.washer for load in plan.loads}
    busy = sum(load.prog_end - load.load_start + instance.unload_min for load in plan.loads)
    pieces = [piece for piece in instance.pieces if piece.hand_station is None]
    first = min(load.load_start for load in plan.loads)
    until = first + busy // len(used) + min(_dry(piece) + piece.inspect for piece in pieces)
    yield Pressure(resource="washers", busy=busy, places=len(used), until=until)


def _drying(instance: Instance, plan: Plan) -> Iterator[Pressure]:
    taking = {piece.id: piece for piece in instance.pieces if piece.units}
    hung = [step for step in plan.dry if step.piece in taking]
    places = {"rack": instance.rack_units, "cabinets": sum(one.units for one in instance.cabinets)}
    for resource, units in places.items():
        steps = [step for step in hung if (step.where == RACK) is (resource == "rack")]
        if not steps:
            continue
        pieces = [taking[step.piece] for step in steps]
        busy = sum(
            piece.units * (piece.dry_rack if resource == "rack" else piece.dry_cab or 0)
            for piece in pieces
        )
        first = min(step.start for step in steps)
        until = first + busy // units + min(piece.inspect for piece in pieces)
        yield Pressure(resource=resource, busy=busy, places=units, until=until)


def _people(instance: Instance, plan: Plan) -> Iterator[Pressure]:
    heads = max((count for _, _, count in instance.helpers), default=0)
    by_hand = sum(piece.hand_min for piece in instance.pieces if piece.hand_station)
    around = sum(piece.prep + piece.inspect for piece in instance.pieces)
    loading = len(plan.loads) * (instance.load_min + instance.unload_min)
    busy = by_hand + around + loading
    if busy:
        yield Pressure(resource="helpers", busy=busy, places=heads, until=busy // heads)
    for station, count in instance.stations.items():
        pieces = [piece for piece in instance.pieces if piece.hand_station == station]
        if pieces:
            busy = sum(piece.hand_min for piece in pieces)
            after = min(_dry(piece) + piece.inspect for piece in pieces)
            yield Pressure(resource=station, busy=busy, places=count, until=busy // count + after)


def _dry(piece: Piece) -> int:
    return piece.dry_rack if piece.dry_cab is None else min(piece.dry_rack, piece.dry_cab)
