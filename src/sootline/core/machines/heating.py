"""How much energy does it take to warm the hot share of a bath?"""

from sootline.core.basis import Quantity, UnreadableValueError

# Specific heats near 30 °C [kJ/kgK]: water; cotton and aramid cloth; steel.
WATER, CLOTH, METAL = 4.18, 1.34, 0.50
_KJ_PER_KWH = 3600.0


def heating_kwh(
    *,
    water_l: float,
    cloth_kg: float,
    metal_kg: float,
    inlet: Quantity,
    bath: Quantity,
    efficiency: float,
) -> float:
    """Return the energy to warm water, goods and drum [kWh].

    Args:
        water_l: the water that is warmed [L], at 1 kg/L; only the hot share counts.
        cloth_kg: dry goods [kg].
        metal_kg: metal that warms with them [kg].
        efficiency: share of the energy that reaches the bath, above 0 and at most 1.

    Raises:
        UnreadableValueError: a negative amount, or an efficiency that cannot be.
    """
    if min(water_l, cloth_kg, metal_kg) < 0 or not 0 < efficiency <= 1:
        given = f"{water_l:g} L, {cloth_kg:g} kg, {metal_kg:g} kg, {efficiency:g}"
        raise UnreadableValueError("machine.heat.amount", value=given)
    rise = max(0.0, float(bath.to("°C") - inlet.to("°C")))
    return (water_l * WATER + cloth_kg * CLOTH + metal_kg * METAL) * rise / _KJ_PER_KWH / efficiency
