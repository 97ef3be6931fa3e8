"""What must hold of drying and spin whatever the figures: better air is never slower."""

from dataclasses import dataclass, replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.unit.drying.drying_cases import TABLE, estimate, room, spans
from tests.unit.machines.machine_cases import LIMITS, drum, limit, setting

from sootline.core.basis import Band, Bearing, UnreadableValueError, quantity
from sootline.core.drying import Cloth, RoomAir
from sootline.core.drying.capping import judge_heat
from sootline.core.drying.estimating import DryingEstimate, Wetness
from sootline.core.drying.falling import Moistures
from sootline.core.drying.rates import Blown
from sootline.core.machines import check_programme, force_g, highest_speed_rpm, speed_rpm


@dataclass(frozen=True, kw_only=True)
class Case:
    """One batch at one place in one room."""

    cloth: Cloth
    kg: float
    flow: float | None
    temp: int
    humidity: int
    changes: float | None

    def minutes(self, share: float = 0.55, *, closed: bool = False) -> tuple[int, int, int] | None:
        """Return the interval, or None where it never dries."""
        return minutes(
            cloth=self.cloth,
            kg=self.kg,
            wetness=wet(share),
            place=Blown(flow_m3h=self.flow, closed=closed, vented=closed),
            air=air(self.temp, self.humidity, self.changes),
        )


CASES = st.builds(
    Case,
    cloth=st.sampled_from(Cloth),
    kg=st.floats(0.5, 60.0),
    flow=st.one_of(st.none(), st.floats(100.0, 5000.0)),
    temp=st.integers(5, 32),
    humidity=st.integers(20, 95),
    changes=st.one_of(st.none(), st.floats(0.2, 20.0)),
)
MOISTURES = st.floats(0.1, 1.0)


def wet(share: float) -> Wetness:
    """Make a weighed moisture with its interval."""
    band = Band(low=share * 0.9, likely=share, high=share * 1.1)
    return Wetness(moisture=band, measured=True)


def air(temp: float, humidity: float, changes: float | None) -> RoomAir:
    """Make a room's air; without changes the room itself is left out."""
    volume = "150 m3" if changes is not None else ""
    return room(f"{temp:g} °C", f"{humidity:g} %", volume=volume, changes=changes)


def minutes(**given: object) -> tuple[int, int, int] | None:
    """Return the interval, or None where it never dries."""
    try:
        found: DryingEstimate = estimate(**given)  # type: ignore[arg-type]
    except UnreadableValueError:
        return None
    return spans(found.minutes)


def never_slower(better: tuple[int, int, int] | None, worse: tuple[int, int, int] | None) -> bool:
    """Whether every end of the better interval is at or before the other's; a minute is rounding.

    What never dries is worse than anything.
    """
    if worse is None:
        return True
    return better is not None and all(
        one <= other + 1 for one, other in zip(better, worse, strict=True)
    )


@given(CASES, MOISTURES)
@settings(max_examples=60, deadline=None)
def test_an_interval_is_in_order(case: Case, share: float) -> None:
    """Earliest, likely, late, and at least a minute."""
    found = case.minutes(share)

    assert found is None or 1 <= found[0] <= found[1] <= found[2]


@given(CASES, st.integers(1, 30))
@settings(max_examples=60, deadline=None)
def test_drier_air_is_never_slower(case: Case, drier: int) -> None:
    """Whatever the place and the room."""
    dry = replace(case, humidity=max(5, case.humidity - drier))

    assert never_slower(dry.minutes(), case.minutes())


@given(CASES, st.integers(1, 15))
@settings(max_examples=60, deadline=None)
def test_warmer_air_is_never_slower(case: Case, warmer: int) -> None:
    """At the same relative humidity."""
    assert never_slower(replace(case, temp=case.temp + warmer).minutes(), case.minutes())


@given(CASES, st.integers(33, 38), st.floats(0.0, 5.0))
@settings(max_examples=60, deadline=None)
def test_more_heat_up_to_the_cap_is_never_slower(case: Case, heated: int, more: float) -> None:
    """The same air, warmed further inside the cabinet."""
    low, high = (
        minutes(
            kg=case.kg,
            place=Blown(flow_m3h=case.flow or 500.0, heated_to_c=to, vented=True, closed=True),
            air=air(case.temp, case.humidity, None),
        )
        for to in (heated, min(40.5, heated + more))
    )

    assert never_slower(high, low)


@given(CASES, st.floats(1.0, 3.0), st.booleans())
@settings(max_examples=60, deadline=None)
def test_more_airflow_is_never_slower(case: Case, more: float, closed: bool) -> None:
    """Through a rack or a cabinet."""
    slow = replace(case, flow=case.flow or 500.0)
    fast = replace(slow, flow=(case.flow or 500.0) * more)

    assert never_slower(fast.minutes(closed=closed), slow.minutes(closed=closed))


@given(CASES, MOISTURES, st.floats(1.0, 2.0), st.floats(1.0, 2.0))
@settings(max_examples=60, deadline=None)
def test_more_water_never_dries_sooner(
    case: Case, share: float, wetter: float, heavier: float
) -> None:
    """Neither wetter gear nor more of it."""
    more = replace(case, kg=case.kg * heavier)

    assert never_slower(case.minutes(share), more.minutes(share * wetter))


@given(st.integers(5, 35), st.integers(60, 95), st.floats(0.0, 0.2))
@settings(max_examples=60, deadline=None)
def test_a_target_the_air_never_reaches_is_refused(temp: int, humidity: int, below: float) -> None:
    """Drier than what stays in this air for ever: it says so instead of giving a time."""
    stored = TABLE.band("dry.equilibrium_moisture").likely
    stays = stored * humidity / TABLE.band("dry.equilibrium_humidity").likely
    over_stored = (1 + stays) / (1 + stored) - 1
    reached = replace(wet(0.55), end=Band.exactly(over_stored * (0.99 - below)))

    with pytest.raises(UnreadableValueError) as refused:
        estimate(wetness=reached, air=air(temp, humidity, None))
    assert refused.value.message == "drying.never"


@given(st.floats(0.001, 0.2), st.floats(0.0, 0.1))
def test_a_target_at_or_below_equilibrium_is_no_curve(equilibrium: float, below: float) -> None:
    """Refused at equilibrium itself as well."""
    with pytest.raises(UnreadableValueError):
        Moistures(start=0.5, critical=0.25, equilibrium=equilibrium, end=equilibrium - below)


@given(st.integers(106, 180))
def test_heat_above_the_limit_in_force_is_refused(fahrenheit: int) -> None:
    """Forbidden with the limit named; at the limit itself it is not."""
    in_force = limit("dry.air_temp", "105 °F / 40 °C")
    found = judge_heat("cabinet", quantity(f"{fahrenheit} °F"), in_force)

    assert found is not None
    assert found.bearing is Bearing.FORBIDS
    assert judge_heat("cabinet", quantity("105 °F"), in_force) is None


@given(st.integers(20, 60), st.integers(1, 200))
def test_a_speed_above_the_limit_in_force_is_refused(inches: int, faster: int) -> None:
    """However large the drum: a turn a minute past what the limit gives is forbidden."""
    most = highest_speed_rpm(float(quantity(f"{inches} in").to("m")), 100.0)
    set_to = setting(speed=f"{most + faster} rpm")
    found = check_programme(set_to, drum(f"{inches} in"), LIMITS, TABLE)

    assert Bearing.FORBIDS in [
        one.bearing for one in found if one.message.startswith("machine.spin")
    ]


@given(st.floats(0.3, 1.5), st.floats(1.0, 400.0))
def test_g_and_speed_are_each_others_way_back(diameter: float, g: float) -> None:
    """There and back is the same; rounded down it never exceeds what was asked for."""
    there = force_g(diameter, speed_rpm(diameter, g))

    assert abs(there - g) <= 1e-9 * g
    assert force_g(diameter, highest_speed_rpm(diameter, g)) <= g * (1 + 1e-12)


@given(st.sampled_from(["gpg", "mg/L", "mmol/L", "dH"]), st.integers(0, 5000))
def test_hardness_converts_there_and_back(unit: str, amount: int) -> None:
    """Exactly, whatever the unit."""
    given_hardness = quantity(f"{amount} {unit}")
    milligrams = given_hardness.to("mg/L")

    assert given_hardness.to(unit) == amount
    assert milligrams >= 0
    assert TABLE.band("water.soft").likely == 60
