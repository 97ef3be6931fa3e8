"""Whether the plan gets rows from the room's air, and nothing from what is not permitted."""

import pytest
from tests.unit.drying.drying_cases import (
    TABLE,
    WEIGHED,
    fan,
    logged,
    pieces,
    place,
    readings,
    room,
)
from tests.unit.machines.machine_cases import GROUND, limit

from sootline.core.basis import KindId, MinuteSpan, PlaceId, quantity
from sootline.core.drying import Cloth, Readings, RoomAir
from sootline.core.drying.capping import judge_heat
from sootline.core.drying.filling import WetPiece
from sootline.core.drying.for_plans import DryingOutlook, estimate_drying_times
from sootline.core.gear import ResolvedLimit
from sootline.core.gear.kinds import DryMethod
from sootline.core.laundry.rooms import DryingPlace, DryingTime, Hanging, WashRoom

HEAT = limit("dry.air_temp", "105 °F / 40 °C")
SHELLS = pieces("1.4 kg", "1.2 kg", "1.4 kg")
CABINET = place("cabinet", DryMethod.CABINET)


def outlook(
    *places: DryingPlace,
    read: Readings | None = None,
    air: RoomAir | None = None,
    wet: tuple[WetPiece, ...] = SHELLS,
    heat: ResolvedLimit = HEAT,
    entered: tuple[DryingTime, ...] = (),
) -> DryingOutlook:
    """Look out over a room with these places."""
    return estimate_drying_times(
        room=WashRoom(drying=places, drying_times=entered),
        air=air or room(),
        readings=read or Readings(),
        pieces=wet,
        wetness=WEIGHED,
        heat_limit=heat,
        assumptions=TABLE,
    )


def test_a_row_for_each_place_and_its_kinds() -> None:
    """Not measured here, and it says what it rests on."""
    (row,) = outlook(CABINET, read=readings(fan("cabinet"))).rows

    assert (row.place, row.kinds, row.measured) == ("cabinet", ("coat-shell",), False)
    assert row.minutes.rests_on == "drying.rests.weighed"


def test_own_loads_are_said_to_carry_the_estimate() -> None:
    """Loads logged at the place change what the row rests on."""
    read = readings(fan("cabinet"), logs=(logged("4 h"), logged("5 h")))
    (row,) = outlook(CABINET, read=read).rows

    assert row.minutes.rests_on == "drying.rests.own_loads"


def test_loads_that_say_nothing_are_shown() -> None:
    """Left out, with the reason."""
    read = readings(fan("cabinet"), logs=(logged("90 h", at="gone"),))

    assert len(outlook(CABINET, read=read).left_out) == 1


def test_a_cabinet_without_a_known_fan_is_asked_about() -> None:
    """No flow, no estimate, no row."""
    found = outlook(CABINET)

    assert not found.rows
    assert found.places[0].findings[0].message == "drying.fan.unknown"


@pytest.mark.parametrize(
    ("air_temp", "permitted"),
    [("105 °F", True), ("106 °F", False), ("40 °C", True), ("41 °C", False)],
)
def test_heat_above_the_limit_in_force_is_refused(air_temp: str, permitted: bool) -> None:
    """At the limit in the unit entered it is used; one step beyond there is no estimate."""
    warm = place("cabinet", DryMethod.CABINET, air_temp=air_temp)

    assert bool(outlook(warm, read=readings(fan("cabinet"))).rows) is permitted


def test_heat_without_a_limit_is_asked_about() -> None:
    """Unknown is never within."""
    unset = ResolvedLimit(topic="dry.air_temp", limits=(), unset=(GROUND,))
    for bare in (unset, limit("dry.air_temp")):
        found = judge_heat("cabinet", quantity("30 °C"), bare)

        assert found is not None
        assert found.message == "drying.heat.no_limit"


def test_a_row_the_department_entered_stays() -> None:
    """For its kinds, or for all where it names none."""
    minutes = MinuteSpan.parse("100-120-150 min")
    for kinds in ((), (KindId("coat-shell"),)):
        row = DryingTime(place=PlaceId("rack"), kinds=kinds, minutes=minutes, measured=True)

        assert outlook(place("rack"), entered=(row,)).rows == ()


def test_kinds_without_a_row_are_added() -> None:
    """A row for shells says nothing about liners."""
    minutes = MinuteSpan.parse("100-120-150 min")
    row = DryingTime(place=PlaceId("rack"), kinds=(KindId("coat-shell"),), minutes=minutes)
    liners = pieces("1.3 kg", kind="coat-liner", cloth=Cloth.LINER)

    rows = outlook(place("rack"), wet=(*SHELLS, *liners), entered=(row,)).rows
    assert [one.kinds for one in rows] == [("coat-liner",)]


def test_a_place_takes_its_kinds_and_no_more_than_there_are() -> None:
    """Ten places, three coats, and none of another kind."""
    found = outlook(place("rack", kinds=("coat-shell",)), place("line", kinds=("hood",)))

    assert [(one.place, round(one.batch_kg, 1)) for one in found.places] == [("rack", 4.0)]


@pytest.mark.parametrize(("holds", "kg"), [(Hanging.PIECE, 1.33), (Hanging.SET, 2.67)])
def test_a_place_for_a_set_takes_two_pieces(holds: Hanging, kg: float) -> None:
    """Coat and trousers hang together."""
    found = outlook(place("rack", places=1, holds=holds)).places[0]

    assert found.batch_kg == pytest.approx(kg, abs=0.01)


def test_what_lies_flat_has_no_model() -> None:
    """The planning table speaks of it."""
    assert outlook(place("shelf", DryMethod.FLAT)).places == ()


def test_air_that_never_dries_is_said_at_the_place() -> None:
    """No row, and the reason why."""
    found = outlook(place("rack"), air=room(humidity="88 %"))

    assert not found.rows
    assert found.places[0].findings[0].message == "drying.never"


def test_a_late_end_past_three_days_is_no_promise() -> None:
    """The interval is shown, and the plan is not given it."""
    found = outlook(place("rack"), air=room(humidity="70 %", volume="50 m3", changes=0.2))

    assert not found.rows
    assert found.places[0].estimate is not None
    assert found.places[0].findings[-1].message == "drying.too_slow"


def test_the_room_counts_each_piece_once() -> None:
    """Two racks that could each take everything give off no more than the gear there is."""
    one = outlook(place("rack"), air=room(volume="200 m3", changes=1))
    two = outlook(place("rack"), place("rack 2"), air=room(volume="200 m3", changes=1))

    assert two.room.free_kg_h == pytest.approx(one.room.free_kg_h)
    assert two.places[0].estimate == one.places[0].estimate


def test_a_room_without_rack_or_cabinet_hangs_its_gear_up() -> None:
    """The line counts when there is nothing else; an empty room gives off nothing."""
    line = place("line", DryMethod.HANG)

    assert outlook(line).room.free_kg_h > 0
    assert outlook(line, wet=()).room.free_kg_h == 0


def test_a_heated_cabinet_beats_an_unheated_one() -> None:
    """Warmth up to the limit is never slower."""
    read = readings(fan("cabinet"))
    warm = outlook(place("cabinet", DryMethod.CABINET, air_temp="100 °F"), read=read).rows[0]

    assert warm.minutes.late < outlook(CABINET, read=read).rows[0].minutes.late
