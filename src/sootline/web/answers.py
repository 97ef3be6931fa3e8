"""What do the tasks answer for the desk as it stands? Each is asked once for every change."""

import threading
from collections.abc import Callable
from functools import cached_property
from typing import Any, TypeVar

from django.http import HttpRequest

from sootline.core.job.jobs import Job
from sootline.tasks.check_contractor import ContractorResult, check_contractor
from sootline.tasks.check_machines import MachineReport, check_machines
from sootline.tasks.check_sheets import CheckGroup, list_after_wash
from sootline.tasks.decide import Decided
from sootline.tasks.desk import Desk, Desks
from sootline.tasks.drying_room import DryingRoom, look_into_drying_room
from sootline.tasks.hand_over import Handover, hand_over
from sootline.tasks.inspect_gear import InspectionResult, inspect_gear
from sootline.tasks.judge_gear import Judged, judge
from sootline.tasks.list_due import DueList
from sootline.tasks.load_cards import LoadCard, list_load_cards
from sootline.tasks.match_recall import RecallResult, match_recalls
from sootline.tasks.plan_day import Today, plan_today
from sootline.tasks.rebuild_gear import RebuildResult, rebuild_gear
from sootline.tasks.record_reductions import ComponentRecord, record_reductions
from sootline.tasks.weigh_repairs import RepairResult, weigh_repairs
from sootline.tasks.who_can_ride import WhoRides, backs_of, who_can_ride
from sootline.wiring.desks import desks_of
from sootline.wiring.practice import load_assumptions, load_reductions
from sootline.wiring.rules import RULES

_T = TypeVar("_T")


class Answers:
    """The answers for one state of the desk.

    Args:
        before: what was judged of an earlier state.
    """

    def __init__(self, desk: Desk, before: Judged | None = None) -> None:
        self.desk = desk
        self._before = before
        self._made: dict[tuple[str, ...], Any] = {}

    def kept(self, key: tuple[str, ...], make: Callable[[], _T]) -> _T:
        """Return what was made of these answers under a key before, or make it now."""
        if key not in self._made:
            self._made[key] = make()
        made: _T = self._made[key]
        return made

    @property
    def job(self) -> Job:
        """The job of the moment."""
        return self.desk.job

    @property
    def newest(self) -> Judged | None:
        """What was judged last, of this state or an earlier one."""
        return self.__dict__.get("judged", self._before)

    @cached_property
    def judged(self) -> Judged:
        """What every component must undergo and what is due on it; only what changed is new."""
        return judge(RULES, self.job, self._before)

    @cached_property
    def decided(self) -> Decided:
        """What every component must undergo."""
        return self.judged.decided

    @cached_property
    def ride(self) -> WhoRides:
        """Who can ride."""
        plan = self.desk.plan
        backs = backs_of(plan, self.job) if plan else ()
        return who_can_ride(RULES, self.job, backs=backs, judged=self.judged, ahead=False)

    @cached_property
    def due(self) -> DueList:
        """What is due."""
        return self.judged.due_list

    @cached_property
    def cards(self) -> tuple[LoadCard, ...]:
        """The load cards of the plan there is."""
        return list_load_cards(self.job, self.desk.plan) if self.desk.plan else ()

    @cached_property
    def after_wash(self) -> tuple[CheckGroup, ...]:
        """What is to be felt and looked over after its wash."""
        return list_after_wash(self.job, self.decided)

    @cached_property
    def rebuilt(self) -> RebuildResult:
        """What checked and rebuilt gear lacks."""
        return rebuild_gear(RULES, self.job)

    @cached_property
    def inspected(self) -> InspectionResult:
        """What came of inspections."""
        return inspect_gear(RULES, self.job)

    @cached_property
    def repairs(self) -> tuple[RepairResult, ...]:
        """What each repair comes to."""
        return weigh_repairs(RULES, self.job)

    @cached_property
    def contractor(self) -> ContractorResult:
        """What is away, what came back, what was charged."""
        return check_contractor(self.job)

    @cached_property
    def recalls(self) -> RecallResult:
        """Whom each notice means."""
        return match_recalls(self.job)

    @cached_property
    def today(self) -> Today:
        """What to take today, what is overdue, whom to measure, what to order."""
        return plan_today(RULES, self.job, judged=self.judged)

    @cached_property
    def drying_room(self) -> DryingRoom | None:
        """What the drying room can do tonight; None while nobody read its air."""
        return look_into_drying_room(RULES, self.job, load_assumptions())

    @cached_property
    def machines(self) -> MachineReport:
        """Whether the washers are set within every limit."""
        return check_machines(RULES, self.job, load_assumptions())

    @cached_property
    def reductions(self) -> tuple[ComponentRecord, ...]:
        """What was done against soil on each component, and how often it was washed."""
        return record_reductions(RULES, self.job, load_reductions())

    @cached_property
    def handover(self) -> Handover:
        """What the next shift must be told."""
        return hand_over(self.job, self.decided)


_kept: dict[str, Answers] = {}
_lock = threading.Lock()


def answers_of(request: HttpRequest) -> Answers:
    """Return the answers for the desk a request sees, those of the last look if nothing changed."""
    return answers_for(request.user)


def answers_for(user: object) -> Answers:
    """Return the answers for the desk a user sees."""
    desks: Desks = desks_of(user)
    desk = desks.look()
    with _lock:
        kept = _kept.get(desks.key)
        if kept is None or kept.desk.revision != desk.revision:
            kept = _kept[desks.key] = Answers(desk, kept.newest if kept else None)
    return kept
