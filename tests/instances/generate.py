"""Seeded generators of instances. All durations and weights in them are invented."""

from random import Random

from sootline.core.basis import ComponentId, MachineId, MemberId, PlaceId
from sootline.core.washplan import Cabinet, Instance, Member, Piece, Programme, Spare, Washer
from tests.instances.chance import seeded

SINK, BENCH = PlaceId("sink"), PlaceId("bench")
# type, family, mean weight, prep, inspect, hand minutes, hanger units, rack and cabinet minutes
SET = (
    ("coat shell", "S", 36, 3, 3, 0, 2, 170, 110),
    ("trouser shell", "S", 31, 2, 3, 0, 2, 170, 110),
    ("coat liner", "L", 29, 2, 3, 0, 2, 280, 170),
    ("trouser liner", "L", 27, 2, 2, 0, 2, 280, 170),
    ("hood", "L", 4, 1, 1, 0, 1, 140, 80),
    ("ear and neck cover", "L", 5, 1, 1, 0, 1, 140, 80),
    ("suspenders", "L", 6, 1, 1, 0, 1, 140, 80),
    ("gloves", "H", 8, 0, 2, 8, 1, 340, 230),
    ("boots", "B", 50, 0, 2, 8, 0, 230, None),
)


def crews(members: int, *, seed: int, washers: int = 1, cabinets: int = 0) -> Instance:
    """Make a call's worth of gear: whole sets, two hand stations, priorities one to three."""
    chance = seeded(seed)
    sizes = ("S", "M", "L", "XL")
    people = tuple(
        Member(id=MemberId(f"m{m:02}"), crew=f"c{m // 4}", priority=chance.choice((1, 1, 2, 3)))
        for m in range(members)
    )
    pieces = tuple(
        _piece(person.id, n, chance, chance.choice(sizes)) for person in people for n in range(9)
    )
    return Instance(
        name=f"crews {members} seed {seed}",
        units={"time": "min", "weight": "0.1 lb"},
        members=people,
        pieces=pieces,
        washers=tuple(
            Washer(
                id=MachineId(f"w{w}"),
                programmes={
                    "S": Programme(cap=240 + 120 * w, min=60, temp=40),
                    "L": Programme(cap=240 + 120 * w, min=50, temp=40),
                },
            )
            for w in range(washers)
        ),
        load_min=5,
        unload_min=5,
        stations={SINK: 2, BENCH: 2},
        rack_units=8 * members,
        cabinets=tuple(Cabinet(id=PlaceId(f"d{c}"), units=20) for c in range(cabinets)),
        helpers=((0, 1_000_000, 2 + members // 40),),
        spares=(Spare(type="hood", size="M", count=2), Spare(type="gloves", size="L", count=1)),
    )


def _piece(member: MemberId, n: int, chance: Random, size: str) -> Piece:
    kind, family, weight, prep, inspect, hand, units, rack, cab = SET[n]
    station = {"H": SINK, "B": BENCH}.get(family)
    return Piece(
        id=ComponentId(f"{member}-{n}"), member=member, type=kind, size=size,
        weight=max(1, weight + chance.randrange(-weight // 8, weight // 8 + 1)), family=family,
        max_temp=40, prep=prep, inspect=inspect, hand_station=station, hand_min=hand, units=units,
        dry_rack=rack, dry_cab=cab,
    )  # fmt: skip


def tiny(seed: int) -> Instance:
    """Make an instance of three or four pieces and few minutes, small enough to try everything."""
    chance = seeded(seed)
    count = chance.choice((2, 3, 3, 3))
    people = tuple(
        Member(
            id=MemberId(f"m{m}"), priority=chance.randrange(1, 4), release=chance.choice((0, 0, 1))
        )
        for m in range(2)
    )
    pieces = tuple(_tiny_piece(chance, n, people[n % 2].id) for n in range(count))
    two_shifts = ((0, 3, 2), (3, 1_000_000, 1))
    return Instance(
        name=f"tiny {seed}",
        members=people,
        pieces=pieces,
        washers=tuple(
            Washer(
                id=MachineId(f"w{w}"),
                programmes={
                    "S": Programme(cap=4 + w, min=chance.randrange(1, 4), temp=40),
                    "L": Programme(cap=4, min=chance.randrange(1, 4), temp=40),
                },
            )
            for w in range(chance.choice((1, 1, 1, 1, 2)))
        ),
        load_min=chance.choice((0, 1, 1)),
        unload_min=chance.choice((0, 1, 1)),
        stations={SINK: 1},
        rack_units=chance.choice((2, 3, 4)),
        cabinets=(Cabinet(id=PlaceId("d0"), units=2),) if chance.random() < 0.3 else (),
        helpers=chance.choice((((0, 1_000_000, 1),), ((0, 1_000_000, 2),), two_shifts)),
        spares=(Spare(type="a", size="M", count=1),) if chance.random() < 0.3 else (),
    )


def _tiny_piece(chance: Random, n: int, member: MemberId) -> Piece:
    by_hand = chance.random() < 0.25
    return Piece(
        id=ComponentId(f"p{n}"), member=member, type=chance.choice("ab"), size="M",
        weight=chance.randrange(1, 4), family=chance.choice("SL"), max_temp=40,
        prep=chance.choice((0, 1, 1, 2)), inspect=chance.choice((0, 1, 1, 2)),
        hand_station=SINK if by_hand else None, hand_min=chance.randrange(1, 3) if by_hand else 0,
        units=chance.choice((0, 1, 1, 2)), dry_rack=chance.randrange(1, 6),
        dry_cab=chance.choice((None, 1, 2, 3)),
    )  # fmt: skip
