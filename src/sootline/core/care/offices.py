"""Who ends a hold, who stands in, and when does it go up?"""

from sootline.core.basis import Finding, MessageId
from sootline.core.care.policy import Appointment, CarePolicy
from sootline.core.gear.state import Hold
from sootline.core.rulebook.contaminants import ContaminantRule, Decider

# Common practice, no published source: who stands in where no contaminant rule names a deputy.
_STANDS_IN = {
    Decider.SAFETY_OFFICER: Decider.CHIEF,
    Decider.INFECTION_CONTROL: Decider.SAFETY_OFFICER,
    Decider.INVESTIGATOR: Decider.CHIEF,
    Decider.GEAR_OFFICER: Decider.SAFETY_OFFICER,
    Decider.CHIEF: Decider.SAFETY_OFFICER,
}


def open_hold(
    cause: str,
    question: str,
    reason: Finding,
    policy: CarePolicy,
    decider: Decider | ContaminantRule,
) -> Hold:
    """Open a hold that names its decider, a deputy, and when it goes up.

    Args:
        decider: an office, or the contaminant rule that names it together with its deputy.
    """
    if isinstance(decider, ContaminantRule):
        office, deputy, hours = decider.decider, decider.deputy, decider.escalate_after_h
    else:
        office, deputy = decider, _STANDS_IN[decider]
        hours = policy.escalate_after_h
    appointed = next((one for one in policy.appointments if one.office is office), None)
    if appointed and appointed.escalate_after_h is not None:
        hours = min(hours, appointed.escalate_after_h)
    return Hold(
        cause=cause,
        question=MessageId(question),
        decider=office,
        deputy=deputy,
        escalate_after_h=hours,
        reason=_naming(reason, appointed) if appointed else reason,
    )


def _naming(reason: Finding, appointed: Appointment) -> Finding:
    """Add tonight's names to the reason of a hold."""
    names = {"person": appointed.person, "stand_in": appointed.deputy}
    given = tuple((key, name) for key, name in names.items() if name)
    return Finding(
        bearing=reason.bearing,
        message=reason.message,
        ground=reason.ground,
        values=(*reason.values, *given),
    )
