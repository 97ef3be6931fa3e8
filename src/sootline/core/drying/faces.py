"""Through which faces does a piece give off its water?"""

from sootline.core.basis import Assumptions
from sootline.core.drying.cloths import Cloth
from sootline.core.drying.hanging import flux_kg_m2h
from sootline.core.drying.moist_air import MoistAir

# A liner gives off water freely on its inner face, through the moisture barrier on the other. Left
# in its shell, shell and liner share one free face and one behind the barrier.
BARRIERS = {Cloth.SHELL: 0, Cloth.LINER: 1, Cloth.ASSEMBLED: 1}
AREA = {Cloth.SHELL: 1.0, Cloth.LINER: 1.0, Cloth.ASSEMBLED: 0.5}


def area_m2(cloth: Cloth, dry_kg: float, assumptions: Assumptions) -> float:
    """Return one face of the cloth in so much dry gear [m2]."""
    return assumptions.band("dry.area_per_kg").likely * dry_kg * AREA[cloth]


def hanging_flux(air: MoistAir, cloth: Cloth, convection: float, assumptions: Assumptions) -> float:
    """Return the water that leaves a square metre of cloth through both faces [kg/m2h]."""
    radiation = assumptions.band("dry.radiation").likely
    barrier = assumptions.band("dry.barrier_resistance").likely
    free = flux_kg_m2h(air, convection, radiation, 0.0)
    behind = flux_kg_m2h(air, convection, radiation, barrier) if BARRIERS[cloth] else free
    return free + behind


def open_share(air: MoistAir, cloth: Cloth, convection: float, assumptions: Assumptions) -> float:
    """Return what a cloth gives off against one without a barrier, at most 1."""
    free = hanging_flux(air, Cloth.SHELL, convection, assumptions)
    return hanging_flux(air, cloth, convection, assumptions) / free
