"""What happens to a component next, and by which method?"""

from collections.abc import Iterable

from sootline.core.care.buildings import BuildingConcern
from sootline.core.care.cases import Case, Concern
from sootline.core.care.decisions import Fate, Separation
from sootline.core.care.securing import EVIDENCE, TORN
from sootline.core.gear.kinds import WashMethod
from sootline.core.gear.labels import Act
from sootline.core.gear.state import CareStage, Hold
from sootline.core.rulebook.contaminants import Decider, Level

_OUT_OF_HANDS = frozenset((Fate.EVIDENCE, Fate.OUT))


def choose_fate(case: Case, level: Level, holds: Iterable[Hold], *, refused: bool) -> Fate:
    """Return what happens next; what stops it goes before what it needs."""
    standing = [hold for hold in holds if hold.open]
    if refused:
        return Fate.OUT
    if any(_for_investigator(hold) for hold in standing):
        return Fate.EVIDENCE
    if any(hold.cause.startswith(f"{TORN}/") for hold in standing):
        return Fate.OUT
    if standing:
        return Fate.HOLD
    if level is not Level.LOOK:
        return Fate.WASH
    idle = not case.wearings and case.component.state.stage is CareStage.CHECKED
    return Fate.HOOK if idle else Fate.LOOK


def _for_investigator(hold: Hold) -> bool:
    return hold.decider is Decider.INVESTIGATOR or hold.cause.startswith(EVIDENCE)


def choose_method(case: Case, fate: Fate, level: Level) -> WashMethod:
    """Return the method it bears here; none where others decide or a specialist washes it."""
    method = case.terms.method.wash
    if fate in _OUT_OF_HANDS or level is Level.SPECIALISED:
        return WashMethod.NONE
    by_hand = method is WashMethod.MACHINE and not case.terms.banned(Act.HAND_WASH)
    return WashMethod.HAND if level is Level.ROUTINE and by_hand else method


def separate(concerns: Iterable[Concern], buildings: Iterable[BuildingConcern]) -> Separation:
    """Say with what it may not share: the very same hazards share, what is alone shares with none.

    A hold that has been ended ends no separation.
    """
    rules = [one.rule for one in concerns if one.on_it and one.rule]
    hazards = {rule.id for rule in rules if rule.own_load or rule.alone}
    hazards |= {one.contaminant for one in buildings if one.apart}
    return Separation(hazards=tuple(sorted(hazards)), alone=any(rule.alone for rule in rules))


def is_sealed(concerns: Iterable[Concern], fate: Fate, holds: Iterable[Hold]) -> bool:
    """Whether it stays bagged and shut: secured, torn and soiled, or held for what seals it."""
    if fate is Fate.EVIDENCE:
        return True
    sealing = {f"{one.exposure.contaminant}." for one in concerns if one.on_it and one.rule is None}
    sealing |= {
        f"{one.rule.id}."
        for one in concerns
        if one.on_it and one.rule and (one.rule.seal or one.rule.disinfect)
    }
    prefixes = ("building.", f"{TORN}/", *sealing)
    return any(hold.open and hold.cause.startswith(prefixes) for hold in holds)
