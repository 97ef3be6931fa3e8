"""Does the department's policy hold gear because of the building, and has a survey ended that?

Only a stated age, opening or presence lifts the policy; a house of unknown age holds nothing by
itself, but what may carry fibres is washed apart and the question stays open.
"""

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from sootline.core.basis import Bearing, CallId, ContaminantId, DateSpan, Finding
from sootline.core.care.cases import Texts, decided, reason
from sootline.core.care.policy import BuildingHold
from sootline.core.exposure.calls import Answer, Building, Presence, Survey, Zone
from sootline.core.exposure.grades import stated
from sootline.core.exposure.hazards import survey_absent
from sootline.core.exposure.wearing import Wearing
from sootline.core.exposure.zones import was_away

_OUTDOORS = frozenset((Zone.OUTSIDE, Zone.PUMP, Zone.STAGING))


@dataclass(frozen=True, kw_only=True)
class BuildingConcern:
    """What one building rule means for one component.

    Args:
        held: whether the policy holds it.
        apart: whether it is washed apart while the question is open.
        ended_by: the signed survey that found nothing.
    """

    call: CallId
    contaminant: ContaminantId
    held: bool
    apart: bool
    finding: Finding
    ended_by: Survey | None = None


def judge_buildings(wearing: Wearing, texts: Texts) -> Iterator[BuildingConcern]:
    """Apply every building rule of the policy to one component at one call."""
    people = [person for person in wearing.people if not was_away(person)]
    if wearing.people and not people:
        return
    for rule in texts.policy.building_holds:
        building = wearing.call.building
        old = _built_before(building.built, rule.built_before)
        there = _strictest(_was_there(person) for person in people)
        opened = _opened(building, there) if rule.opened else Answer.YES
        if Answer.NO not in (old, opened):
            present = there if rule.opened else Answer.YES
            yield _concern(wearing, rule, (old, opened, present), texts.now)


def _built_before(built: DateSpan, year: int) -> Answer:
    """Whether the building is older, acting on the earliest reading; no bound at all is unknown."""
    if built.earliest is not None and built.earliest.year >= year:
        return Answer.NO
    return Answer.UNKNOWN if built.earliest is None and built.latest is None else Answer.YES


def _was_there(person: Presence) -> Answer:
    """Whether a person was there at the opening; who stayed outdoors throughout was not."""
    outdoors = bool(person.zones) and _OUTDOORS.issuperset(person.zones)
    return Answer.NO if outdoors and person.opened is Answer.UNKNOWN else person.opened


def _strictest(answers: Iterator[Answer]) -> Answer:
    """Return yes before unknown before no; nobody there to ask is unknown."""
    order = (Answer.YES, Answer.UNKNOWN, Answer.NO)
    return min(answers, key=order.index, default=Answer.UNKNOWN)


def _opened(building: Building, there: Answer) -> Answer:
    """Whether it was opened; somebody who was there when it was outweighs the call's own entry."""
    return Answer.YES if there is Answer.YES else building.opened


def _concern(
    wearing: Wearing,
    rule: BuildingHold,
    facts: tuple[Answer, Answer, Answer],
    now: dt.datetime,
) -> BuildingConcern:
    old, opened, there = facts
    certain = old is Answer.YES and opened is Answer.YES
    held = certain and there is not Answer.NO
    apart = old is Answer.YES or (opened is Answer.YES and there is not Answer.NO)
    ended_by = survey_absent(wearing.call, rule.contaminant, now)
    message = "care.building.question"
    if held:
        seen = there is Answer.YES
        message = "care.building.held" if seen else "care.building.held_unsaid"
    elif certain:
        message = "care.building.left_before"
    return BuildingConcern(
        call=wearing.call.id,
        contaminant=rule.contaminant,
        held=held,
        apart=apart and ended_by is None,
        finding=_finding(wearing, rule, message, held=held),
        ended_by=ended_by,
    )


def _finding(wearing: Wearing, rule: BuildingHold, message: str, *, held: bool) -> Finding:
    return reason(
        Bearing.HOLDS if held else Bearing.ASKS,
        message,
        decided("building_hold"),
        call=wearing.call.id,
        contaminant=rule.contaminant,
        year=rule.built_before,
        built=str(wearing.call.building.built),
    )


def survey_note(concern: BuildingConcern, survey: Survey) -> Finding:
    """Say which survey answered the question, so that the history is kept."""
    return reason(
        Bearing.NOTES,
        "care.building.survey_negative",
        stated("survey", survey.signed_by),
        call=concern.call,
        contaminant=concern.contaminant,
        signed_by=survey.signed_by,
        signed_at=survey.signed_at.isoformat(timespec="minutes"),
    )
