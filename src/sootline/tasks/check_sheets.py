"""Which pieces are felt and looked over by hand, and at which points?"""

from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass

from sootline.core.basis import MessageId
from sootline.core.care.decisions import Decision, Fate
from sootline.core.gear import KINDS, CareStage, Component, find_kind
from sootline.core.job.jobs import Job
from sootline.tasks.decide import Decided

_AFTER_WASH = (CareStage.IN_WASHER, CareStage.WASHED, CareStage.DRYING, CareStage.TO_CHECK)


@dataclass(frozen=True, kw_only=True)
class CheckGroup:
    """Pieces of one kind and the points a hand goes to."""

    kind: str
    points: tuple[MessageId, ...]
    components: tuple[Component, ...]


def list_after_wash(job: Job, decided: Decided) -> tuple[CheckGroup, ...]:
    """List what is washed now or was washed and nobody has checked yet, kind by kind."""

    def wanted(component: Component, decision: Decision) -> bool:
        washed = component.state.stage in _AFTER_WASH
        return decision.fate is Fate.WASH or (washed and not decision.sealed)

    return _grouped(job, decided, wanted)


def list_routine_look(job: Job, decided: Decided) -> tuple[CheckGroup, ...]:
    """List what its wearer looks over after a call, kind by kind."""

    def wanted(component: Component, decision: Decision) -> bool:
        return decision.fate is Fate.LOOK and component.state.stage not in _AFTER_WASH

    return _grouped(job, decided, wanted)


def _grouped(
    job: Job, decided: Decided, wanted: Callable[[Component, Decision], bool]
) -> tuple[CheckGroup, ...]:
    decisions = {decision.component: decision for decision in decided.decisions}
    groups: dict[str, list[Component]] = defaultdict(list)
    for component in job.components:
        if wanted(component, decisions[component.id]):
            groups[component.kind].append(component)
    order = {kind.id: place for place, kind in enumerate(KINDS)}
    return tuple(
        CheckGroup(
            kind=kind,
            points=find_kind(components[0].kind).touch_points,
            components=tuple(components),
        )
        for kind, components in sorted(groups.items(), key=lambda item: order[item[1][0].kind])
    )
