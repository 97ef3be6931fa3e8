"""How much water do many states of air hold, and how fast do they dry wet cloth?

The equations the psychrometrics library solves for one state, above freezing alone, over arrays.
Where one state would be settled by halving, all are settled by Newton's steps.

Source: ASHRAE Fundamentals, chapter 1: saturation over water, the wet bulb and the volume of air.
"""

import numpy as np
from numpy.typing import NDArray

from sootline.core.drying.hanging import LEWIS_K_PA

Array = NDArray[np.float64]

_KELVIN = 273.15
# Vapour's molar mass over that of dry air, and the gas constant of dry air [J/kgK].
_MOLAR, _DRY_GAS = 0.621945, 287.042
_STEPS = 3


def saturation_pa(temp_c: Array) -> Array:
    """Return the pressure of saturated vapour over water, 0 to 100 °C [Pa]."""
    return _saturation(temp_c)[0]


def _saturation(temp_c: Array) -> tuple[Array, Array]:
    """Return the pressure of saturated vapour [Pa] and how it rises [Pa/K]."""
    kelvin = temp_c + _KELVIN
    over = 1 / kelvin
    power = 4.1764768e-05 - 1.4452093e-08 * kelvin
    power *= kelvin
    power -= 4.8640239e-02
    power *= kelvin
    power += 1.3914993
    power -= 5.8002206e03 * over
    power += 6.5459673 * np.log(kelvin)
    pressure = np.exp(power, out=power)
    slope = (5.8002206e03 * over + 6.5459673) * over - 4.8640239e-02
    slope += (8.3529536e-05 - 4.3356279e-08 * kelvin) * kelvin
    slope *= pressure
    return pressure, slope


def ratio_of(vapour_pa: Array, pressure: Array) -> Array:
    """Return the humidity ratio by the pressure of the vapour [kg/kg]."""
    return _MOLAR * vapour_pa / (pressure - vapour_pa)


def vapour_pa(ratio: Array, pressure: Array) -> Array:
    """Return the pressure of the vapour by the humidity ratio [Pa]."""
    return pressure * ratio / (_MOLAR + ratio)


def dry_kg_m3(temp_c: Array, ratio: Array, pressure: Array) -> Array:
    """Return the dry air in a cubic metre [kg/m3]."""
    return pressure / (_DRY_GAS * (temp_c + _KELVIN) * (1 + 1.607858 * ratio))


def wet_bulb(temp_c: Array, ratio: Array, pressure: Array) -> tuple[Array, Array]:
    """Return thermodynamic wet bulbs [°C] and the humidity ratio of air saturated there.

    Within 0.001 K, what the library itself stops at.
    """
    bulb = _first_guess(temp_c, vapour_pa(ratio, pressure))
    held = ratio
    for _ in range(_STEPS):
        full, rise = _saturation(bulb)
        room = pressure - full
        held = _MOLAR * full / room
        held_rise = _MOLAR * pressure * rise / (room * room)
        off = (2501 - 2.326 * bulb) * held - 1.006 * (temp_c - bulb)
        off -= ratio * (2501 + 1.86 * temp_c - 4.186 * bulb)
        slope = (2501 - 2.326 * bulb) * held_rise - 2.326 * held + 1.006 + 4.186 * ratio
        step = off / slope
        bulb = np.minimum(bulb - step, temp_c)
        held = held - held_rise * step
    return bulb, held


def _first_guess(temp_c: Array, vapour: Array) -> Array:
    """Follow the tangent from the dry bulb: the psychrometer's rule with 66 Pa/K."""
    full, rise = _saturation(temp_c)
    return temp_c - np.maximum(full - vapour, 0) / (66 + 0.75 * rise)


def flux_kg_m2h(
    temp_c: Array, vapour: Array, convection: float, radiation: float, resistance: float
) -> tuple[Array, Array]:
    """Return the water that leaves one face [kg/m2h], and the surface's temperature [°C]."""
    between = 1 / (1 / (LEWIS_K_PA * convection) + resistance)
    gain = convection + radiation
    full, rise = _saturation(temp_c)
    surface = temp_c - (full - vapour) * between / (gain + 0.75 * rise * between)
    for _ in range(_STEPS - 1):
        full, rise = _saturation(surface)
        off = gain * (temp_c - surface) - (full - vapour) * between
        surface = surface + off / (gain + rise * between)
    watts = gain * (temp_c - surface)
    return watts * 3.6 / (2501.0 - 2.326 * surface), surface
