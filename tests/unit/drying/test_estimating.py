"""Whether an estimate says how long, what sets the pace, and when there is no answer."""

import math
import random
from collections.abc import Sequence
from dataclasses import replace

import pytest
from tests.unit.drying.drying_cases import (
    CABINET,
    STILL,
    TABLE,
    WEIGHED,
    estimate,
    room,
    spans,
)

from sootline.core.basis import Band, UnreadableValueError, quantity
from sootline.core.drying import Cloth
from sootline.core.drying.cloths import cloth_of
from sootline.core.drying.estimating import Bound, Wetness
from sootline.core.drying.falling import Moistures, drying_hours, moisture_after_hours
from sootline.core.drying.moist_air import moist_air, pressure_pa
from sootline.core.drying.rates import Blown
from sootline.core.drying.spreading import Outcome, spread
from sootline.core.drying.streams import Stream, stream_limit_kg_h
from sootline.core.gear.kinds import Layer


def test_without_logged_loads_the_band_is_at_least_a_factor_of_two_and_a_half() -> None:
    """The table's factor alone, before what was read is doubtful too."""
    earliest, likely, late = spans(estimate().minutes)

    assert late / likely >= 2.4
    assert likely / earliest >= 2.3


def test_a_default_moisture_widens_the_band_and_says_so() -> None:
    """Nobody weighed: the interval is wider and rests on the default."""
    default = replace(WEIGHED, moisture=TABLE.band("wash.moisture_left"), measured=False)
    wide, narrow = estimate(wetness=default).minutes, estimate().minutes

    assert wide.late > narrow.late
    assert wide.rests_on == "drying.rests.default"
    assert narrow.rests_on == "drying.rests.weighed"


def test_no_load_beats_the_air_stream() -> None:
    """However good the factor, the water leaves no faster than the driest likely air takes it."""
    found = estimate(kg=60.0, factor=Band.exactly(0.01))
    assert found.highest_kg_h is not None

    least = found.water_kg / found.highest_kg_h * 60
    assert found.minutes.earliest >= 0.8 * least


@pytest.mark.parametrize(
    ("kg", "place", "changes", "bound"),
    [
        (2.0, CABINET, None, Bound.CLOTH),
        (80.0, CABINET, None, Bound.AIR_STREAM),
        (80.0, STILL, 0.2, Bound.ROOM),
    ],
)
def test_what_sets_the_pace_is_named(
    kg: float, place: Blown, changes: float | None, bound: Bound
) -> None:
    """Cloth, air stream or room."""
    air = room(volume="200 m3", changes=changes)

    assert estimate(kg=kg, place=place, air=air).bound is bound


def test_other_gear_in_the_room_slows_a_vented_cabinet_too() -> None:
    """It draws in what the others made damp."""
    air = room(volume="100 m3", changes=0.5)

    assert estimate(air=air, others=2.0).minutes.late > estimate(air=air).minutes.late


def test_a_fan_on_an_open_rack_is_never_worse_than_still_air() -> None:
    """The room's air still reaches the gear."""
    weak = Blown(flow_m3h=50.0)

    assert estimate(place=weak).rate_kg_h >= estimate(place=STILL).rate_kg_h
    assert estimate(place=weak).highest_kg_h is None


def test_heat_below_the_rooms_warmth_is_no_heat() -> None:
    """A cabinet set at 15 °C does not cool a room of 20 °C."""
    cool = replace(CABINET, heated_to_c=15.0)

    assert spans(estimate(place=cool).minutes) == spans(estimate().minutes)


def test_shell_and_liner_apart_dry_two_to_three_times_faster() -> None:
    """A model's figure, not a measured one: two free faces and two behind or before a barrier."""
    apart = [estimate(cloth=cloth, place=STILL).rate_kg_h for cloth in (Cloth.SHELL, Cloth.LINER)]
    together = estimate(cloth=Cloth.ASSEMBLED, place=STILL, kg=20.0).rate_kg_h

    assert 2.0 <= sum(apart) / together <= 3.0


def test_damp_air_never_dries_to_the_end() -> None:
    """At 85 % cloth holds more water than it may when it counts as dry."""
    with pytest.raises(UnreadableValueError, match=r"drying\.never"):
        estimate(air=room(humidity="85 %"))


def test_warming_the_same_air_lets_it_dry() -> None:
    """What the room cannot do a heated cabinet can."""
    warm = replace(CABINET, heated_to_c=40.0)

    assert estimate(place=warm, air=room(humidity="85 %")).minutes.likely > 0


def test_a_closed_room_without_an_outlet_takes_nothing() -> None:
    """No air changes and no dehumidifier: there is no end to wait for."""
    with pytest.raises(UnreadableValueError, match=r"drying\.no_taker"):
        estimate(place=STILL, air=room(volume="200 m3", changes=0.0))


def test_a_dehumidifier_makes_a_closed_room_dry() -> None:
    """The water has somewhere to go."""
    air = room(volume="200 m3", changes=0.0, dehumidifier=1.0)

    assert estimate(place=STILL, air=air).minutes.likely > 0


def test_a_target_below_equilibrium_is_refused() -> None:
    """Cloth never gets drier than the air lets it."""
    with pytest.raises(UnreadableValueError, match=r"drying\.never"):
        Moistures(start=0.5, critical=0.25, equilibrium=0.05, end=0.05)


@pytest.mark.parametrize(
    ("start", "end", "expected"),
    [
        (0.55, 0.30, 0.25),
        (0.20, 0.05, 0.21 * math.log(0.16 / 0.01)),
        (0.05, 0.06, 0.0),
        (0.55, 0.05, 0.30 + 0.21 * math.log(0.21 / 0.01)),
    ],
)
def test_constant_then_falling(start: float, end: float, expected: float) -> None:
    """Only constant, only falling, dry already, and both; over one kilogram at one an hour."""
    moistures = Moistures(start=start, critical=0.25, equilibrium=0.04, end=end)

    assert drying_hours(1.0, 1.0, moistures) == pytest.approx(expected)


@pytest.mark.parametrize("start", [0.55, 0.2])
def test_the_curve_meets_the_time(start: float) -> None:
    """The moisture after the time to the end is the end."""
    moistures = Moistures(start=start, critical=0.25, equilibrium=0.04, end=0.06)
    hours = drying_hours(8.0, 2.0, moistures)

    assert moisture_after_hours(hours, 8.0, 2.0, moistures) == pytest.approx(0.06)


@pytest.mark.parametrize(
    ("temp", "humidity", "message"),
    [
        ("72 °C", "50 %", "air_temp"), ("-5 °C", "50 %", "air_temp"),
        ("20 °C", "0 %", "humidity"), ("20 °C", "101 %", "humidity"), ("20 °C", "-3 %", "humidity"),
    ],
)  # fmt: skip
def test_air_that_cannot_be_is_asked_about(temp: str, humidity: str, message: str) -> None:
    """Fahrenheit typed as Celsius, frost indoors, and humidity beyond saturation."""
    with pytest.raises(UnreadableValueError, match=rf"drying\.{message}"):
        estimate(air=room(temp, humidity))


@pytest.mark.parametrize("metres", [-600, 7000])
def test_an_altitude_nobody_has_is_refused(metres: float) -> None:
    """Between a dry sea's shore and the highest towns."""
    with pytest.raises(UnreadableValueError, match=r"drying\.altitude"):
        pressure_pa(metres)


def test_saturated_air_carries_nothing() -> None:
    """Its wet bulb is its own temperature."""
    stream = Stream(air=moist_air(20.0, 1.0, 101_325.0), flow_m3h=1000.0)

    assert stream_limit_kg_h(stream) == pytest.approx(0.0, abs=0.02)


def test_gloves_and_boots_have_no_model() -> None:
    """What is wet inside dries otherwise: the planning table speaks."""
    assert cloth_of(Layer.GLOVE) is None
    assert cloth_of(Layer.SOFT) is Cloth.SHELL


@pytest.mark.parametrize("factor", ["1", "0.4-1-2.5"])
def test_the_spread_is_that_of_many_seeded_draws(factor: str) -> None:
    """Against 40,000 draws: within 10 % at both ends, floor included."""
    chance = random.Random(7)  # noqa: S311
    band, wet = Band.parse(factor), Band.parse("0.35-0.55-0.8")

    def outcome(point: Sequence[float]) -> Outcome:
        return Outcome(wet.at(point[0]) * math.exp(0.1 * point[1] - 0.2 * point[2]), 0.2)

    draws = []
    for _ in range(40_000):
        one = outcome([chance.gauss(0, 1) for _ in range(3)])
        draws.append(max(one.result * band.at(chance.gauss(0, 1)), one.least))
    draws.sort()

    assert spread(outcome, 3, band) == pytest.approx((draws[2000], draws[38000]), rel=0.1)


def test_a_dry_batch_takes_no_time() -> None:
    """Nothing to wait for is no error; the estimate is a minute."""
    damp = Wetness(moisture=Band.exactly(0.01), measured=True)

    assert spans(estimate(wetness=damp).minutes) == (1, 1, 1)


def test_wider_air_changes_help() -> None:
    """More air through the room is never slower."""
    slow, fast = (
        estimate(place=STILL, air=room(volume="200 m3", changes=n)).minutes for n in (0.5, 3.0)
    )

    assert fast.late < slow.late
    assert quantity("1 m3/h").dimension == "flow"
