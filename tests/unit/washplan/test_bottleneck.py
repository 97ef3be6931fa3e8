"""Which resource keeps a plan going longest?"""

from sootline.core.basis import ComponentId, MachineId, MemberId, PlaceId
from sootline.core.washplan.bottleneck import list_pressures
from sootline.core.washplan.facts import Cabinet, Member, Piece, Programme, Washer
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.search import solve


def piece(name: str, **changes: object) -> Piece:
    """Make a piece that takes one place for 100 minutes."""
    fields: dict[str, object] = {
        "id": ComponentId(name),
        "member": MemberId("m"),
        "type": "shell",
        "size": "",
        "weight": 5,
        "family": "s",
        "max_temp": 40,
        "prep": 0,
        "inspect": 0,
        "units": 1,
        "dry_rack": 100,
    }
    return Piece(**{**fields, **changes})  # type: ignore[arg-type]


def instance(*pieces: Piece, rack: int = 1, cabinets: int = 0) -> Instance:
    """Make a problem with one washer of 60 minutes and one basin."""
    programme = Programme(cap=100, min=60, temp=40)
    return Instance(
        name="i",
        members=(Member(id=MemberId("m")),),
        pieces=pieces,
        washers=(Washer(id=MachineId("w"), programmes={"s": programme}),),
        load_min=5,
        unload_min=5,
        stations={PlaceId("basin"): 1},
        rack_units=rack,
        cabinets=tuple(Cabinet(id=PlaceId(f"c{n}"), units=2) for n in range(cabinets)),
        helpers=((0, 100_000, 1),),
    )


def pressures(problem: Instance) -> list[tuple[str, int, int, int]]:
    """List resource, busy minutes, places and the minute nothing ends before."""
    plan = solve(problem, stop=lambda: True)
    return [
        (one.resource, one.busy, one.places, one.until) for one in list_pressures(problem, plan)
    ]


def test_a_short_rack_is_the_bottleneck() -> None:
    """Three pieces of one load after each other on one place: 70 minutes and three hundred more."""
    assert pressures(instance(piece("a"), piece("b"), piece("c"))) == [
        ("rack", 300, 1, 370),
        ("washers", 70, 1, 170),
        ("helpers", 10, 1, 10),
    ]


def test_a_wide_rack_leaves_the_washer() -> None:
    """With places for all, the washer's time and one drying decide; so does the rack's."""
    assert pressures(instance(piece("a"), piece("b"), rack=2))[:2] == [
        ("washers", 70, 1, 170),
        ("rack", 200, 2, 170),
    ]


def test_cabinets_count_their_own_minutes() -> None:
    """A faster cabinet takes the pieces, and is counted apart from the rack."""
    problem = instance(piece("a", dry_cab=40), rack=0, cabinets=1)

    assert ("cabinets", 40, 2, 90) in pressures(problem)


def test_handwork_presses_on_basin_and_helpers() -> None:
    """Two pieces by hand of 50 minutes each: the basin is busy for 100 and then one dries."""
    hands = [
        piece(name, hand_station=PlaceId("basin"), hand_min=50, units=0, prep=1, inspect=2)
        for name in ("a", "b")
    ]

    assert pressures(instance(*hands)) == [("basin", 100, 1, 202), ("helpers", 106, 1, 106)]


def test_nothing_to_do_presses_on_nothing() -> None:
    """An empty plan has no bottleneck."""
    empty = Plan(instance="i", objective=0, makespan=0)

    assert list_pressures(instance(), empty) == ()


def test_a_pressure_can_be_said() -> None:
    """Its finding names minutes and places."""
    problem = instance(piece("a"))
    [first, *_] = list_pressures(problem, solve(problem, stop=lambda: True))

    assert (first.finding.message, first.finding.value("places")) == (
        f"plan.bottleneck.{first.resource}",
        "1",
    )
