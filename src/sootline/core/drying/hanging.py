"""How fast does water leave cloth that hangs in still air?"""

from functools import lru_cache

from sootline.core.drying.moist_air import MoistAir, latent_kj_kg, saturation_pa

# Lewis relation between evaporative and convective transfer [K/Pa].
LEWIS_K_PA = 0.0165
_STEPS = 30


@lru_cache(maxsize=65536)
def surface_c(air: MoistAir, convection: float, radiation: float, resistance: float) -> float:
    """Return the temperature wet cloth settles at [°C].

    What it gains by convection and radiation equals what evaporation takes.

    Args:
        convection: heat transfer coefficient [W/m2K], above 0.
        radiation: radiant transfer with walls at the air's temperature [W/m2K].
        resistance: of a layer the vapour must pass, beside the air's [m2Pa/W]; 0 is none.

    Source: heat balance of a wet surface with the Lewis relation.
    """
    vapour = air.vapour_pa
    low, high = air.dew_point_c, air.temp_c
    for _ in range(_STEPS):
        middle = (low + high) / 2
        gained = (convection + radiation) * (air.temp_c - middle)
        if gained > _taken(middle, vapour, convection, resistance):
            low = middle
        else:
            high = middle
    return (low + high) / 2


def flux_kg_m2h(air: MoistAir, convection: float, radiation: float, resistance: float) -> float:
    """Return the water that leaves one square metre of one face [kg/m2h]."""
    surface = surface_c(air, convection, radiation, resistance)
    watts = _taken(surface, air.vapour_pa, convection, resistance)
    return watts / (latent_kj_kg(surface) * 1000) * 3600


def _taken(surface: float, vapour: float, convection: float, resistance: float) -> float:
    """Return the heat that evaporation takes [W/m2]."""
    return (saturation_pa(surface) - vapour) / (1 / (LEWIS_K_PA * convection) + resistance)
