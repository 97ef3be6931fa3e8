"""Which holds stand on a component, who decides each, and which have been ended?

A hold recorded before stands until somebody entitled ended it, and an ended one is not opened
again for the same cause; a new fact is a new cause.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from sootline.core.basis import Bearing
from sootline.core.care.buildings import BuildingConcern
from sootline.core.care.cases import Case, Concern, Texts, practice, reason
from sootline.core.care.offices import open_hold
from sootline.core.exposure.calls import Survey
from sootline.core.exposure.hazards import survey_absent
from sootline.core.gear.kinds import Layer, WashMethod
from sootline.core.gear.state import Hold
from sootline.core.rulebook.contaminants import Decider, Knowledge, Level


def hold_for_concerns(case: Case, texts: Texts) -> Iterator[Hold]:
    """Hold what a contaminant rule holds in this state of knowledge, and what nobody lists."""
    for concern in case.concerns:
        exposure, rule = concern.exposure, concern.rule
        named = {
            "contaminant": exposure.contaminant,
            "knowledge": exposure.knowledge,
            "call": exposure.call,
        }
        cause = f"{exposure.contaminant}.{exposure.knowledge}/{exposure.call}"
        if rule is None:
            if concern.on_it:
                why = reason(Bearing.HOLDS, "care.held.unlisted", practice("unlisted"), **named)
                yield open_hold(
                    cause, "care.hold.unlisted", why, texts.policy, Decider.SAFETY_OFFICER
                )
        elif exposure.knowledge in rule.holds_when and not concern.wet:
            why = reason(Bearing.HOLDS, "care.held.contaminant", rule.ground, **named)
            yield open_hold(cause, "care.hold.contaminant", why, texts.policy, rule)


def hold_for_buildings(concerns: Iterable[BuildingConcern], texts: Texts) -> Iterator[Hold]:
    """Hold what the department's building rules hold; a negative survey has ended it."""
    for concern in concerns:
        if concern.held:
            cause = f"building.{concern.contaminant}/{concern.call}"
            decider = texts.contaminants.get(concern.contaminant, Decider.SAFETY_OFFICER)
            hold = open_hold(cause, "care.hold.building", concern.finding, texts.policy, decider)
            survey = concern.ended_by
            yield hold if survey is None else ended(hold, survey)


def ended(hold: Hold, survey: Survey) -> Hold:
    """Return a hold that a signed survey has ended, with who signed it and when."""
    return replace(
        hold,
        released_by=survey.signed_by,
        released_at=survey.signed_at.isoformat(timespec="minutes"),
    )


def end_by_survey(case: Case, texts: Texts) -> tuple[Hold, ...]:
    """Return the recorded holds, those ended that rested on a suspicion a survey has answered."""
    signed = {
        f"{survey.contaminant}.{Knowledge.SUSPECTED}/{wearing.call.id}": survey
        for wearing in case.wearings
        for one in wearing.call.building.surveys
        if (survey := survey_absent(wearing.call, one.contaminant, texts.now))
    }
    return tuple(
        ended(hold, signed[hold.cause]) if hold.open and hold.cause in signed else hold
        for hold in case.component.state.holds
    )


def hold_above_ceiling(
    case: Case, level: Level, held: frozenset[str], texts: Texts
) -> Iterator[Hold]:
    """Hold what must undergo more than can be done to it here.

    Args:
        held: contaminants whose own hold already asks the same question.
    """
    if level is Level.SPECIALISED and not _asked_already(case.concerns, held):
        why = reason(Bearing.HOLDS, "care.held.specialised", practice("specialised"))
        yield open_hold(
            "specialised", "care.hold.specialised", why, texts.policy, Decider.SAFETY_OFFICER
        )
    nothing_here = case.terms.method.wash is WashMethod.NONE
    if nothing_here and level is not Level.LOOK and case.kind.layer is not Layer.MASK:
        why = reason(
            Bearing.FORBIDS,
            "care.held.no_method",
            case.terms.method.ground,
            kind=case.kind.id,
            level=level,
        )
        yield open_hold("no-method", "care.hold.no_method", why, texts.policy, Decider.GEAR_OFFICER)


def _asked_already(concerns: Iterable[Concern], held: frozenset[str]) -> bool:
    """Whether every specialised cleaning comes from a contaminant with a hold of its own."""
    wanting = [one for one in concerns if one.level is Level.SPECIALISED]
    return bool(wanting) and all(one.exposure.contaminant in held for one in wanting)


def merge(recorded: Iterable[Hold], found: Iterable[Hold]) -> tuple[Hold, ...]:
    """Join holds on record with those found now, one for each cause.

    What is recorded stands; only a survey found now ends a recorded open hold, and is then shown.
    """
    merged = {hold.cause: hold for hold in recorded}
    for hold in found:
        before = merged.get(hold.cause)
        if before is None or (before.open and not hold.open):
            merged[hold.cause] = hold
    return tuple(merged.values())
