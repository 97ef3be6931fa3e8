"""The officer's sentences on drying: a small table in, an answer out."""

from dataclasses import replace

import pytest
from tests.unit.drying.drying_cases import CABINET, STILL, TABLE, estimate, room

from sootline.core.basis import Bearing, UnreadableValueError, quantity
from sootline.core.drying import Cloth, RoomAir
from sootline.core.drying.ending import judge_weight
from sootline.core.drying.rates import Blown
from sootline.core.drying.rooms import diagnose_room

# where, air, cloth -> who dries sooner
NIGHTS = (
    ("an open room", STILL, "20 °C", "45 %"),
    ("an open room, damp", STILL, "20 °C", "65 %"),
    ("a cabinet", CABINET, "20 °C", "45 %"),
)


@pytest.mark.parametrize(("where", "place", "temp", "humidity"), NIGHTS)
def test_liners_dry_last(where: str, place: Blown, temp: str, humidity: str) -> None:
    """They say: "The liners hold us up, whatever we hang them in." One free face of two."""
    air = room(temp, humidity)
    shell = estimate(place=place, air=air)
    liner = estimate(place=place, air=air, cloth=Cloth.LINER)

    assert shell.minutes.late < liner.minutes.late, where


def test_take_them_apart() -> None:
    """They say: "Left in one piece the same gear takes more than twice as long"."""
    together = estimate(place=STILL, cloth=Cloth.ASSEMBLED, kg=2.8).minutes
    apart = estimate(place=STILL, cloth=Cloth.SHELL, kg=1.4).minutes

    assert together.likely > 2 * apart.likely


def test_a_full_cabinet_takes_longer_than_a_half_empty_one() -> None:
    """They say: "Eight coats are not dry when four would be"."""
    assert estimate(kg=12).minutes.likely > estimate(kg=6).minutes.likely


def test_up_in_the_mountains_a_fan_moves_less_air() -> None:
    """They say: "At 1,600 metres the same fan carries off a ninth less." It moves volume."""
    low, high = (estimate(kg=60, air=room_at(height)).highest_kg_h for height in ("0 m", "1609 m"))

    assert low is not None
    assert high is not None
    assert high / low == pytest.approx(0.88, abs=0.01)


def room_at(height: str) -> RoomAir:
    """Read the same air at a height."""
    return replace(room("22 °C", "45 %"), altitude=quantity(height))


def test_more_racks_do_not_help_a_damp_closed_room() -> None:
    """They say: "We bought racks and nothing dried sooner." The room is the bottleneck."""
    night = room("21 °C", "78 %", volume="150 m3", changes=0.5)
    four, eight = (diagnose_room(night, kg_h, TABLE) for kg_h in (2.0, 4.0))

    assert four.bottleneck
    assert eight.rate_kg_h < 1.1 * four.rate_kg_h


@pytest.mark.parametrize(
    ("now", "bearing"),
    [("5.30 kg", Bearing.WARNS), ("5.05 kg", Bearing.NOTES), ("5.13 kg", Bearing.ASKS)],
)
def test_the_clock_ends_nothing(now: str, bearing: Bearing) -> None:
    """They say: "It hung all night." No hour is asked for: the scale says, or a hand."""
    assert judge_weight(quantity("5 kg"), quantity(now), TABLE).bearing is bearing


def test_seventy_two_is_fahrenheit() -> None:
    """They say: "I typed 72 and it asked me which." Nothing is reckoned until then."""
    with pytest.raises(UnreadableValueError, match=r"drying\.air_temp"):
        estimate(air=room("72 °C"))
