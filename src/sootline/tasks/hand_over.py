"""What does the next shift find that is not as usual?"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import MachineId
from sootline.core.care.decisions import Decision, Fate
from sootline.core.gear import CareStage, Component, Custody, Life
from sootline.core.job.jobs import Job
from sootline.tasks.decide import Decided
from sootline.tasks.hazards import WetBag, list_wet_bags


class Left(StrEnum):
    """In which way a piece is not on its hook; the most pressing first."""

    HELD = "held"
    IN_WASHER = "in-washer"
    WET = "wet"
    DRYING = "drying"
    TO_CHECK = "to-check"
    TO_WASH = "to-wash"
    LOOK = "look"
    LOAN = "loan"
    AWAY = "away"
    NOT_SEEN = "not-seen"


_OF_STAGE = {
    CareStage.IN_WASHER: Left.IN_WASHER,
    CareStage.WASHED: Left.WET,
    CareStage.DRYING: Left.DRYING,
    CareStage.TO_CHECK: Left.TO_CHECK,
}
_OF_CUSTODY = {
    Custody.LOAN: Left.LOAN,
    Custody.CONTRACTOR: Left.AWAY,
    Custody.REPAIR: Left.AWAY,
    Custody.EVIDENCE: Left.AWAY,
    Custody.NOT_SEEN: Left.NOT_SEEN,
}
_OF_FATE = {Fate.WASH: Left.TO_WASH, Fate.LOOK: Left.LOOK}
_IN_USE = (Life.IN_SERVICE, Life.RESERVE, Life.TRAINING_ONLY)


@dataclass(frozen=True, kw_only=True)
class Handover:
    """Everything the next shift must be told of.

    Args:
        exceptions: what is left in which way; a piece stands under each that holds for it.
        usual: how many pieces in use are not named here.
        down: washers that do not work.
    """

    exceptions: tuple[tuple[Left, tuple[Component, ...]], ...]
    usual: int
    wet_bags: tuple[WetBag, ...]
    down: tuple[MachineId, ...]


def hand_over(job: Job, decided: Decided) -> Handover:
    """Gather what is not on its hook, what lies wet in bags, and which washers are down."""
    decisions = {decision.component: decision for decision in decided.decisions}
    in_use = [one for one in job.components if one.state.life in _IN_USE]
    ways = {one.id: frozenset(_ways(one, decisions[one.id])) for one in in_use}
    exceptions = ((left, tuple(one for one in in_use if left in ways[one.id])) for left in Left)
    return Handover(
        exceptions=tuple((left, pieces) for left, pieces in exceptions if pieces),
        usual=sum(not ways[one.id] for one in in_use),
        wet_bags=list_wet_bags(job),
        down=tuple(washer.id for washer in job.wash_room.washers if not washer.working),
    )


def _ways(component: Component, decision: Decision) -> Iterator[Left]:
    state = component.state
    if decision.open_holds:
        yield Left.HELD
    if state.stage in _OF_STAGE:
        yield _OF_STAGE[state.stage]
    elif decision.fate in _OF_FATE:
        yield _OF_FATE[decision.fate]
    if state.custody in _OF_CUSTODY:
        yield _OF_CUSTODY[state.custody]
    elif state.holder is not None and state.holder != component.owner:
        yield Left.LOAN
