"""What has to be prepared, washed, dried and inspected, and with what?

The fields up to `spares` are the neutral instance file; those after it carry what real plans add
and stay empty for a neutral one.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from sootline.core.basis import BadInputError, Fault, MachineId, MessageId, PlaceId
from sootline.core.washplan.facts import (
    Begun,
    Cabinet,
    Changeover,
    Member,
    Piece,
    Spare,
    Washer,
)
from sootline.core.washplan.steps import RACK

MOST_PIECES = 5_000
MOST_MINUTES = 10_000_000
MOST_AMOUNT = 1_000_000


@dataclass(frozen=True, kw_only=True)
class Instance:
    """The whole question of one wash plan.

    Args:
        helpers: (from minute, to minute, head count); outside of them nobody is there.
        rack_units: hanger units of all racks together.
        changeover: idle minutes between families; pairs that are not listed need none.
        late_families: in each washer after every load of the others (the most dangerous last).
        washer_free: when a washer becomes available, 0 where not listed [min].
        dryer_free: likewise for cabinets; None means not within this plan.
        begun: what runs or is done already.

    Raises:
        BadInputError: with every fault found.
    """

    name: str
    units: Mapping[str, str] = field(default_factory=dict)
    members: tuple[Member, ...]
    pieces: tuple[Piece, ...]
    washers: tuple[Washer, ...]
    load_min: int
    unload_min: int
    stations: Mapping[PlaceId, int]
    rack_units: int
    cabinets: tuple[Cabinet, ...] = ()
    helpers: tuple[tuple[int, int, int], ...]
    spares: tuple[Spare, ...] = ()
    changeover: tuple[Changeover, ...] = ()
    late_families: tuple[str, ...] = ()
    washer_free: Mapping[MachineId, int] = field(default_factory=dict)
    dryer_free: Mapping[PlaceId, int | None] = field(default_factory=dict)
    begun: Begun = field(default_factory=Begun)

    def __post_init__(self) -> None:
        faults = tuple(_faults(self))
        if faults:
            raise BadInputError(faults)

    @property
    def open_cabinets(self) -> tuple[Cabinet, ...]:
        """The cabinets in which anything can still be dried."""
        return tuple(one for one in self.cabinets if self.dryer_free.get(one.id, 0) is not None)

    def washers_for(self, piece: Piece) -> tuple[Washer, ...]:
        """Say which washers may take this piece by family, weight and temperature."""
        return tuple(
            washer
            for washer in self.washers
            if (programme := washer.programmes.get(piece.family))
            and piece.weight <= programme.cap
            and programme.temp <= piece.max_temp
        )


def _fault(place: str, message: str, **values: object) -> Fault:
    named = tuple((name, str(value)) for name, value in values.items())
    return Fault(place=place, message=MessageId(f"washplan.{message}"), values=named)


def _faults(instance: Instance) -> Iterator[Fault]:
    if len(instance.pieces) > MOST_PIECES or len(instance.members) > MOST_PIECES:
        # Nothing else is looked at: the refusal itself has to stay cheap.
        yield _fault("pieces", "too_many", value=len(instance.pieces), limit=MOST_PIECES)
        return
    for where, ids in _ids(instance):
        for one, times in Counter(ids).items():
            if times > 1:
                yield _fault(where, "twice", value=one)
    yield from _numbers(instance)
    yield from _piece_faults(instance)
    yield from _helper_faults(instance)
    yield from _reference_faults(instance)


def _ids(instance: Instance) -> Iterator[tuple[str, list[str]]]:
    yield "members", [member.id for member in instance.members]
    yield "pieces", [piece.id for piece in instance.pieces]
    yield "washers", [washer.id for washer in instance.washers]
    yield "cabinets", [RACK, *(cabinet.id for cabinet in instance.cabinets)]
    yield "spares", [f"{spare.type} / {spare.size}" for spare in instance.spares]


def _numbers(instance: Instance) -> Iterator[Fault]:
    """Find amounts below nothing or beyond all reason."""
    for place, value, least, most in _amounts(instance):
        if not least <= value <= most:
            yield _fault(place, "amount", value=value, least=least, limit=most)


def _amounts(instance: Instance) -> Iterator[tuple[str, int, int, int]]:
    for name in ("load_min", "unload_min", "rack_units"):
        yield name, getattr(instance, name), 0, MOST_AMOUNT
    for station, count in instance.stations.items():
        yield f"stations.{station}", count, 0, MOST_AMOUNT
    for name, minute in instance.washer_free.items():
        yield f"washer_free.{name}", minute, 0, MOST_MINUTES
    for dryer, since in instance.dryer_free.items():
        yield f"dryer_free.{dryer}", since or 0, 0, MOST_MINUTES
    for i, member in enumerate(instance.members):
        yield f"members[{i}].priority", member.priority, 0, MOST_AMOUNT
        yield f"members[{i}].release", member.release, 0, MOST_AMOUNT
    for i, piece in enumerate(instance.pieces):
        for name in ("weight", "prep", "inspect", "hand_min", "units", "dry_rack"):
            yield f"pieces[{i}].{name}", getattr(piece, name), 0, MOST_AMOUNT
        yield f"pieces[{i}].dry_cab", piece.dry_cab or 0, 0, MOST_AMOUNT
    for i, washer in enumerate(instance.washers):
        for family, programme in washer.programmes.items():
            place = f"washers[{i}].programmes.{family}"
            yield f"{place}.cap", programme.cap, 0, MOST_AMOUNT
            yield f"{place}.min", programme.min, 1, MOST_AMOUNT
            pieces = 1 if programme.max_pieces is None else programme.max_pieces
            yield f"{place}.max_pieces", pieces, 1, MOST_AMOUNT
    for i, cabinet in enumerate(instance.cabinets):
        yield f"cabinets[{i}].units", cabinet.units, 0, MOST_AMOUNT
    for i, spare in enumerate(instance.spares):
        yield f"spares[{i}].count", spare.count, 0, MOST_AMOUNT
    for i, change in enumerate(instance.changeover):
        yield f"changeover[{i}].minutes", change.minutes, 0, MOST_AMOUNT


def _piece_faults(instance: Instance) -> Iterator[Fault]:
    members = {member.id for member in instance.members}
    washed = {piece for load in instance.begun.loads for piece in load.pieces}
    dried = {step.piece for step in instance.begun.dry}
    for i, piece in enumerate(instance.pieces):
        place = f"pieces[{i}]"
        if piece.member not in members:
            yield _fault(f"{place}.member", "unknown", value=piece.member)
        if piece.hand_station is not None:
            if instance.stations.get(piece.hand_station, 0) < 1:
                yield _fault(f"{place}.hand_station", "unknown", value=piece.hand_station)
        elif piece.id not in washed:
            yield from _washer_faults(instance, piece, place)
        cabinets = [box.units for box in instance.open_cabinets if piece.dry_cab is not None]
        most = max([instance.rack_units, *cabinets])
        if piece.units > most and piece.id not in dried:
            yield _fault(f"{place}.units", "no_place", value=piece.units, limit=most)


def _washer_faults(instance: Instance, piece: Piece, place: str) -> Iterator[Fault]:
    """Say why no washer may take the piece: no programme, too heavy, or too hot."""
    runs = [run for washer in instance.washers if (run := washer.programmes.get(piece.family))]
    cool = [run for run in runs if run.temp <= piece.max_temp]
    if not runs:
        yield _fault(f"{place}.family", "no_programme", value=piece.family)
    elif not cool:
        limit = min(run.temp for run in runs)
        yield _fault(f"{place}.max_temp", "too_hot", value=piece.max_temp, limit=limit)
    elif piece.weight > (limit := max(run.cap for run in cool)):
        yield _fault(f"{place}.weight", "too_heavy", value=piece.weight, limit=limit)


def _helper_faults(instance: Instance) -> Iterator[Fault]:
    last = 0
    for i, (start, end, count) in enumerate(instance.helpers):
        if start < last or end <= start or count < 0 or end > MOST_MINUTES:
            yield _fault(f"helpers[{i}]", "shift", value=f"{start}-{end}: {count}", limit=last)
        last = max(last, end)
    if instance.pieces and not any(count > 0 for _, _, count in instance.helpers):
        yield _fault("helpers", "nobody")


def _reference_faults(instance: Instance) -> Iterator[Fault]:
    """Find what begun steps and machine times name without its being there."""
    pieces: set[str] = {piece.id for piece in instance.pieces}
    washers: set[str] = {washer.id for washer in instance.washers}
    places: set[str] = {RACK, *(cabinet.id for cabinet in instance.cabinets)}
    begun = instance.begun
    named: list[tuple[str, Iterable[str], set[str]]] = [
        ("washer_free", instance.washer_free, washers),
        ("dryer_free", instance.dryer_free, places - {RACK}),
        ("begun.loads", [load.washer for load in begun.loads], washers),
        ("begun.loads", [piece for load in begun.loads for piece in load.pieces], pieces),
        ("begun.prep", [piece for task in begun.prep for piece in task.pieces], pieces),
        ("begun.hand", [step.piece for step in begun.hand], pieces),
        ("begun.hand", [step.station for step in begun.hand], set(instance.stations)),
        ("begun.dry", [step.piece for step in begun.dry], pieces),
        ("begun.dry", [step.where for step in begun.dry], places),
        ("begun.inspect", [piece for task in begun.inspect for piece in task.pieces], pieces),
        ("begun.spares", begun.spares, pieces),
    ]
    for place, values, known in named:
        for value in values:
            if value not in known:
                yield _fault(place, "unknown", value=value)
