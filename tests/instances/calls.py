"""Seeded calls of the neutral kind: plain and hazardous families, shifts, cabinets, spares.

All durations and weights are invented.
"""

from random import Random

from sootline.core.basis import ComponentId, MachineId, MemberId, PlaceId
from sootline.core.washplan import Cabinet, Instance, Member, Piece, Programme, Spare, Washer
from tests.instances.chance import seeded

SINK, BENCH = PlaceId("sink"), PlaceId("bench")
SIZES = {"S": 0.9, "M": 1.0, "L": 1.08, "XL": 1.16}
# type, family, weight of size M [0.1 lb], prep, inspect, station, hand, units, rack, cabinet
SET = (
    ("coat shell", "S", 38, 3, 3, None, 0, 2, 175, 115),
    ("trouser shell", "S", 33, 2, 3, None, 0, 2, 175, 115),
    ("coat liner", "L", 30, 2, 3, None, 0, 2, 290, 175),
    ("trouser liner", "L", 27, 2, 2, None, 0, 2, 290, 175),
    ("hood", "L", 4, 1, 1, None, 0, 1, 145, 85),
    ("ear and neck cover", "L", 4, 1, 1, None, 0, 1, 145, 85),
    ("drag device", "L", 7, 1, 1, None, 0, 1, 145, 85),
    ("suspenders", "L", 6, 1, 1, None, 0, 1, 145, 85),
    ("gloves", "H", 9, 0, 2, SINK, 8, 1, 350, 235),
    ("helmet soft parts", "H", 3, 0, 1, SINK, 5, 1, 175, 115),
    ("helmet shell", "B", 33, 0, 2, BENCH, 7, 0, 55, None),
    ("boots", "B", 52, 0, 2, BENCH, 8, 0, 235, None),
)


def call(
    members: int, *, seed: int, washers: int = 1, cabinets: int = 0, hazard: float = 0.0,
    spares: bool = False, shifts: bool = False, rack_per_member: int = 14,
) -> Instance:  # fmt: skip
    """Make a call.

    Args:
        hazard: share of the members whose gear goes in drums of its own, longer and less full.
        rack_per_member: hanger units; a whole set takes 15.
    """
    chance = seeded(seed)
    people = tuple(
        Member(id=MemberId(f"m{m:02}"), crew=f"c{m // 4}", priority=chance.choice((1, 1, 2, 3)))
        for m in range(members)
    )
    pieces = [
        piece
        for person in people
        for piece in _set(person.id, chance, soiled=chance.random() < hazard)
    ]
    heads = 1 + (members > 8) + (members > 20)
    three_shifts = ((0, 480, heads), (480, 960, max(1, heads - 1)), (960, 1_000_000, heads))
    return Instance(
        name=f"call {members} seed {seed}",
        units={"time": "min", "weight": "0.1 lb"},
        members=people,
        pieces=tuple(pieces),
        washers=tuple(_washer(w, 180 if members < 8 else 300 + 150 * w) for w in range(washers)),
        load_min=5,
        unload_min=5,
        stations={SINK: 1 + (members > 8), BENCH: 1 + (members > 8)},
        rack_units=rack_per_member * members,
        cabinets=tuple(Cabinet(id=PlaceId(f"d{c}"), units=24) for c in range(cabinets)),
        helpers=three_shifts if shifts else ((0, 1_000_000, heads),),
        spares=_spares(chance) if spares else (),
    )


def _set(member: MemberId, chance: Random, *, soiled: bool) -> list[Piece]:
    size = chance.choice(tuple(SIZES))
    left_out = {"hood"} if chance.random() < 0.2 else set()
    return [
        Piece(
            id=ComponentId(f"{member}-{n}"), member=member, type=kind, size=size,
            weight=max(1, round(weight * SIZES[size]) + chance.randrange(-2, 3)),
            family=f"{family}x" if soiled and station is None else family,
            max_temp=40, prep=prep + (soiled and prep > 0), inspect=inspect, hand_station=station,
            hand_min=hand, units=units, dry_rack=rack, dry_cab=cab,
        )
        for n, (kind, family, weight, prep, inspect, station, hand, units, rack, cab)
        in enumerate(SET)
        if kind not in left_out
    ]  # fmt: skip


def _washer(w: int, cap: int) -> Washer:
    less = cap * 4 // 5
    return Washer(
        id=MachineId(f"w{w}"),
        programmes={
            "S": Programme(cap=cap, min=60, temp=40),
            "L": Programme(cap=cap, min=50, temp=40),
            "Sx": Programme(cap=less, min=75, temp=40),
            "Lx": Programme(cap=less, min=65, temp=40),
        },
    )


def _spares(chance: Random) -> tuple[Spare, ...]:
    return tuple(
        Spare(type=kind, size=size, count=chance.randrange(1, 3))
        for kind in ("gloves", "hood")
        for size in SIZES
    )


def variety() -> tuple[Instance, ...]:
    """Return twelve calls of 4 to 60 members of every variant."""
    return (
        call(4, seed=11),
        call(6, seed=12, hazard=0.4),
        call(6, seed=13, cabinets=1),
        call(14, seed=14),
        call(12, seed=15, washers=2, spares=True),
        call(12, seed=16, cabinets=1, shifts=True),
        call(30, seed=17),
        call(30, seed=18, washers=2, rack_per_member=4),
        call(24, seed=19, washers=2, hazard=0.3, cabinets=2, spares=True),
        call(60, seed=20),
        call(60, seed=21, washers=2, shifts=True, spares=True, hazard=0.2),
        call(60, seed=22, washers=3, cabinets=3),
    )
