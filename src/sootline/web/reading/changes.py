"""What may have changed in this wash room, and how does what it moves read?"""

from collections.abc import Iterator
from dataclasses import dataclass

from sootline.core.gear import CareStage
from sootline.tasks.change_wash import ChangedPlan, What
from sootline.tasks.desk import Desk
from sootline.tasks.plan_wash import PlanResult
from sootline.web.reading.saying import Said, said

_MOST = 8


@dataclass(frozen=True, kw_only=True)
class Choice:
    """One answer to what changed; the value names what and where."""

    value: str
    line: Said


def list_changes(desk: Desk, plan: PlanResult) -> tuple[Choice, ...]:
    """List what may have changed: what runs may run late, any machine may stop."""
    return tuple(_choices(desk, plan))


def _choices(desk: Desk, plan: PlanResult) -> Iterator[Choice]:
    yield Choice(value=What.AS_IT_STANDS.value, line=said("web.changed.as-it-stands"))
    running = {one.id for one in desk.job.components if one.state.stage is CareStage.IN_WASHER}
    for load in plan.worksheet.loads:
        if running & set(load.components):
            line = said("web.changed.late", load=load.number, machine=load.washer)
            yield Choice(value=f"{What.LATE}:{load.washer}", line=line)
    for washer in plan.instance.washers:
        if washer.programmes:
            line = said("web.changed.down", machine=washer.id)
            yield Choice(value=f"{What.DOWN}:{washer.id}", line=line)
    for cabinet in plan.instance.open_cabinets:
        line = said("web.changed.dryer-down", machine=cabinet.id)
        yield Choice(value=f"{What.DRYER_DOWN}:{cabinet.id}", line=line)
    yield Choice(value=What.POWER.value, line=said("web.changed.power"))


def read_moves(changed: ChangedPlan) -> tuple[Said, ...]:
    """Say whom the new plan moves, and by how much; the most delayed first."""
    if not changed.moved:
        return (said("web.changed.nobody"),)
    lines = [
        said(f"web.changed.{'later' if one.minutes > 0 else 'sooner'}",
             member=one.member, minutes=abs(one.minutes))
        for one in changed.moved[:_MOST]
    ]  # fmt: skip
    rest = len(changed.moved) - _MOST
    return (*lines, *((said("web.changed.more", n=rest),) if rest > 0 else ()))
