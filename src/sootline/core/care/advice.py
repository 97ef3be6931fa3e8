"""What is to be watched where the work is done, and what does nobody know?"""

from collections.abc import Iterable, Iterator, Sequence
from functools import partial

from sootline.core.basis import Bearing, ContaminantId, Finding, MessageId
from sootline.core.care.buildings import BuildingConcern
from sootline.core.care.cases import Case, Texts, keep, practice, reason, recorded
from sootline.core.care.decisions import Fate
from sootline.core.exposure.calls import Answer, DeconMethod, Done, Presence
from sootline.core.exposure.codes import ask_about
from sootline.core.exposure.grades import SMOKE, Exposure, stated, tell
from sootline.core.exposure.smoke import TRIGGER
from sootline.core.exposure.wearing import Wearing
from sootline.core.gear.state import Life
from sootline.core.rulebook.contaminants import ContaminantRule, Knowledge

_WET_WAYS = (DeconMethod.WATER, DeconMethod.WET_SOAP)


def warn(
    case: Case, buildings: Sequence[BuildingConcern], fate: Fate, texts: Texts
) -> tuple[Finding, ...]:
    """List the cautions for whoever handles it, each once for a contaminant.

    What a building rule holds is handled as if the contaminant were there; what is only washed
    apart while a question is open is not.
    """
    listed: list[Finding] = []
    held = (one.contaminant for one in buildings if one.held and one.ended_by is None)
    for rule in _rules_on_it(case, held, texts):
        listed += keep(texts, ("cautions", rule.id), partial(_cautions, rule))
    if fate is Fate.WASH:
        listed += keep(texts, ("label-first",), _label_first)
    listed += _torn(case)
    in_earnest = any(not wearing.call.training for wearing in case.wearings)
    if in_earnest and case.component.state.life is Life.TRAINING_ONLY:
        listed.append(reason(Bearing.WARNS, "care.warn.training_only", recorded("life")))
    return _once(listed)


def list_unknowns(
    case: Case, buildings: Sequence[BuildingConcern], texts: Texts
) -> tuple[Finding, ...]:
    """List what is not known and was not guessed."""
    exposures = [concern.exposure for concern in case.concerns]
    listed = [one.finding for one in exposures if one.finding.bearing is Bearing.ASKS]
    open_questions = (one.contaminant for one in buildings if one.apart)
    for rule in _rules_on_it(case, open_questions, texts):
        listed += keep(texts, ("unknown", rule.id), partial(_not_known, rule))
    for wearing in case.wearings:
        listed += _of_code(wearing, exposures, texts)
    if any(concern.on_it and concern.exposure.contaminant == SMOKE for concern in case.concerns):
        listed += keep(texts, ("trigger",), lambda: tuple(_unset_trigger(texts)))
    return tuple(dict.fromkeys((*listed, *case.terms.questions)))


def note(case: Case) -> Iterator[Finding]:
    """List facts that change nothing and are kept: a rinse, the on-scene reduction, a guest."""
    wet_at = frozenset(one.exposure.call for one in case.concerns if one.wet)
    for wearing in case.wearings:
        for remark in wearing.remarks:
            if remark.rinsed is Answer.YES:
                ground = stated("rinse", remark.said_by)
                yield tell(Bearing.NOTES, "care.rinsed.already", ground, wearing.call)
        for person in wearing.people:
            yield from _reduction(wearing, person, wet=wearing.call.id in wet_at)
    if case.component.guest:
        yield reason(
            Bearing.NOTES, "care.note.guest", recorded("guest"), department=case.component.guest
        )


def _reduction(wearing: Wearing, person: Presence, *, wet: bool) -> Iterator[Finding]:
    """Keep what was done on scene; it is no wash, and no blame when it was not done."""
    decon, ground = person.decon, stated("decon", str(person.member))
    if decon.done in (Done.DONE, Done.PART):
        rinsed = wet and decon.method in _WET_WAYS
        message = "care.rinsed.by_reduction" if rinsed else f"care.reduction.{decon.done}"
        yield tell(Bearing.NOTES, message, ground, wearing.call, method=decon.method)
    elif decon.done is Done.NOT_DONE:
        yield tell(
            Bearing.NOTES, "care.reduction.not-done", ground, wearing.call, detail=decon.reason
        )


def _rules_on_it(
    case: Case, in_buildings: Iterable[ContaminantId], texts: Texts
) -> tuple[ContaminantRule, ...]:
    """Return the rules of what is on it and of what a building may have put there, each once."""
    rules = [concern.rule for concern in case.concerns if concern.on_it and concern.rule]
    rules += [texts.contaminants[one] for one in in_buildings if one in texts.contaminants]
    return tuple({rule.id: rule for rule in rules}.values())


def _cautions(rule: ContaminantRule) -> tuple[Finding, ...]:
    return tuple(_of_rule(Bearing.WARNS, message, rule) for message in rule.cautions)


def _not_known(rule: ContaminantRule) -> tuple[Finding, ...]:
    return tuple(_of_rule(Bearing.NOTES, message, rule) for message in rule.not_known)


def _of_rule(bearing: Bearing, message: MessageId, rule: ContaminantRule) -> Finding:
    """Return what a rule says, with the contaminant it says it of."""
    values = (("contaminant", rule.id),)
    return Finding(bearing=bearing, message=message, values=values, ground=rule.ground)


def _label_first() -> tuple[Finding, ...]:
    return (reason(Bearing.WARNS, "care.warn.label_first", practice("label_first")),)


def _torn(case: Case) -> Iterator[Finding]:
    for wearing in case.wearings:
        for remark in wearing.remarks:
            if remark.torn:
                ground, detail = stated("remark", remark.said_by), remark.detail
                yield tell(Bearing.WARNS, "care.warn.torn", ground, wearing.call, detail=detail)


def _unset_trigger(texts: Texts) -> Iterator[Finding]:
    """Ask for the adopted edition's own trigger where nobody has read it."""
    adopted = texts.rulebook.adopted
    for rule in adopted.on(TRIGGER):
        if rule.value is None:
            ground = rule.ground(adopted.id)
            yield Finding(bearing=Bearing.ASKS, message=rule.question, ground=ground)


def _of_code(wearing: Wearing, exposures: Iterable[Exposure], texts: Texts) -> Iterator[Finding]:
    """Ask what the code makes us ask, unless somebody has already answered it."""
    code = wearing.call.code
    if code is None:
        return
    answered = _answered(wearing, exposures, texts)
    for question in keep(texts, ("code", code), partial(ask_about, code)):
        if question.message not in answered:
            yield question


def _answered(
    wearing: Wearing, exposures: Iterable[Exposure], texts: Texts
) -> frozenset[MessageId]:
    """Name the questions that statements on this component at this call have answered."""
    known = [
        one
        for one in exposures
        if one.call == wearing.call.id and one.knowledge in (Knowledge.KNOWN, Knowledge.ABSENT)
    ]
    answered = set()
    if any(one.contaminant == SMOKE for one in known):
        answered.add(MessageId("exposure.ask.smoke"))
    rules = (texts.contaminants.get(one.contaminant) for one in known)
    if any(rule is not None and rule.disinfect for rule in rules):
        answered.add(MessageId("exposure.ask.blood"))
    if any(person.worn is not None for person in wearing.people):
        answered |= {MessageId("exposure.ask.worn"), MessageId("exposure.ask.ensemble")}
    return frozenset(answered)


def _once(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Keep the first of findings that say the same."""
    kept: dict[object, Finding] = {}
    for finding in findings:
        kept.setdefault((finding.message, finding.values), finding)
    return tuple(kept.values())
