"""The first plan is there at once, a better one as it is found, and how far that is, is true."""

import time
from itertools import count

import pytest
from django.test import Client
from tests.integration.store_databases import Databases
from tests.web.pages import read, send, text_of
from tests.web.records import account

from sootline.core.basis import MemberId, PlaceId
from sootline.core.washplan.helps import Helps
from sootline.core.washplan.plan import Goal
from sootline.tasks.deeds import Planned, Washed, WashStep
from sootline.tasks.desk import Report
from sootline.tasks.errands import ErrandKind, Wish
from sootline.tasks.improve_wash import Search, improve_wash
from sootline.tasks.plan_wash import Aim, plan_wash
from sootline.wiring.demo import demo_job
from sootline.wiring.demo_desk import MemoryDesks
from sootline.wiring.plans import load_planning_times
from sootline.wiring.rules import RULES

TIMES = load_planning_times()


def _desks(goal: Goal = Goal.SOONEST) -> MemoryDesks:
    """Return a desk whose plan is the hand rules' best."""
    job = demo_job()
    aim = Aim(start=job.now, goal=goal, by=400 if goal is Goal.DEADLINE else None)
    return MemoryDesks(job, plan_wash(RULES, job, planning=TIMES, stop=lambda: True, aim=aim))


def _wish(seconds: int = 4) -> Wish:
    return Wish(kind=ErrandKind.IMPROVE, by=MemberId("118"), station=None, total=seconds, said={},
                key="w")  # fmt: skip


def _search(goes_on: bool = True) -> tuple[Search, list[int]]:
    """Return a search whose seconds go by as it looks at the clock, and what it told."""
    told: list[int] = []
    ticks = count()

    def tell(done: int) -> bool:
        told.append(done)
        return goes_on

    search = Search(rules=RULES, planning=TIMES, spent=lambda: next(ticks) / 200,
                    helps=lambda _s: Helps(), tell=tell)  # fmt: skip
    return search, told


@pytest.mark.parametrize("goal", list(Goal))
def test_a_better_plan_takes_the_place_of_the_first(goal: Goal) -> None:
    """What stands on the desk in the end is no worse, and the seconds told only rise."""
    desks, (search, told) = _desks(goal), _search()
    first = desks.look().plan
    outcome = improve_wash(search, desks, _wish())
    last = desks.look().plan

    assert first is not None
    assert last is not None
    if goal is not Goal.DEADLINE:
        assert last.plan.objective <= first.plan.objective or goal is Goal.ALL_DONE
        assert last.plan.makespan <= first.plan.makespan or goal is Goal.SOONEST
    assert told == sorted(told)
    bettered = int(dict(outcome.values)["n"])
    assert (outcome.message == "errands.improved") == (bettered > 0) == (last != first)


def test_a_plan_somebody_works_by_is_left_alone() -> None:
    """Once a load was begun the search ends and changes nothing."""
    desks, (search, _) = _desks(), _search()
    plan = desks.look().plan
    assert plan is not None
    load = plan.worksheet.loads[0]
    begun = Washed(
        step=WashStep.STARTED, load=1, pieces=load.components, place=PlaceId(load.washer), said=""
    )
    report = Report(at=desks.look().job.now, by=None, message="x")  # type: ignore[arg-type]
    spent = search.spent

    def then() -> float:
        if len(desks.look().reports) == 0:
            desks.keep(report, begun)
        return spent()

    search = Search(rules=RULES, planning=TIMES, spent=then, helps=search.helps, tell=search.tell)
    outcome = improve_wash(search, desks, _wish())

    assert outcome.message == "errands.overtaken"
    assert desks.look().plan == plan


def test_another_plan_ends_the_search() -> None:
    """Somebody planned for another goal meanwhile: that one stands."""
    desks, (search, _) = _desks(), _search()
    other = _desks(Goal.ALL_DONE).look().plan
    assert other is not None
    ticks = count()

    def then() -> float:
        if next(ticks) == 3:
            report = Report(at=desks.look().job.now, by=None, message="x")  # type: ignore[arg-type]
            desks.keep(report, Planned(plan=other))
        return search.spent()

    mine = Search(rules=RULES, planning=TIMES, spent=then, helps=search.helps, tell=search.tell)
    assert improve_wash(mine, desks, _wish()).message == "errands.overtaken"
    assert desks.look().plan == other


def test_without_a_plan_there_is_nothing_to_better() -> None:
    """Whoever took the plan back wants none."""
    search, _ = _search()

    assert improve_wash(search, MemoryDesks(demo_job()), _wish()).message == "errands.overtaken"


def test_told_to_stop_it_stops() -> None:
    """A worker that must end leaves what was found so far."""
    desks, (search, told) = _desks(), _search(goes_on=False)
    improve_wash(search, desks, _wish(600))

    assert len(told) <= 6


def test_the_first_plan_is_on_the_page_at_once(databases: Databases) -> None:
    """The form is answered with a verified plan; the better one is still to come, and says so."""
    officer = account(databases)
    _, where, _ = send(officer, "/call/", title="car fire", began="00:01", rode=["223"])
    send(officer, where, places=["inside"], smoke="yes", bag="31")
    began = time.perf_counter()
    answer = officer.post("/wash/plan/", {"goal": "soonest", "key": "k1"})
    took = time.perf_counter() - began
    page = read(officer, "/wash/")

    assert answer.status_code == 302
    assert took < 3
    assert "A better plan will be looked for." in text_of(page)
    assert 'hx-get="/wash/better/?mark=' in page
    assert "Look again" in text_of(page)


def test_a_page_with_an_older_plan_is_drawn_anew(demo: Client) -> None:
    """The polled part asks for it; without scripts the address leads back to the wash room."""
    htmx = {"HX-Request": "true"}
    old = demo.get("/wash/better/?mark=old", headers=htmx)

    assert old["HX-Refresh"] == "true"
    assert demo.get("/wash/better/").status_code == 302
