"""How do washers and their costs read?"""

from dataclasses import dataclass

from sootline.core.basis import Assumptions, Bearing, Quantity
from sootline.core.job.jobs import Job
from sootline.core.machines import Cost, CostSheet
from sootline.core.machines.bath_sheet import BathSheet
from sootline.core.machines.spin_sheet import SpinAsked, SpinSheet, reckon_spin
from sootline.tasks.check_machines import MachineReport, ProgrammeReport
from sootline.web.reading.saying import Resting, Said, resting, said


@dataclass(frozen=True, kw_only=True)
class ProgrammeShown:
    """One programme: whether it may be used, and everything found."""

    report: ProgrammeReport
    verdict: str
    found: tuple[Resting, ...]


@dataclass(frozen=True, kw_only=True)
class DrumShown:
    """One drum: the highest speed to set, in whole turns."""

    washer: str
    diameter: Quantity
    volume_l: str
    sheet: SpinSheet


@dataclass(frozen=True, kw_only=True)
class MachinesShown:
    """The whole screen.

    Args:
        unmeasured: washers whose drum nobody measured.
        limit: of the spin, in force; None where no source gives a number.
    """

    programmes: tuple[ProgrammeShown, ...]
    drums: tuple[DrumShown, ...]
    unmeasured: tuple[str, ...]
    stricter: tuple[Resting, ...]
    policy: tuple[Resting, ...]
    limit: Quantity | None


def read_machines(job: Job, report: MachineReport, assumptions: Assumptions) -> MachinesShown:
    """Lay the washers out."""
    limit = report.spin_limit
    measured = {drum.washer for drum in job.readings.drums}
    return MachinesShown(
        programmes=tuple(
            ProgrammeShown(report=one, verdict=_verdict(one), found=resting(one.findings))
            for one in report.programmes
        ),
        drums=tuple(
            DrumShown(
                washer=drum.washer,
                diameter=drum.diameter,
                volume_l="" if drum.volume_l is None else f"{drum.volume_l:.0f}",
                sheet=reckon_spin(
                    SpinAsked(
                        diameter=drum.diameter,
                        limit=limit,
                        diameter_error=drum.diameter_error,
                        speed_error=drum.speed_error,
                    ),
                    assumptions,
                ),
            )
            for drum in job.readings.drums
            if limit is not None
        ),
        unmeasured=tuple(one.id for one in job.wash_room.washers if one.id not in measured),
        stricter=resting(report.stricter),
        policy=resting(report.findings),
        limit=limit,
    )


def _verdict(report: ProgrammeReport) -> str:
    if report.refused:
        return "refused"
    asks = any(one.bearing is Bearing.ASKS for one in report.findings)
    return "asks" if asks else "inside"


@dataclass(frozen=True, kw_only=True)
class BathShown:
    """What one bath takes, and how far its figures reach."""

    lines: tuple[Said, ...]
    found: tuple[Resting, ...]


def read_bath(sheet: BathSheet) -> BathShown:
    """Lay out heat, hardness and rinses."""
    lines = []
    if sheet.heat_kwh is not None:
        band = sheet.heat_kwh
        heat = f"{band.likely:.1f} ({band.low:.1f}-{band.high:.1f})"
        lines.append(said("machine.line.heat", heat=heat))
    if sheet.hardness is not None:
        hardness = {"hardness": sheet.asked.hardness, "class": sheet.hardness}
        lines.append(said("machine.line.hardness", **hardness))
    left = sheet.rinses.left
    lines.append(
        said(
            "machine.line.rinses",
            rinses=sheet.rinses.rinses,
            liquor=f"{sheet.liquor_l_kg:.1f}",
            share=f"{sheet.rinses.carry_over * 100:.0f}",
            left=f"{left.likely * 100:.2g}",
            low=f"{left.low * 100:.2g}",
            high=f"{left.high * 100:.2g}",
        )
    )
    return BathShown(lines=tuple(lines), found=resting(sheet.findings))


@dataclass(frozen=True, kw_only=True)
class CostsShown:
    """What a load and a set cost, item by item, and against a contract."""

    items: tuple[Said, ...]
    lines: tuple[Said, ...]
    found: tuple[Resting, ...]


def read_costs(sheet: CostSheet, cost: Cost) -> CostsShown:
    """Lay the costs out."""
    money = {"currency": sheet.currency}
    lines = [said("machine.line.cost", load=f"{cost.load:.2f}", set=f"{cost.set:.2f}", **money)]
    if cost.set_all_in is not None:
        lines.append(said("machine.line.cost_all_in", set=f"{cost.set_all_in:.2f}", **money))
    if cost.break_even is not None:
        even = {"sets": f"{cost.break_even:.0f}", "contract": f"{sheet.contract:.2f}"}
        lines.append(said("machine.line.break_even", **even, **money))
    return CostsShown(
        items=tuple(
            said(
                "machine.line.cost_item",
                cost_kind=kind.value,
                amount=f"{share * cost.load:.2f}",
                percent=f"{share * 100:.0f}",
                **money,
            )
            for kind, share in cost.shares
        ),
        lines=tuple(lines),
        found=resting(cost.findings),
    )
