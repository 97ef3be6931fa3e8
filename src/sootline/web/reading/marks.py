"""Which one word and sign says where a piece stands? What stops it goes before what it needs."""

from enum import StrEnum

from sootline.core.care import Decision, Fate
from sootline.core.gear import Assembly, CareStage, Component, Custody, Life
from sootline.core.riding import Mask, MaskState


class Mark(StrEnum):
    """One word and one sign; the value names both."""

    SEALED = "sealed"
    EVIDENCE = "evidence"
    OUT = "out"
    WAIT = "wait"
    MISSING = "missing"
    AWAY = "away"
    REPAIR = "repair"
    LOAN = "loan"
    WASHER = "washer"
    WET = "wet"
    DRY = "dry"
    CHECK = "check"
    WASH = "wash"
    LOOK = "look"
    APART = "apart"
    TECHNICIAN = "technician"
    SPARE = "spare"
    HOOK = "hook"

    @property
    def word(self) -> str:
        """The message of its word."""
        return f"web.mark.{self.value}"

    @property
    def at_rest(self) -> bool:
        """Whether nothing needs doing."""
        return self in (Mark.HOOK, Mark.SPARE)


_STAGES = {
    CareStage.IN_WASHER: Mark.WASHER,
    CareStage.WASHED: Mark.WET,
    CareStage.DRYING: Mark.DRY,
    CareStage.TO_CHECK: Mark.CHECK,
}
_CUSTODIES = {
    Custody.NOT_SEEN: Mark.MISSING,
    Custody.CONTRACTOR: Mark.AWAY,
    Custody.REPAIR: Mark.REPAIR,
    Custody.LOAN: Mark.LOAN,
}


def mark_of(component: Component, decision: Decision) -> Mark:
    """Return the mark of a component."""
    state = component.state
    found = (
        _stopped(component, decision)
        or _CUSTODIES.get(state.custody)
        or _STAGES.get(state.stage)
        or _still_to_do(component, decision)
    )
    return found or (Mark.SPARE if state.custody is Custody.SPARE_RACK else Mark.HOOK)


def _still_to_do(component: Component, decision: Decision) -> Mark | None:
    stage = component.state.stage
    if decision.fate is Fate.WASH or stage is CareStage.TO_WASH:
        return Mark.WASH
    if decision.fate is Fate.LOOK or stage is CareStage.WORN:
        return Mark.LOOK
    return None if component.state.assembly is Assembly.ASSEMBLED else Mark.APART


def _stopped(component: Component, decision: Decision) -> Mark | None:
    if component.state.life in (Life.RETIRED, Life.DISPOSED):
        return Mark.OUT
    if decision.fate is Fate.EVIDENCE or component.state.custody is Custody.EVIDENCE:
        return Mark.EVIDENCE
    if decision.sealed:
        return Mark.SEALED
    if decision.fate is Fate.OUT:
        return Mark.OUT
    return Mark.WAIT if decision.open_holds else None


def mark_of_mask(mask: Mask) -> Mark:
    """Return the mark of a breathing-apparatus mask."""
    if mask.state is MaskState.WITH_TECHNICIAN:
        return Mark.TECHNICIAN
    return Mark.HOOK if mask.state is MaskState.USABLE else Mark.MISSING
