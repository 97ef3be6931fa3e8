"""A job planned from a document: intervals, what stays out, what nobody weighed, replanning."""

import json
from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from sootline.core.basis import BadInputError, MachineId, MemberId
from sootline.core.job.jobs import Job
from sootline.core.washplan.plan import Goal
from sootline.core.washplan.replan import Changes, Down
from sootline.files.jobs import to_job
from sootline.files.planning_table import load_planning_times
from sootline.tasks.decide import decide_job
from sootline.tasks.plan_wash import (
    Aim,
    PlanResult,
    UnsoundPlanError,
    aim_of,
    build_all,
    finish,
    plan_wash,
)
from sootline.tasks.replan_wash import Replan, Running, replan_wash
from sootline.wiring.rules import RULES

HELD: dict[str, Any] = {
    "holds": [
        {
            "cause": "powder",
            "question": "care.hold.contaminant",
            "decider": "safety-officer",
            "deputy": "chief",
            "escalate_after_h": 4,
        }
    ]
}
KINDS = ("coat-shell", "coat-liner", "hood", "gloves")
START = "2026-02-03T04:20:00+00:00"


def one(member: str, kind: str, **more: object) -> dict[str, Any]:
    """Describe a component of a member."""
    return {"id": f"{kind}-{member}", "kind": kind, "owner": member, "set": member, **more}


def job(*components: dict[str, Any], **changes: Any) -> Job:  # noqa: ANN401 - parts of a document
    """Read a job of two members, one washer, a basin and a rack; everybody was inside."""
    members = ["A", "B"]
    given = list(components) or [one(member, kind) for member in members for kind in KINDS]
    document: dict[str, Any] = {
        "version": 1,
        "title": "two members",
        "now": START,
        "department": {"name": "invented", "edition": "nfpa-1851/2020"},
        "members": [{"id": "A", "priority": 3}, {"id": "B"}],
        "components": given,
        "calls": [
            {
                "id": "call-1",
                "at": "2026-02-03T01:10:00+00:00",
                "people": [
                    {"member": member, "zones": ["inside"], "on_air": "yes", "smoke": "yes"}
                    for member in members
                ],
            }
        ],
        "wash_room": {
            "washers": [
                {
                    "id": "W1",
                    "limit": "42 lb",
                    "programmes": [
                        {
                            "id": "gear",
                            "bath_temp": "104 °F",
                            "extraction": "90 G",
                            "minutes": "55-60-70 min",
                        }
                    ],
                }
            ],
            "sinks": [{"id": "basin", "use": "gear"}],
            "drying": [
                {"id": "rack", "method": "rack", "places": 8},
                {"id": "box", "method": "cabinet", "places": 3, "air_temp": "100 °F"},
            ],
        },
        **changes,
    }
    return to_job(json.dumps(document))


def plan(given: Job, **options: Any) -> PlanResult:  # noqa: ANN401 - passed on
    """Plan without searching on."""
    return plan_wash(RULES, given, planning=load_planning_times(), stop=lambda: True, **options)


@cache
def usual() -> PlanResult:
    """Plan the usual job, once."""
    return plan(job())


def replanned(given: Job, minute: int, changes: Changes | None = None) -> Replan:
    """Plan the rest of the usual plan again."""
    return replan_wash(
        RULES,
        given,
        Running(plan=usual().plan, minute=minute),
        changes or Changes(),
        planning=load_planning_times(),
        stop=lambda: True,
    )


def test_every_step_is_an_interval() -> None:
    """Loads, handwork, drying and returns all have an earliest, a likely and a late minute."""
    sheet = usual().worksheet
    steps = [
        *((step.start, step.end) for step in sheet.loads),
        *((step.start, step.end) for step in sheet.hand),
        *((step.start, step.end) for step in sheet.drying),
    ]

    assert all(start.likely < end.likely for start, end in steps)
    assert all(one.at is not None and one.at.earliest < one.at.late for one in sheet.back)
    assert any("not_measured_here" in note.message for note in usual().rests_on)


def test_loads_name_programme_mass_and_what_was_not_weighed() -> None:
    """Nobody weighed: the load counts the heaviest of each kind and says so."""
    [shells] = [load for load in usual().worksheet.loads if load.sort.id == "shells"]

    assert (shells.programme, str(shells.mass), str(shells.limit)) == ("gear", "10 lb", "42 lb")
    assert shells.unweighed == shells.components == ("coat-shell-A", "coat-shell-B")


def test_handwork_names_method_and_place() -> None:
    """Both pairs of gloves at the basin, by hand."""
    hand = usual().worksheet.hand

    assert {(step.station, step.method, step.components) for step in hand} == {
        ("basin", "hand", ("gloves-A",)),
        ("basin", "hand", ("gloves-B",)),
    }


def test_drying_names_the_departments_own_places() -> None:
    """Racks, cabinets by name; what is hung elsewhere by its method."""
    strap = job(one("A", "drag-device"), one("A", "coat-shell"))

    assert {step.where for step in usual().worksheet.drying} <= {"rack", "rack, box", "box"}
    assert "hang" in {step.where for step in plan(strap).worksheet.drying}


def test_who_waits_for_a_hold_is_not_complete() -> None:
    """A's coat is held: A comes back with the rest, but not complete; B is."""
    given = [one("A", "coat-shell", state=HELD), one("A", "hood"), one("B", "hood")]

    back = {one.member: one for one in plan(job(*given)).worksheet.back}

    assert back[MemberId("A")].waiting == ("coat-shell-A",)
    assert (back[MemberId("A")].complete, back[MemberId("B")].complete) == (False, True)


def test_who_has_nothing_in_the_plan_has_no_time() -> None:
    """Everything of A is held: no time is given for A at all, and the pool never waits."""
    spare = {"id": "spare", "kind": "coat-shell", "state": HELD}

    sheet = plan(job(one("A", "coat-shell", state=HELD), one("B", "hood"), spare)).worksheet

    assert {one.member: one.at is None for one in sheet.back} == {"A": True, "B": False}
    assert sheet.complete_by(100_000) == 1


def test_what_needs_only_a_look_keeps_nobody_waiting() -> None:
    """Somebody who was not there loses nothing: their gear stays on the hook."""
    given = job(one("A", "hood"), one("C", "hood"), members=[{"id": "A"}, {"id": "B"}, {"id": "C"}])

    sheet = plan(given).worksheet

    assert [one.member for one in sheet.back] == ["A"]


def test_what_nobody_can_wash_here_keeps_its_owner_waiting() -> None:
    """With a kitchen sink only the gloves are refused, and A waits for them."""
    room = {**json.loads(_room()), "sinks": [{"id": "kitchen", "use": "food"}]}

    back = plan(job(one("A", "gloves"), one("A", "hood"), wash_room=room)).worksheet.back

    assert [one.waiting for one in back] == [("gloves-A",)]


def _room() -> str:
    return json.dumps(
        {
            "washers": [
                {
                    "id": "W1",
                    "limit": "42 lb",
                    "programmes": [
                        {"id": "g", "bath_temp": "104 °F", "extraction": "90 G", "minutes": "60"}
                    ],
                }
            ],
            "drying": [{"id": "box", "method": "cabinet", "places": 3}],
        }
    )


def test_a_room_with_cabinets_only_is_planned() -> None:
    """Without any rack, shells dry in the cabinet."""
    given = job(one("A", "coat-shell"), one("B", "coat-shell"), wash_room=json.loads(_room()))

    assert {step.where for step in plan(given).worksheet.drying} == {"box"}


def test_the_request_is_the_aim() -> None:
    """Goal and deadline come from the request, in minutes from its start; another aim overrules."""
    by = "2026-02-03T18:00:00+00:00"
    given = job(request={"start": START, "goal": "deadline", "by": by})
    other = Aim(start=given.now, goal=Goal.ALL_DONE)

    assert aim_of(given) == Aim(start=given.now, goal=Goal.DEADLINE, by=820)
    assert aim_of(job()) == Aim(start=given.now, goal=Goal.SOONEST)
    assert plan(given).aim.by == 820
    assert plan(given, aim=other).aim == other


def test_a_broken_plan_is_shown_to_nobody() -> None:
    """A plan with a wrong end is refused with what the verifier found."""
    result = usual()
    built = build_all(job(), result.loads, load_planning_times())

    with pytest.raises(UnsoundPlanError) as refusal:
        finish(job(), result.loads, built, replace(result.plan, makespan=1), result.aim)

    assert refusal.value.faults


def test_an_unknown_edition_is_bad_input() -> None:
    """The adopted edition must be one the program has."""
    with pytest.raises(BadInputError):
        plan(job(department={"name": "invented", "edition": "nfpa-1851/1066"}))


def test_a_due_cleaning_is_a_reason_to_wash() -> None:
    """Nobody wore it, but its half-yearly cleaning is long overdue: it is washed."""
    cleaned = {"deed": "advanced-cleaning", "on": "2024-03-01"}
    hood = one("A", "hood", made="2022-01", in_service="2022-02-01", records=[cleaned])

    [decision] = decide_job(RULES, job(hood, calls=[])).decisions

    assert decision.fate == "wash"


def test_a_guide_is_heard_when_cleanings_come_due() -> None:
    """A component with a maker's guide is decided like any other."""
    hood = one("A", "hood", guide="g1")
    given = job(hood, guides=[{"id": "g1", "title": "guide of an invented maker"}])

    assert len(decide_job(RULES, given).decisions) == 1


def test_replanning_without_news_keeps_what_has_begun() -> None:
    """At minute 30 the first load stands as it was planned, and nothing joined or left."""
    again = replanned(job(), 30)

    first = min(usual().plan.loads, key=lambda load: load.load_start)
    assert first in again.result.plan.loads
    assert (again.withdrawn, again.joined) == ((), ())


def test_gear_of_a_second_call_joins() -> None:
    """New components in the job join the plan by name."""
    given = [one(member, kind) for member in ("A", "B") for kind in KINDS]
    more = job(*given, one("B", "trouser-shell"))

    again = replanned(more, 30)

    assert again.joined == ("trouser-shell-B",)
    assert any("trouser-shell-B" in load.components for load in again.result.worksheet.loads)


def test_gear_that_is_held_meanwhile_leaves() -> None:
    """A's coat and gloves are held at minute 0: named as withdrawn, and in no load any more."""
    given = [
        one(member, kind, **({"state": HELD} if member == "A" else {}))
        for member in ("A", "B")
        for kind in KINDS
    ]

    again = replanned(job(*given), 0)

    assert {one.value("component") for one in again.withdrawn} == {f"{kind}-A" for kind in KINDS}
    assert all("-B" in name for load in again.result.worksheet.loads for name in load.components)


def test_a_load_that_holds_nothing_else_leaves_with_it() -> None:
    """Both coats are held: the load of shells is gone from what is carried on."""
    given = [
        one(member, kind, **({"state": HELD} if kind == "coat-shell" else {}))
        for member in ("A", "B")
        for kind in KINDS
    ]

    again = replanned(job(*given), 1000)

    assert {load.sort.id for load in again.result.worksheet.loads} == {"liners"}


def test_a_washer_down_is_planned_around() -> None:
    """With the washer down until minute 500 nothing is loaded before."""
    changes = Changes(down=(Down(washer=MachineId("W1"), until=500),))

    again = replanned(job(), 0, changes)

    assert min(load.start.likely for load in again.result.worksheet.loads) >= 500
