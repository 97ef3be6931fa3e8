"""Whether the room is named as the bottleneck, and what would change that."""

import pytest
from tests.unit.drying.drying_cases import TABLE, fan, logged, room

from sootline.core.basis import Bearing, UnreadableValueError, quantity
from sootline.core.drying import RoomAir
from sootline.core.drying.ending import judge_weight
from sootline.core.drying.rooms import Remedy, balance_room, diagnose_room


def test_an_unknown_room_is_asked_about() -> None:
    """Without volume and air changes there is no limit to name."""
    found = diagnose_room(room(), 3.0, TABLE)

    assert found.limit_kg_h is None
    assert not found.bottleneck
    assert [one.bearing for one in found.findings] == [Bearing.ASKS]


def test_a_large_airy_room_just_takes_the_water() -> None:
    """Nothing is advised where little would change."""
    found = diagnose_room(room(volume="2000 m3", changes=5), 1.0, TABLE)

    assert [str(one.message) for one in found.findings] == ["drying.room.takes"]


def test_on_a_humid_night_the_room_is_the_bottleneck() -> None:
    """Damp inside and out: opening up brings little, a dehumidifier brings more."""
    night = room("22 °C", "82 %", volume="200 m3", changes=1, supply=("23 °C", "93 %"))
    found = diagnose_room(night, 3.0, TABLE)
    after = {one.remedy: one.rate_kg_h for one in found.changes}

    assert found.bottleneck
    assert after[Remedy.DEHUMIDIFY] > 3 * after[Remedy.OPEN_UP]
    assert found.findings[0].message == "drying.room.bottleneck"


def test_on_a_cold_dry_night_opening_up_helps_most() -> None:
    """Cold air outside holds little water, and much room for more once it is warm."""
    night = room("18 °C", "75 %", volume="200 m3", changes=0.5, supply=("2 °C", "80 %"))
    found = diagnose_room(night, 3.0, TABLE)
    after = {one.remedy: one.rate_kg_h for one in found.changes}

    assert after[Remedy.OPEN_UP] > after[Remedy.DEHUMIDIFY]
    assert "drying.room.open-up_helps" in [one.message for one in found.findings]


def test_opening_up_to_air_as_damp_as_the_rooms_changes_little() -> None:
    """It is said, not left out."""
    night = room("20 °C", "80 %", volume="200 m3", changes=6, supply=("20 °C", "90 %"))
    found = diagnose_room(night, 8.0, TABLE)

    assert "drying.room.open-up_little" in [one.message for one in found.findings]


def test_supply_damper_than_the_room_can_hold_leaves_no_room() -> None:
    """A warm wet night outside a cool room: its air takes nothing."""
    wet = room("15 °C", "60 %", volume="200 m3", changes=2, supply=("28 °C", "95 %"))

    assert balance_room(wet, TABLE).limit_kg_h == 0.0


@pytest.mark.parametrize("temp", ["-60 °C", "70 °C"])
def test_outdoor_air_may_freeze_but_not_boil(temp: str) -> None:
    """Frost outdoors is possible; what nobody has is asked about."""
    with pytest.raises(UnreadableValueError, match=r"drying\.air_temp"):
        balance_room(room(volume="1 m3", changes=1, supply=(temp, "50 %")), TABLE)


def test_a_room_needs_possible_figures() -> None:
    """No empty room, no negative air, and both or neither of the supply's readings."""
    with pytest.raises(UnreadableValueError, match=r"drying\.room\.amount"):
        room(volume="0 m3")
    with pytest.raises(UnreadableValueError, match=r"drying\.room\.amount"):
        room(changes=-1.0)
    with pytest.raises(UnreadableValueError, match=r"drying\.room\.supply"):
        RoomAir(temp=quantity("20 °C"), humidity=quantity("50 %"), supply_temp=quantity("5 °C"))
    with pytest.raises(UnreadableValueError, match=r"drying\.fan\.flow"):
        fan("rack", "0 cfm")


@pytest.mark.parametrize(
    ("start", "end"), [("10 kg", "9 kg"), ("15 kg", "15 kg"), ("15 kg", "4 kg")]
)
def test_logged_weights_must_be_possible(start: str, end: str) -> None:
    """Wet heavier than dry, the end lighter than the start, and not half gone."""
    with pytest.raises(UnreadableValueError, match=r"drying\.log\.weights"):
        logged("3 h", start=start, end=end)


def test_a_logged_load_lasted_some_time() -> None:
    """Zero minutes dry nothing."""
    with pytest.raises(UnreadableValueError, match=r"drying\.log\.lasted"):
        logged("0 min")


@pytest.mark.parametrize(
    ("now", "message", "bearing"),
    [
        ("5.10 kg", "by_weight", Bearing.NOTES), ("5.12 kg", "near", Bearing.ASKS),
        ("5.15 kg", "near", Bearing.ASKS), ("5.16 kg", "not_yet", Bearing.WARNS),
        ("4.90 kg", "by_weight", Bearing.NOTES),
    ],
)  # fmt: skip
def test_drying_ends_by_weight(now: str, message: str, bearing: Bearing) -> None:
    """Within 2 % of 5 kg; between 2 and 3 % a named hand decides."""
    found = judge_weight(quantity("5 kg"), quantity(now), TABLE)

    assert (found.message, found.bearing) == (f"drying.end.{message}", bearing)


def test_without_a_weight_only_a_hand_ends_it() -> None:
    """Never the clock."""
    for dry, now in ((None, quantity("5 kg")), (quantity("5 kg"), None)):
        assert judge_weight(dry, now, TABLE).message == "drying.end.touch_only"


@pytest.mark.parametrize(("dry", "now"), [("5 kg", "4.7 kg"), ("0 kg", "1 kg")])
def test_far_below_the_stored_weight_is_a_question(dry: str, now: str) -> None:
    """Another piece, or something was left out."""
    with pytest.raises(UnreadableValueError, match=r"drying\.end\.lighter"):
        judge_weight(quantity(dry), quantity(now), TABLE)
