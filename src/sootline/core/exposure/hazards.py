"""What does a call say about its hazards, once statements and surveys are weighed?

Nothing said "absent" removes what somebody knows; an unnamed "absent" counts as unknown; a signed
survey that found nothing answers a suspicion, one that found something stands above remarks.
"""

import datetime as dt

from sootline.core.basis import ContaminantId
from sootline.core.exposure.calls import Answer, Call, Hazard, Presence, Survey
from sootline.core.exposure.grades import SMOKE, Statement, bearing_of, stated, tell
from sootline.core.exposure.zones import was_away
from sootline.core.rulebook.contaminants import Knowledge

_OPEN = (Knowledge.KNOWN, Knowledge.SUSPECTED)


def survey_absent(call: Call, contaminant: ContaminantId, now: dt.datetime | None) -> Survey | None:
    """Return the signed survey that found nothing, unless another one did not."""
    signed = surveys_of(call, contaminant, now)
    if not signed or any(one.found is not Knowledge.ABSENT for one in signed):
        return None
    return min(signed, key=lambda one: one.signed_at)


def surveys_of(
    call: Call, contaminant: ContaminantId, now: dt.datetime | None
) -> tuple[Survey, ...]:
    """List the surveys on a contaminant that were signed by now."""
    return tuple(
        survey
        for survey in call.building.surveys
        if survey.contaminant == contaminant and (now is None or survey.signed_at <= now)
    )


def state_hazards(call: Call, presence: Presence, now: dt.datetime | None) -> tuple[Statement, ...]:
    """List what the call's hazards and surveys mean for the gear of one person."""
    if was_away(presence):
        return ()
    hazards = [hazard for hazard in call.hazards if hazard.contaminant != SMOKE]
    denied = {one.contaminant for one in hazards if _denies(one)}
    kept = [
        _from_hazard(call, hazard) for hazard in hazards if not _answered(call, hazard, denied, now)
    ]
    return (*kept, *_from_surveys(call, presence, now))


def _denies(hazard: Hazard) -> bool:
    return hazard.knowledge is Knowledge.ABSENT and hazard.said_by is not None


def _answered(
    call: Call, hazard: Hazard, denied: set[ContaminantId], now: dt.datetime | None
) -> bool:
    """Whether a named denial answers a "don't know", or a survey a suspicion."""
    if hazard.knowledge is Knowledge.KNOWN or _denies(hazard):
        return False
    surveyed = survey_absent(call, hazard.contaminant, now) is not None
    return surveyed or (hazard.contaminant in denied and hazard.knowledge not in _OPEN)


def _from_hazard(call: Call, hazard: Hazard) -> Statement:
    unnamed = hazard.knowledge is Knowledge.ABSENT and not hazard.said_by
    knowledge = Knowledge.UNKNOWN if unnamed else hazard.knowledge
    return Statement(
        contaminant=hazard.contaminant,
        knowledge=knowledge,
        finding=tell(
            bearing_of(knowledge),
            "exposure.hazard.absent_unnamed" if unnamed else f"exposure.hazard.{knowledge}",
            stated("hazard", hazard.said_by),
            call,
            contaminant=hazard.contaminant,
            said_by=hazard.said_by,
            detail=hazard.detail,
        ),
    )


def _from_surveys(call: Call, presence: Presence, now: dt.datetime | None) -> tuple[Statement, ...]:
    """Put a survey's word on the gear; who left before the opening is only suspected of it."""
    statements = []
    for survey in call.building.surveys:
        if now is not None and survey.signed_at > now:
            continue
        left_before = survey.found is Knowledge.KNOWN and presence.opened is Answer.NO
        knowledge = Knowledge.SUSPECTED if left_before else survey.found
        finding = tell(
            bearing_of(knowledge),
            "exposure.survey.left_before" if left_before else f"exposure.survey.{survey.found}",
            stated("survey", survey.signed_by),
            call,
            contaminant=survey.contaminant,
            signed_by=survey.signed_by,
            signed_at=survey.signed_at.isoformat(timespec="minutes"),
        )
        statements.append(
            Statement(
                contaminant=survey.contaminant,
                knowledge=knowledge,
                finding=finding,
                firm=True,
            )
        )
    return tuple(statements)
