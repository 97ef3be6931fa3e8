"""Moist air against CoolProp over temperature, humidity and altitude.

CoolProp knows real moist air (ASHRAE RP-1485); what we use takes it for an ideal gas. Source: the
CoolProp library, development only. Where the wet bulb nears freezing the two part by up to 0.7 K,
because one of them takes the bulb for iced; nothing is dried there.
"""

import itertools
from collections.abc import Callable

import CoolProp.CoolProp as reference  # noqa: N813
import pytest

from sootline.core.drying.moist_air import MoistAir, moist_air, pressure_pa

TEMPERATURES = (1, 5, 10, 15, 20, 25, 30, 35, 40)
HUMIDITIES = (0.1, 0.2, 0.3, 0.45, 0.6, 0.75, 0.9, 0.98)
ALTITUDES = (0, 500, 1000, 1609, 2500)
_JUST_ABOVE_FREEZING_C = 0.5


def real(what: str, temp: float, humidity: float, pressure: float) -> float:
    """Ask CoolProp about air of a temperature [°C] and relative humidity."""
    return float(reference.HAPropsSI(what, "T", temp + 273.15, "P", pressure, "R", humidity))


def ratio_apart(ours: MoistAir, humidity: float) -> float:
    """Return the difference of the humidity ratio, as a share."""
    return ours.ratio / real("W", ours.temp_c, humidity, ours.pressure_pa) - 1


def wet_bulb_apart(ours: MoistAir, humidity: float) -> float:
    """Return the difference of the wet bulb [K]."""
    theirs = real("B", ours.temp_c, humidity, ours.pressure_pa) - 273.15
    return ours.wet_bulb_c - theirs if theirs > _JUST_ABOVE_FREEZING_C else 0.0


def volume_apart(ours: MoistAir, humidity: float) -> float:
    """Return the difference of the volume of a kilogram of dry air, as a share."""
    return 1 / ours.dry_kg_m3 / real("V", ours.temp_c, humidity, ours.pressure_pa) - 1


@pytest.mark.parametrize(
    ("apart", "most"), [(ratio_apart, 0.006), (wet_bulb_apart, 0.03), (volume_apart, 0.001)]
)
def test_moist_air_against_real_air(
    apart: Callable[[MoistAir, float], float], most: float, capsys: pytest.CaptureFixture[str]
) -> None:
    """The largest difference over the grid is what an ideal gas may differ by, and is printed."""
    worst = (0.0, (0, 0.0, 0))
    for temp, humidity, altitude in itertools.product(TEMPERATURES, HUMIDITIES, ALTITUDES):
        ours = moist_air(temp, humidity, pressure_pa(altitude))
        worst = max(worst, (abs(apart(ours, humidity)), (temp, humidity, altitude)))
    with capsys.disabled():
        print(f"\n  {apart.__name__}: {worst[0]:.4f} at the most, at (°C, share, m) {worst[1]}")

    assert worst[0] <= most
