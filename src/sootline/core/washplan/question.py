"""From what is a wash plan built?"""

from dataclasses import dataclass

from sootline.core.care.decisions import Decision
from sootline.core.gear.components import Component
from sootline.core.laundry.planning import PlanningTimes
from sootline.core.laundry.rooms import WashRoom
from sootline.core.laundry.sorts import Sorting
from sootline.core.washplan.facts import Member


@dataclass(frozen=True, kw_only=True)
class Question:
    """What a wash plan is built from.

    Args:
        members: those who wait, with priority and release; gear of nobody among them belongs to
            a pool that nobody waits for.
        planning: intervals for what the department has not measured.
    """

    name: str
    sorting: Sorting
    decisions: tuple[Decision, ...]
    components: tuple[Component, ...]
    members: tuple[Member, ...]
    room: WashRoom
    planning: PlanningTimes
