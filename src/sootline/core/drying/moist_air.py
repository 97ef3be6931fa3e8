"""How much water does air hold, and how much more can it take?

The one file that imports the psychrometrics library: its system of units is one switch for the
whole process, set here once. It takes air and vapour for ideal gases: saturation humidities come
out 0.4 to 0.5 % below those of real moist air. Source: ASHRAE Fundamentals, chapter 1.
"""

import sys
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from sootline.core.basis import UnreadableValueError


def _scalar_psychrolib() -> Any:  # noqa: ANN401 - the library has no types
    """Import the psychrometrics library as plain functions of numbers, in SI.

    Where a compiler for arrays is installed the library wraps every function in it, which costs
    each command most of a second and 100 MB before it begins. Hidden for the moment of import, the
    compiler is not found and the functions stay what they are.
    """
    hidden = {name: module for name, module in sys.modules.items() if name == "numba"}
    sys.modules["numba"] = None  # type: ignore[assignment]
    try:
        import psychrolib as library  # type: ignore[import-untyped]  # noqa: PLC0415
    finally:
        del sys.modules["numba"]
        sys.modules.update(hidden)
    library.SetUnitSystem(library.SI)
    return library


psychrolib = _scalar_psychrolib()

# Humid heat of dry air and of the vapour in it [J/kgK].
_DRY_AIR, _VAPOUR = 1006.0, 1860.0
_HIGHEST_M = 6000


@dataclass(frozen=True, kw_only=True)
class MoistAir:
    """Air of one state.

    Args:
        temp_c: dry-bulb temperature [°C].
        ratio: humidity ratio, kg of vapour to a kg of dry air.
        pressure_pa: of the whole [Pa].
    """

    temp_c: float
    ratio: float
    pressure_pa: float

    def heated_to(self, temp_c: float) -> "MoistAir":
        """Return the same air warmed; it takes up no water by that."""
        return replace(self, temp_c=temp_c)

    @property
    def humid_heat(self) -> float:
        """What warms a kilogram of dry air with its vapour by a kelvin [J/kgK]."""
        return _DRY_AIR + _VAPOUR * self.ratio

    @property
    def dry_kg_m3(self) -> float:
        """Dry air in a cubic metre [kg/m3]."""
        return 1 / float(psychrolib.GetMoistAirVolume(self.temp_c, self.ratio, self.pressure_pa))

    @property
    def vapour_pa(self) -> float:
        """Pressure of the vapour [Pa]."""
        return float(psychrolib.GetVapPresFromHumRatio(self.ratio, self.pressure_pa))

    @property
    def humidity(self) -> float:
        """Relative humidity, 1 is saturated; above 1 where it cannot hold what it has."""
        return self.vapour_pa / saturation_pa(self.temp_c)

    @property
    def wet_bulb_c(self) -> float:
        """Thermodynamic wet-bulb temperature [°C]."""
        return _wet_bulb_c(self)

    @property
    def dew_point_c(self) -> float:
        """Temperature at which it begins to lose water [°C]."""
        ratio = psychrolib.GetTDewPointFromHumRatio(self.temp_c, self.ratio, self.pressure_pa)
        return float(ratio)

    @property
    def enthalpy_kj_kg(self) -> float:
        """Enthalpy of a kilogram of dry air with its vapour [kJ/kg]."""
        return float(psychrolib.GetMoistAirEnthalpy(self.temp_c, self.ratio)) / 1000


def pressure_pa(altitude_m: float) -> float:
    """Return the standard pressure at an altitude [Pa].

    Args:
        altitude_m: above the sea, -500 to 6000 [m].

    Raises:
        UnreadableValueError: an altitude outside of this.

    Source: ASHRAE Fundamentals, chapter 1, standard atmosphere.
    """
    if not -500 <= altitude_m <= _HIGHEST_M:
        limit = f"-500 m, {_HIGHEST_M} m"
        raise UnreadableValueError("drying.altitude", value=f"{altitude_m:g} m", limit=limit)
    return float(psychrolib.GetStandardAtmPressure(altitude_m))


def moist_air(temp_c: float, humidity: float, pressure: float) -> MoistAir:
    """Return air by its temperature [°C] and relative humidity (1 is saturated).

    Raises:
        UnreadableValueError: no air has this humidity.
    """
    if not 0 < humidity <= 1:
        value = f"{humidity * 100:g} %"
        raise UnreadableValueError("drying.humidity", value=value, limit="0 %, 100 %")
    ratio = float(psychrolib.GetHumRatioFromRelHum(temp_c, humidity, pressure))
    return MoistAir(temp_c=temp_c, ratio=ratio, pressure_pa=pressure)


def saturated_ratio(temp_c: float, pressure: float) -> float:
    """Return the humidity ratio of saturated air [kg/kg]."""
    return float(psychrolib.GetSatHumRatio(temp_c, pressure))


@lru_cache(maxsize=65536)
def saturation_pa(temp_c: float) -> float:
    """Return the pressure of saturated vapour [Pa]."""
    return float(psychrolib.GetSatVapPres(temp_c))


def latent_kj_kg(temp_c: float) -> float:
    """Return the heat that evaporates water at a temperature, 0 to 60 °C [kJ/kg].

    2442 at 25 °C, not the 2257 of boiling. Source: ASHRAE Fundamentals, chapter 1, the enthalpy
    of saturated vapour less that of the liquid.
    """
    return 2501.0 + 1.86 * temp_c - 4.186 * temp_c


@lru_cache(maxsize=65536)
def _wet_bulb_c(air: MoistAir) -> float:
    # Rounding may leave saturated air a last digit over; the library refuses that.
    ratio = min(air.ratio, saturated_ratio(air.temp_c, air.pressure_pa))
    return float(psychrolib.GetTWetBulbFromHumRatio(air.temp_c, ratio, air.pressure_pa))
