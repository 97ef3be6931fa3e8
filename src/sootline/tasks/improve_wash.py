"""Can the wash plan be bettered while people begin to work by it?

The first plan is shown at once; whoever looks for a better one goes on for the time that is given,
and puts a better one in its place as long as nothing was begun by the first.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from sootline.core.basis import ComponentId, MessageId
from sootline.core.gear import Component
from sootline.core.laundry.planning import PlanningTimes
from sootline.core.washplan.helps import Helps
from sootline.core.washplan.plan import Goal
from sootline.tasks.deeds import Planned
from sootline.tasks.desk import Desk, Desks, Report
from sootline.tasks.errands import Outcome, Tell, Wish
from sootline.tasks.plan_wash import PlanResult, plan_wash
from sootline.tasks.ports import Rules

# Each look is twice as long as the one before, so that better plans come early and few times.
_FIRST_S, _LEAST_S = 2.0, 0.1
_BEST = "errands.improved"
_SAME = "errands.not_bettered"
_OVERTAKEN = "errands.overtaken"


@dataclass(frozen=True, kw_only=True)
class Search:
    """By what a better plan is looked for.

    Args:
        spent: how many seconds have gone by since it began.
        helps: what helps a search of so many seconds from now.
        tell: hears of the seconds; False ends the search.
    """

    rules: Rules
    planning: PlanningTimes
    spent: Callable[[], float]
    helps: Callable[[float], Helps]
    tell: Tell


def improve_wash(search: Search, desks: Desks, wish: Wish) -> Outcome:
    """Look for a better plan until the wish's seconds are over."""
    begun = desks.look()
    if begun.plan is None:
        return Outcome(message=MessageId(_OVERTAKEN))
    best, bettered = begun.plan, 0
    for number, until in enumerate(_rounds(wish.total)):
        made = _look_on(search, begun, best, until)
        now = desks.look()
        if not _as_begun(now, begun, best):
            return Outcome(message=MessageId(_OVERTAKEN))
        if _rank(made) < _rank(best):
            best, bettered = made, bettered + 1
            _put(desks, now, made, wish, number)
        if not search.tell(int(search.spent())) or _is_best(made):
            break
    return Outcome(message=MessageId(_BEST if bettered else _SAME), values=(("n", f"{bettered}"),))


def _rounds(seconds: int) -> Iterator[float]:
    until, step = 0.0, _FIRST_S
    while until < seconds:
        until = min(until + step, float(seconds))
        step *= 2
        yield until


def _look_on(search: Search, begun: Desk, best: PlanResult, until: float) -> PlanResult:
    told, ended = -1, False

    def stop() -> bool:
        nonlocal told, ended
        spent = search.spent()
        if int(spent) != told:
            told = int(spent)
            ended = ended or not search.tell(told)
        return ended or spent >= until

    left = max(until - search.spent(), _LEAST_S)
    return plan_wash(
        search.rules, begun.job, planning=search.planning, stop=stop, aim=best.aim,
        helps=search.helps(left), known=best.plan,
    )  # fmt: skip


def _washed(plan: PlanResult) -> frozenset[ComponentId]:
    return frozenset(one for sort in plan.loads.sorting.sorts for one in sort.components)


def _as_begun(now: Desk, begun: Desk, best: PlanResult) -> bool:
    """Whether the plan is still this one, and nothing that it washes has moved since."""
    if now.plan is None or now.plan.plan != best.plan or now.plan.aim != best.aim:
        return False
    names = _washed(best)
    return _pieces(now, names) == _pieces(begun, names)


def _pieces(desk: Desk, names: frozenset[ComponentId]) -> tuple[Component, ...]:
    return tuple(one for one in desk.job.components if one.id in names)


def _rank(result: PlanResult) -> tuple[float, ...]:
    """Rank a plan under its goal; less is better."""
    plan, aim = result.plan, result.aim
    if aim.goal is Goal.ALL_DONE:
        return plan.makespan, plan.objective
    if aim.goal is Goal.SOONEST:
        return plan.objective, plan.makespan
    weight = {member.id: member.priority for member in result.instance.members}
    in_time = sum(weight[name] for name, at in plan.ready.items() if at <= (aim.by or 0))
    return -in_time, plan.objective


def _is_best(result: PlanResult) -> bool:
    """Whether no plan could be better: its bound is reached."""
    plan = result.plan
    if plan.bound is None or result.aim.goal is Goal.DEADLINE:
        return False
    reached = plan.objective if result.aim.goal is Goal.SOONEST else plan.makespan
    return reached <= plan.bound


def _put(desks: Desks, now: Desk, made: PlanResult, wish: Wish, number: int) -> None:
    report = Report(
        at=now.job.now,
        by=wish.by,
        message=MessageId("web.wash.bettered"),
        values=(("n", str(len(made.worksheet.loads))),),
        key=f"{wish.key}-{number}"[:64],
    )
    desks.keep(report, Planned(plan=made))
