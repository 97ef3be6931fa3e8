"""What is the least a component must undergo, over every exposure and every due reason?

The strictest reason wins and none is lost; what is not known lowers nothing.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from sootline.core.basis import Bearing, Finding, Ground
from sootline.core.care.cases import Case, Concern, Texts, keep, practice, reason, recorded
from sootline.core.exposure.calls import Answer
from sootline.core.exposure.grades import SMOKE, stated, tell
from sootline.core.exposure.smoke import trigger
from sootline.core.gear.sources import kind_traits
from sootline.core.gear.state import CareStage
from sootline.core.rulebook.contaminants import Knowledge, Level
from sootline.core.rulebook.rules import Rulebook

_SMOKE_LEVEL = "clean.smoke_level"
_AFTER_USE = "inspect.routine.when"
_Raised = tuple[Level, Finding]


@dataclass(frozen=True, kw_only=True)
class Floor:
    """The least level, and every reason that speaks for it or for less."""

    level: Level
    reasons: tuple[Finding, ...]


def find_floor(case: Case, texts: Texts) -> Floor:
    """Return the strictest level over exposures, visible soil, due cleanings and the record."""
    level = Level.LOOK
    reasons: list[Finding] = []
    for raised, why in _raise(case, texts):
        reasons.append(why)
        if raised is not level and raised.rank > level.rank:
            level = raised
    return Floor(level=level, reasons=tuple(dict.fromkeys(reasons)))


def _raise(case: Case, texts: Texts) -> Iterator[_Raised]:
    for concern in case.concerns:
        yield from _of_concern(case, concern, texts)
    yield from _of_soil(case, texts)
    for due in case.due:
        yield due.level, due.finding
    if case.component.state.stage is CareStage.TO_WASH:
        yield Level.ADVANCED, reason(Bearing.REQUIRES, "care.floor.to_wash", recorded("stage"))
    yield Level.LOOK, _look(case, texts)


def _of_concern(case: Case, concern: Concern, texts: Texts) -> Iterator[_Raised]:
    """Give the exposure itself, then what practice and the adopted texts ask for it."""
    level = concern.level
    if concern.exposure.knowledge is Knowledge.UNKNOWN:
        return
    yield level, concern.exposure.finding
    if not concern.on_it:
        return
    yield level, _asked(concern, texts)
    if concern.exposure.contaminant == SMOKE:
        yield from zip(*_smoke_rules(case, texts), strict=True)


def _asked(concern: Concern, texts: Texts) -> Finding:
    """Say what common practice asks for a contaminant that is known or suspected."""
    named = {
        "contaminant": concern.exposure.contaminant,
        "knowledge": concern.exposure.knowledge,
        "level": concern.level,
    }
    listed = "care.floor.contaminant" if concern.rule else "care.floor.unlisted"

    def built() -> tuple[Finding, ...]:
        return (reason(Bearing.REQUIRES, listed, concern.ground, **named),)

    return keep(texts, ("floor", *named.values()), built)[0]


def _smoke_rules(case: Case, texts: Texts) -> tuple[list[Level], tuple[Finding, ...]]:
    """Return what the texts themselves ask after products of combustion."""
    traits = kind_traits(case.kind, case.component.traits)

    def built() -> tuple[Finding, ...]:
        counted = trigger(texts.rulebook, "combustion-products")
        counts = (reason(Bearing.REQUIRES, "care.floor.smoke_counts", counted),) if counted else ()
        return (*counts, *_smoke_levels(texts.rulebook, traits))

    findings = keep(texts, ("smoke", *sorted(traits)), built)
    levels = [Level(dict(one.values).get("level", Level.ADVANCED)) for one in findings]
    return levels, findings


def _smoke_levels(rulebook: Rulebook, traits: frozenset[str]) -> Iterator[Finding]:
    for text in rulebook.texts:
        for rule in text.on(_SMOKE_LEVEL, traits):
            if rule.value is not None:
                ground = rule.ground(text.id)
                yield reason(Bearing.REQUIRES, "care.floor.smoke_level", ground, level=rule.value)


def _of_soil(case: Case, texts: Texts) -> Iterator[_Raised]:
    """Dirt that somebody saw counts in every edition, whatever it is."""
    for wearing in case.wearings:
        for remark in wearing.remarks:
            if remark.soiled is Answer.YES:
                yield (
                    Level.ADVANCED,
                    tell(
                        Bearing.REQUIRES,
                        "care.soiled.seen",
                        stated("remark", remark.said_by),
                        wearing.call,
                        said_by=remark.said_by,
                        detail=remark.detail,
                    ),
                )
                ground = trigger(texts.rulebook, "soiled") or practice("soiled")
                yield Level.ADVANCED, reason(Bearing.REQUIRES, "care.floor.soiled", ground)


def _look(case: Case, texts: Texts) -> Finding:
    """Say why a look is the least: it was used, or it was not."""
    if not case.wearings:
        return keep(texts, ("not-used",), _not_used)[0]
    return keep(texts, ("look",), lambda: (_look_after_use(texts.rulebook),))[0]


def _not_used() -> tuple[Finding, ...]:
    ground = recorded("calls", source="the calls of this document")
    return (reason(Bearing.NOTES, "care.floor.not_used", ground),)


def _look_after_use(rulebook: Rulebook) -> Finding:
    return reason(Bearing.REQUIRES, "care.floor.look", _after_use(rulebook) or practice("look"))


def _after_use(rulebook: Rulebook) -> Ground | None:
    for text in rulebook.texts:
        for rule in text.on(_AFTER_USE):
            if isinstance(rule.value, tuple) and "after-use" in rule.value:
                return rule.ground(text.id)
    return None
