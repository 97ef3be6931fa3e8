"""Are the washers of a job set within every limit in force?"""

from dataclasses import dataclass

from sootline.core.basis import Assumptions, Bearing, Finding, MachineId, Quantity
from sootline.core.gear import CareTerms, Component, ResolvedLimit, resolve_terms
from sootline.core.job.jobs import Job
from sootline.core.laundry.rooms import Programme, Washer
from sootline.core.machines import (
    BathReading,
    Setting,
    WashLimits,
    check_programme,
    limits_in_force,
    stricter_labels,
)
from sootline.core.rulebook import Rulebook, assemble
from sootline.tasks.ports import Rules


@dataclass(frozen=True, kw_only=True)
class ProgrammeReport:
    """One programme of one washer with everything found about it."""

    washer: MachineId
    programme: str
    findings: tuple[Finding, ...]

    @property
    def refused(self) -> bool:
        """Whether it goes beyond a limit that binds every piece."""
        return any(one.bearing is Bearing.FORBIDS for one in self.findings)


@dataclass(frozen=True, kw_only=True)
class MachineReport:
    """Every programme, and the pieces that bear less than the limits used here.

    Args:
        findings: what a policy looser than the edition came to.
        spin_limit: the strictest number in force; None where no source gives one.
    """

    programmes: tuple[ProgrammeReport, ...]
    stricter: tuple[Finding, ...]
    findings: tuple[Finding, ...]
    spin_limit: Quantity | None = None


def check_machines(rules: Rules, job: Job, assumptions: Assumptions) -> MachineReport:
    """Hold every programme of the job's washers against edition and policy.

    Raises:
        BadInputError: the job names an edition or a kind that does not exist.
    """
    book = assemble(
        adopted=rules.edition(job.department.edition),
        policy=job.department.policy,
        practice=rules.practice(),
    )
    limits = limits_in_force(book.rulebook)
    programmes = tuple(
        _report(job, washer, programme, limits, assumptions)
        for washer in job.wash_room.washers
        for programme in washer.programmes
    )
    pieces = [(component, _terms(job, component, book.rulebook)) for component in job.components]
    return MachineReport(
        programmes=programmes,
        stricter=tuple(stricter_labels(pieces, limits)),
        findings=book.findings,
        spin_limit=_number(limits.spin),
    )


def _number(limit: ResolvedLimit) -> Quantity | None:
    return limit.limits[0][0].values[0] if limit.limits else None


def _report(
    job: Job,
    washer: Washer,
    programme: Programme,
    limits: WashLimits,
    assumptions: Assumptions,
) -> ProgrammeReport:
    read = next(
        (
            one
            for one in job.readings.baths
            if (one.washer, one.programme) == (washer.id, programme.id)
        ),
        BathReading(washer=washer.id, programme=programme.id),
    )
    drum = next((one for one in job.readings.drums if one.washer == washer.id), None)
    setting = Setting(
        washer=washer.id,
        programme=programme.id,
        spin=programme.extraction,
        speed=drum.speed_of(programme.id) if drum else None,
        bath=_hotter(programme.bath_temp, read.bath),
        ph=read.ph,
        load=washer.limit,
    )
    found = check_programme(setting, drum, limits, assumptions)
    return ProgrammeReport(washer=washer.id, programme=programme.id, findings=found)


def _hotter(stated: Quantity | None, read: Quantity | None) -> Quantity | None:
    """Return the hotter of what is set and what a thermometer read."""
    given = [one for one in (stated, read) if one is not None]
    return max(given, key=lambda one: one.base, default=None)


def _terms(job: Job, component: Component, rulebook: Rulebook) -> CareTerms:
    guides = {guide.id: guide for guide in job.guides}
    guide = guides.get(component.guide) if component.guide else None
    return resolve_terms(component, guide, rulebook)
