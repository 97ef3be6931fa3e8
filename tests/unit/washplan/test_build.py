"""How what is sorted becomes the neutral problem: weights, minutes, places and counts."""

from dataclasses import replace

import pytest
from tests.unit.laundry.wash_cases import (
    PLANNING,
    ROOM,
    component,
    decide,
    drying_place,
    limit,
    programme,
    sort_all,
    washer,
)

from sootline.core.basis import MachineId, MemberId, MinuteSpan, PlaceId, SetId, quantity
from sootline.core.gear.components import Component
from sootline.core.gear.kinds import DryMethod, Layer
from sootline.core.gear.labels import CareText
from sootline.core.laundry.planning import PlanningTimes
from sootline.core.laundry.rooms import DryingTime, Hanging, Shift, WashRoom, WorkTime
from sootline.core.washplan.build import Built, build_instance
from sootline.core.washplan.durations import Pace
from sootline.core.washplan.facts import Changeover, Member, Piece
from sootline.core.washplan.pieces import BASIN, BENCH, POOL
from sootline.core.washplan.question import Question

SHELL = component("cs1", "coat-shell", mass="4.4 lb")
TROUSERS = component("ts1", "trouser-shell", mass="3.2 lb")


def build(
    *components: Component,
    room: WashRoom = ROOM,
    pace: Pace = Pace.LIKELY,
    planning: PlanningTimes = PLANNING,
    hazards: dict[str, tuple[str, ...]] | None = None,
) -> Built:
    """Sort and build what all needs a wash."""
    pairs = [(one, decide(one, *(hazards or {}).get(one.id, ()))) for one in components]
    owners = dict.fromkeys(one.owner for one in components if one.owner)
    question = Question(
        name="test",
        sorting=sort_all(pairs, room),
        decisions=tuple(decision for _, decision in pairs),
        components=components,
        members=tuple(Member(id=owner, priority=2) for owner in owners),
        room=room,
        planning=planning,
    )
    return build_instance(question, pace)


def piece(built: Built, name: str) -> Piece:
    """Return a neutral piece."""
    return next(one for one in built.instance.pieces if one.id == name)


def set_room(**changes: object) -> WashRoom:
    """Make a room whose rack holds sets."""
    rack = replace(drying_place("rack-1", DryMethod.RACK), holds=Hanging.SET)
    return replace(ROOM, drying=(rack,), **changes)  # type: ignore[arg-type]


def test_weights_are_exact_in_the_departments_own_unit() -> None:
    """Pounds with one decimal count in tenths of a pound."""
    built = build(SHELL)

    assert (built.instance.units["weight"], piece(built, "cs1").weight) == ("0.1 lb", 44)
    assert built.instance.washers[0].programmes["shells"].cap == 420


def test_other_units_never_count_in_a_loads_favour() -> None:
    """Three pieces in kilograms and a limit in pounds: the limit counts down, to 19.0 kg."""
    kilograms = [component(f"c{n}", "coat-shell", owner=f"M{n}", mass="2.5 kg") for n in range(3)]

    built = build(*kilograms)

    assert (built.instance.units["weight"], piece(built, "c0").weight) == ("0.1 kg", 25)
    assert built.instance.washers[0].programmes["shells"].cap == 190, "42 lb are 19.05 kg"


def test_a_piece_just_at_the_limit_stays_in_its_own_unit() -> None:
    """A second washer in kilograms does not round a 4 lb piece out of a 4 lb drum."""
    room = replace(ROOM, washers=(washer("W1", mass="4 lb"), washer("W2", mass="1 kg")))

    built = build(replace(SHELL, mass=quantity("4 lb")), room=room)

    assert (piece(built, "cs1").weight, built.refused) == (4, ())


def test_a_piece_that_rounding_pushes_over_is_refused_by_name() -> None:
    """1.8 kg in a drum of 1.8 kg, while everything else is in whole pounds: it is asked for."""
    shells = [component(f"c{n}", "coat-shell", owner=f"M{n}", mass="3 lb") for n in range(4)]
    heavy = component("h", "coat-shell", owner="H", mass="1.8 kg")

    built = build(heavy, *shells, room=replace(ROOM, washers=(washer(mass="1.8 kg"),)))

    assert [(one.message, one.value("component")) for one in built.refused] == [
        ("laundry.refused.too_heavy", "h")
    ]


def test_amounts_too_fine_or_too_large_count_in_grams() -> None:
    """A mass with four decimals of a pound is no reason to refuse the plan."""
    assert build(replace(SHELL, mass=quantity("4.4001 lb"))).instance.units["weight"] == "1 g"


def test_an_unweighed_piece_counts_as_the_heaviest_of_its_kind() -> None:
    """Unknown never lowers: 5 lb for a coat shell, and it is said to be unweighed."""
    built = build(replace(SHELL, mass=None))

    assert piece(built, "cs1").weight == 5
    assert built.unweighed == {"cs1"}


@pytest.mark.parametrize(
    ("pace", "dry", "prep", "minutes"),
    [(Pace.EARLIEST, 60, 1, 50), (Pace.LIKELY, 120, 2, 60), (Pace.LATE, 240, 3, 80)],
)
def test_times_come_from_the_end_that_was_asked_for(
    pace: Pace, dry: int, prep: int, minutes: int
) -> None:
    """Drying, handwork and programme are all reckoned at one end of their intervals."""
    room = replace(ROOM, washers=(washer("W1", programme("p", minutes="50-60-80 min")),))

    built = build(SHELL, room=room, pace=pace)

    one = piece(built, "cs1")
    assert (one.dry_rack, one.prep, built.instance.washers[0].programmes["shells"].min) == (
        dry,
        prep,
        minutes,
    )


def test_unmeasured_times_say_so() -> None:
    """The planning table is named as what the plan rests on, once for each row and kind."""
    messages = [note.message for note in build(SHELL).rests_on]

    assert messages == ["laundry.time.not_measured_here"] * 2


def test_the_departments_rows_win() -> None:
    """A measured row is used without a remark; one that is only entered is remarked on."""
    rack = PlaceId("rack-1")
    general = DryingTime(place=rack, minutes=MinuteSpan.parse("300 min"))
    named = DryingTime(
        place=rack, kinds=(SHELL.kind,), minutes=MinuteSpan.parse("90 min"), measured=True
    )
    work = (WorkTime(prepare=7, check=8), WorkTime(kinds=(SHELL.kind,), prepare=1, check=2))
    room = replace(ROOM, drying_times=(general, named), work_times=work)

    built = build(SHELL, TROUSERS, room=room)

    shell, trousers = piece(built, "cs1"), piece(built, "ts1")
    assert (shell.dry_rack, shell.prep, shell.inspect) == (90, 1, 2)
    assert (trousers.dry_rack, trousers.prep, trousers.inspect) == (300, 7, 8)
    assert [note.message for note in built.rests_on] == ["laundry.time.entered"]


@pytest.mark.parametrize("planning", [PlanningTimes(), replace(PLANNING, work=())])
def test_without_any_time_a_component_is_refused_not_dropped(planning: PlanningTimes) -> None:
    """Neither the department nor the table knows a time: it is said, and nothing is planned."""
    strap = component("d1", "drag-device")

    built = build(SHELL, strap, planning=planning)

    assert built.instance.pieces == ()
    assert {one.value("component") for one in built.refused} == {"cs1", "d1"}


def test_a_sets_layer_is_one_piece_where_places_hold_sets() -> None:
    """Coat and trousers go as one, with one place, both weights and all their handwork."""
    built = build(SHELL, TROUSERS, room=set_room())

    [one] = built.instance.pieces
    assert built.components_of(one.id) == ("cs1", "ts1")
    assert (one.weight, one.units, one.prep) == (76, 1, 4)


def test_places_for_single_pieces_keep_them_apart() -> None:
    """Where a place holds one piece, coat and trousers are two."""
    assert len(build(SHELL, TROUSERS).instance.pieces) == 2


def test_what_belongs_to_no_set_is_never_bundled() -> None:
    """Two spares without set or owner stay two pieces, of a pool nobody waits for."""
    spares = [component(name, "coat-shell", owner="", mass="4 lb") for name in ("a", "b")]

    built = build(*spares, room=set_room())

    assert len(built.instance.pieces) == 2
    [pool] = built.instance.members
    assert (pool.id, pool.priority) == (POOL, 0)


def test_gear_of_a_stranger_belongs_to_the_pool() -> None:
    """An owner who is no member here waits for nothing here."""
    guest = replace(SHELL, owner=MemberId("G1"), set=SetId("set-G1"))
    pairs = [(guest, decide(guest))]
    question = Question(
        name="t", sorting=sort_all(pairs), decisions=(pairs[0][1],), components=(guest,),
        members=(), room=ROOM, planning=PLANNING,
    )  # fmt: skip

    assert build_instance(question, Pace.LIKELY).instance.pieces[0].member == POOL


@pytest.mark.parametrize(
    "machine", [washer(mass="7 lb"), washer(pieces=1)], ids=["too heavy", "too many"]
)
def test_a_set_too_large_for_the_drum_goes_apart(machine: object) -> None:
    """When both together exceed the drum, coat and trousers are two pieces after all."""
    assert len(build(SHELL, TROUSERS, room=set_room(washers=(machine,))).instance.pieces) == 2


def test_a_limit_in_pieces_counts_components() -> None:
    """Five pieces in the drum are two sets of two."""
    built = build(SHELL, TROUSERS, room=set_room(washers=(washer(pieces=5),)))

    assert built.instance.washers[0].programmes["shells"].max_pieces == 2


def test_the_shortest_permitted_programme_is_chosen() -> None:
    """Of two permitted programmes a washer runs the one that ends first at the latest."""
    programmes = (programme("long", minutes="90 min"), programme("short", minutes="45 min"))

    built = build(SHELL, room=replace(ROOM, washers=(washer("W1", *programmes),)))

    assert [(one.washer, one.programme) for one in built.chosen] == [("W1", "short")]


def test_washers_nobody_may_use_are_left_out() -> None:
    """One that is down or without a limit is not in the plan; the other is free from its minute."""
    down, unknown = replace(washer("W2"), working=False), washer("W3", mass=None)
    later = replace(washer("W1"), free_from=30)

    built = build(SHELL, room=replace(ROOM, washers=(down, unknown, later)))

    assert [one.id for one in built.instance.washers] == ["W1"]
    assert built.instance.washer_free == {MachineId("W1"): 30}


def test_the_verifier_sees_bath_and_limit_again() -> None:
    """A label of 40 °C is 400 tenths; a bath of 104 °F is not above it."""
    shell = component("cs1", "coat-shell", care=CareText(wash_temp=limit("40 °C")))

    built = build(shell, room=replace(ROOM, washers=(washer("W1", programme("p", bath="104 °F")),)))

    assert (piece(built, "cs1").max_temp, built.instance.washers[0].programmes["shells"].temp) == (
        400,
        400,
    )


def test_handwork_goes_to_basin_or_bench() -> None:
    """Gloves take the basin and the helmet the bench; the kitchen sink does not count."""
    built = build(component("g1", "gloves"), component("hs1", "helmet-shell"))

    assert built.instance.stations == {BASIN: 1, BENCH: 1}
    assert (piece(built, "g1").hand_station, piece(built, "hs1").hand_station) == (BASIN, BENCH)
    assert piece(built, "g1").hand_min == 15


def test_hazards_are_flushed_between_and_come_last() -> None:
    """Between classes a drum is flushed, both ways; a sink is wiped; hazards come last."""
    gloves = component("g1", "gloves")
    other = component("cs2", "coat-shell", owner="M02", mass="4 lb")
    room = replace(ROOM, between_min=15)

    built = build(SHELL, other, gloves, room=room, hazards={"cs2": ("foam",), "g1": ("foam",)})

    assert built.instance.late_families == ("shells:foam",)
    assert built.instance.changeover == (
        Changeover(before="shells", after="shells:foam", minutes=15),
        Changeover(before="shells:foam", after="shells", minutes=15),
    )
    assert piece(built, "g1").hand_min == 30


def test_without_flushing_or_an_order_nothing_is_added() -> None:
    """A room that flushes nothing and puts nothing last gives an instance without either."""
    other = component("cs2", "coat-shell", owner="M02", mass="4 lb")

    built = build(SHELL, other, room=replace(ROOM, hazards_last=False), hazards={"cs2": ("foam",)})

    assert (built.instance.late_families, built.instance.changeover) == ((), ())


def test_two_that_are_alone_are_flushed_between() -> None:
    """The same hazard, each alone: the drum is flushed between the two all the same."""
    coats = [component(name, "coat-shell", owner=name, mass="4 lb") for name in ("a", "b")]
    pairs = [(one, decide(one, "blood", alone=True)) for one in coats]
    room = replace(ROOM, between_min=15)
    question = Question(
        name="t", sorting=sort_all(pairs, room), decisions=tuple(one for _, one in pairs),
        components=tuple(coats), members=(Member(id=MemberId("a")),), room=room, planning=PLANNING,
    )  # fmt: skip

    assert len(build_instance(question, Pace.LIKELY).instance.changeover) == 2


def test_helpers_come_in_shifts_or_are_never_short() -> None:
    """Shifts are put in order; without any there is a helper for every task."""
    late, early = Shift(start=600, end=900, helpers=1), Shift(start=0, end=600, helpers=2)

    built = build(SHELL, room=replace(ROOM, shifts=(late, early)))

    assert built.instance.helpers == ((0, 600, 2), (600, 900, 1))
    [(start, _, heads)] = build(SHELL).instance.helpers
    assert (start, heads >= 2) == (0, True)


def test_what_hangs_elsewhere_takes_no_place() -> None:
    """A strap hangs at the department's own hooks for its own time there."""
    hooks = drying_place("hooks", DryMethod.HANG, 0, "drag-device")
    row = DryingTime(place=PlaceId("hooks"), minutes=MinuteSpan.parse("45 min"), measured=True)
    room = replace(ROOM, drying=(*ROOM.drying, hooks), drying_times=(row,))

    one = piece(build(component("d1", "drag-device"), room=room), "d1")

    assert (one.units, one.dry_rack, one.dry_cab) == (0, 45, None)


def test_racks_and_cabinets_that_all_may_use_are_counted() -> None:
    """Two racks make one of ten places; the cabinet stays a cabinet, the longest time counts."""
    room = replace(
        ROOM,
        drying=(
            drying_place("r1", DryMethod.RACK, 6),
            drying_place("r2", DryMethod.RACK, 4),
            drying_place("c1", DryMethod.CABINET, 3),
        ),
        drying_times=(
            DryingTime(place=PlaceId("r1"), minutes=MinuteSpan.parse("100 min"), measured=True),
            DryingTime(place=PlaceId("r2"), minutes=MinuteSpan.parse("150 min"), measured=True),
        ),
    )

    built = build(SHELL, room=room)

    assert (built.instance.rack_units, [one.units for one in built.instance.cabinets]) == (10, [3])
    assert (piece(built, "cs1").dry_rack, piece(built, "cs1").dry_cab) == (150, 120)


def test_a_piece_that_bears_no_rack_is_kept_off_it() -> None:
    """A label for the cabinet only: the rack's time is one nobody would choose."""
    only = component("cs1", "coat-shell", care=CareText(dry=(DryMethod.CABINET,)))
    other = component("cs2", "coat-shell", owner="M02")
    room = replace(ROOM, drying=(*ROOM.drying, drying_place("c1", DryMethod.CABINET, 3)))

    built = build(only, other, room=room)

    assert piece(built, "cs1").dry_rack > 10_000
    assert piece(built, "cs1").dry_cab == 120


@pytest.mark.parametrize(
    ("method", "posts", "turns"),
    [
        (DryMethod.RACK, 3, 1),
        (DryMethod.RACK, 2, 2),
        (DryMethod.RACK, 1, 3),
        (DryMethod.CABINET, 3, 2),
    ],
)
def test_pieces_with_posts_of_their_own_are_given_time_for_their_turn(
    method: DryMethod, posts: int, turns: int
) -> None:
    """Three pairs of boots on k posts wait at most 3/k turns; a closed cabinet one more."""
    care = CareText(dry=(method,))
    boots = [component(f"b{n}", "boots-leather", owner=f"M{n}", care=care) for n in range(3)]
    shells = [component(f"s{n}", "coat-shell", owner=f"M{n}") for n in range(4)]
    own = drying_place("posts", method, posts, "boots-leather")
    rack = drying_place("r1", DryMethod.RACK, 6, "coat-shell")
    main = drying_place("c1", DryMethod.CABINET, 6, "coat-shell")
    room = replace(ROOM, drying=(rack, main, own))

    late = build(*boots, *shells, room=room, pace=Pace.LATE)
    early = build(*boots, *shells, room=room, pace=Pace.EARLIEST)

    assert (piece(late, "b0").units, piece(late, "b0").dry_rack) == (0, 240 * turns)
    assert piece(early, "b0").dry_rack == 60
    assert any(note.message == "laundry.dry.turns" for note in late.rests_on) is (turns > 1)
    assert late.instance.rack_units == 6


def test_a_rack_that_only_some_may_use_is_left_out_of_the_count() -> None:
    """Shells may hang on both racks, liners on one: only that one is counted for all."""
    both = drying_place("r1", DryMethod.RACK, 6)
    shells_only = drying_place("r2", DryMethod.RACK, 4, "coat-shell")
    liner = component("cl1", "coat-liner")
    shells = [component(f"s{n}", "coat-shell", owner=f"M{n}") for n in range(3)]

    built = build(liner, *shells, room=replace(ROOM, drying=(both, shells_only)))

    assert built.instance.rack_units == 6
    assert all(one.units == 1 for one in built.instance.pieces)


def test_pieces_with_posts_of_their_own_and_no_time_are_refused() -> None:
    """Boots on posts nobody knows a time for are refused by name."""
    boots = component("b1", "boots-leather")
    room = replace(
        ROOM,
        drying=(
            drying_place("r1", DryMethod.RACK, 6, "coat-shell"),
            drying_place("posts", DryMethod.RACK, 2, "boots-leather"),
        ),
    )
    shells_only = replace(
        PLANNING, drying=tuple(replace(one, layers=(Layer.SHELL,)) for one in PLANNING.drying)
    )
    shells = [component(f"s{n}", "coat-shell", owner=f"M{n}") for n in range(2)]

    built = build(boots, *shells, room=room, planning=shells_only)

    assert [one.value("component") for one in built.refused] == ["b1"]


def test_the_size_names_every_part() -> None:
    """Type and size of a bundle name both parts, as on their labels."""
    coat = replace(SHELL, size=(("chest", "44"),))
    trousers = replace(TROUSERS, size=(("waist", "38"), ("inseam", "32")))

    [one] = build(coat, trousers, room=set_room()).instance.pieces

    assert (one.type, one.size) == ("coat-shell+trouser-shell", "chest 44, waist 38, inseam 32")
