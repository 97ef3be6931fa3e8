"""How does what is sorted become the neutral planning problem?

Everything a limit forbids is already out; what is left is weights, minutes and counts. Weights
never round in a load's favour, and times come from the end of every interval that was asked for.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from sootline.core.basis import ComponentId, Finding, MachineId, PlaceId, Quantity
from sootline.core.laundry.rooms import SinkUse, WashRoom
from sootline.core.laundry.sharing import apart
from sootline.core.washplan.durations import Pace
from sootline.core.washplan.facts import Cabinet, Member, Washer
from sootline.core.washplan.handled import Handled, handle
from sootline.core.washplan.hanging import choose_places
from sootline.core.washplan.instance import MOST_MINUTES, Instance
from sootline.core.washplan.machines import Chosen, changeovers, choose_settings, make_washers
from sootline.core.washplan.pieces import BASIN, BENCH, POOL, Carried, make_pieces
from sootline.core.washplan.question import Question
from sootline.core.washplan.weights import Scale, choose_scale


@dataclass(frozen=True, kw_only=True)
class Built:
    """The neutral problem, and the way back from it to components and sorts.

    Args:
        scale: the unit of weight the instance counts in.
        unweighed: components counted as the heaviest of their kind.
        refused: components nobody has a time for; they are not in the plan.
        rests_on: what the durations rest on where nobody measured them here.
    """

    instance: Instance
    carried: tuple[Carried, ...]
    chosen: tuple[Chosen, ...]
    scale: Scale
    unweighed: frozenset[ComponentId] = frozenset()
    refused: tuple[Finding, ...] = ()
    rests_on: tuple[Finding, ...] = ()

    def components_of(self, piece: ComponentId) -> tuple[ComponentId, ...]:
        """Return the components a neutral piece stands for.

        Raises:
            KeyError: no such piece.
        """
        return {one.piece: one.components for one in self.carried}[piece]


def build_instance(question: Question, pace: Pace) -> Built:
    """Build the neutral problem, reckoning with one end of every interval.

    Raises:
        BadInputError: amounts beyond all reason, shifts that overlap.
    """
    room = question.room
    components = {component.id: component for component in question.components}
    handled = handle(question.sorting, components, room)
    scale = choose_scale(_masses(handled, room))
    places = choose_places(handled, room)
    draft = make_pieces(handled, places, scale, question, pace)
    sorts = question.sorting.sorts
    chosen = choose_settings(sorts, room)
    waiting = {piece.member for piece in draft.pieces}
    members = (*question.members, *((_pool(),) if POOL in waiting else ()))
    washers = tuple(make_washers(chosen, room, handled, scale, pace))
    last = [one.id for one in sorts if room.hazards_last and one.settings and apart(one.separation)]
    instance = Instance(
        name=question.name,
        units={"time": "min", "weight": scale.name},
        members=tuple(member for member in members if member.id in waiting),
        pieces=tuple(draft.pieces),
        washers=washers,
        load_min=room.load_min,
        unload_min=room.unload_min,
        stations=_stations(room),
        rack_units=sum(place.places for place in places.racks),
        cabinets=tuple(Cabinet(id=one.id, units=one.places) for one in places.cabinets),
        helpers=_helpers(room, len(draft.pieces) + len(washers) + 1),
        changeover=tuple(changeovers(sorts, room)),
        late_families=tuple(last),
        washer_free=_free_from(room, washers),
    )
    return Built(
        instance=instance, carried=tuple(draft.carried), chosen=chosen, scale=scale,
        unweighed=frozenset(one.id for one in question.components if one.mass is None),
        refused=tuple(draft.refused), rests_on=tuple(dict.fromkeys(draft.notes)),
    )  # fmt: skip


def _masses(handled: Iterable[Handled], room: WashRoom) -> Iterator[Quantity]:
    for piece in handled:
        yield from piece.masses
    for washer in room.washers:
        if washer.limit is not None:
            yield washer.limit


def _pool() -> Member:
    """Make the member that spares and guests' gear belong to: washed too, but nobody waits."""
    return Member(id=POOL, priority=0)


def _stations(room: WashRoom) -> dict[PlaceId, int]:
    """Count the basins and benches that soiled gear may see."""
    usable = [sink for sink in room.sinks if sink.use is SinkUse.GEAR]
    benches = sum(sink.bench for sink in usable)
    counts = {BASIN: len(usable) - benches, BENCH: benches}
    return {place: count for place, count in counts.items() if count}


def _helpers(room: WashRoom, enough: int) -> tuple[tuple[int, int, int], ...]:
    """List the head counts; a room without shifts has somebody for every piece and drum."""
    if not room.shifts:
        return ((0, MOST_MINUTES, enough),)
    shifts = sorted(room.shifts, key=lambda shift: shift.start)
    return tuple((shift.start, shift.end, shift.helpers) for shift in shifts)


def _free_from(room: WashRoom, washers: Iterable[Washer]) -> dict[MachineId, int]:
    used = {washer.id for washer in washers}
    return {washer.id: washer.free_from for washer in room.washers if washer.id in used}
