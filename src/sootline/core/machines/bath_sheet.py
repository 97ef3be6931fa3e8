"""For one bath: how much heat, how much detergent by its label, how many rinses at least?"""

from dataclasses import dataclass

from sootline.core.basis import (
    Assumptions,
    Band,
    Bearing,
    Finding,
    Quantity,
    UnreadableValueError,
    finding,
)
from sootline.core.machines.detergents import Detergent, hardness_class
from sootline.core.machines.grounds import as_entered
from sootline.core.machines.heating import heating_kwh
from sootline.core.machines.rinsing import RinseCount, carry_over, count_rinses


@dataclass(frozen=True, kw_only=True)
class BathAsked:
    """One bath.

    Args:
        water: in the bath; only its hot share counts for heat.
        load: dry mass.
        target: share of the liquor wanted after the last rinse.
        spun: whether the drum spins between rinses.
        metered: whether the hot water is metered apart.
    """

    water: Quantity
    load: Quantity
    inlet: Quantity
    bath: Quantity
    hardness: Quantity | None = None
    detergent: Detergent | None = None
    target: float = 0.01
    spun: bool = True
    metered: bool = False


@dataclass(frozen=True, kw_only=True)
class BathSheet:
    """The answer.

    Args:
        heat_kwh: to warm water and cloth, at an efficiency of one.
        dose_ml: by the product's own label; None when the label or the water does not say.
        hardness: class of the water; None is not read.
    """

    asked: BathAsked
    heat_kwh: Band | None
    liquor_l_kg: float
    dose_ml: float | None
    hardness: str | None
    rinses: RinseCount
    findings: tuple[Finding, ...]


def reckon_bath(asked: BathAsked, assumptions: Assumptions) -> BathSheet:
    """Turn a bath into heat, dose and rinses.

    Raises:
        UnreadableValueError: an amount that cannot be, or other units.
    """
    litres, load = float(asked.water.to("L")), float(asked.load.to("kg"))
    if litres <= 0 or load <= 0:
        given = asked.water if litres <= 0 else asked.load
        raise UnreadableValueError("machine.setting.amount", value=str(given))
    heat = heating_kwh(
        water_l=litres, cloth_kg=load, metal_kg=0.0, inlet=asked.inlet, bath=asked.bath,
        efficiency=1.0,
    )  # fmt: skip
    spread = assumptions.band("wash.heat_known" if asked.metered else "wash.heat_guessed")
    kept = assumptions.band("rinse.kept_spun" if asked.spun else "rinse.kept_drained")
    share = carry_over(kept.likely, litres / load)
    row = asked.detergent.row_for(asked.hardness) if asked.detergent else None
    return BathSheet(
        asked=asked,
        heat_kwh=spread.scaled(heat) if heat > 0 else None,
        liquor_l_kg=litres / load,
        dose_ml=row.dose_ml(load, litres) if row else None,
        hardness=hardness_class(asked.hardness, assumptions) if asked.hardness else None,
        rinses=count_rinses(share, asked.target, assumptions),
        findings=_findings(asked, found=row is not None, assumptions=assumptions),
    )


def _findings(asked: BathAsked, *, found: bool, assumptions: Assumptions) -> tuple[Finding, ...]:
    scope = assumptions.row("rinse.residual").ground
    said = [finding(Bearing.NOTES, "machine.rinse.scope", scope)]
    if asked.detergent is not None and not found:
        ground = as_entered("washer.detergent")
        name = asked.detergent.name
        said.append(finding(Bearing.ASKS, "machine.detergent.no_row", ground, product=name))
    return tuple(said)
