"""A job that names what is not there, or the same thing twice, is refused with every fault."""

import json
from typing import Any

import pytest

from sootline.core.basis import BadInputError
from sootline.core.job.assemble import assemble
from sootline.core.job.checks import check_job
from sootline.core.job.codec import decode
from sootline.core.job.jobs import Job

WHOLE: dict[str, Any] = {
    "version": 1,
    "now": "2026-03-01T04:00:00-07:00",
    "department": {"name": "Sallowby", "edition": "nfpa-1851/2020"},
    "members": [{"id": "211"}],
    "guides": [{"id": "g", "title": "guide"}],
    "components": [{"id": "0412", "kind": "coat-shell", "owner": "211", "guide": "g"}],
    "calls": [
        {
            "id": "c",
            "at": "2026-03-01T02:00:00-07:00",
            "people": [{"member": "211", "worn": ["0412"]}],
            "remarks": [{"component": "0412"}],
            "evidence": ["0412"],
            "casualties": ["211"],
        }
    ],
    "wash_room": {
        "drying": [{"id": "rack", "method": "rack", "places": 6}],
        "drying_times": [{"place": "rack", "minutes": "150 min"}],
    },
    "request": {"start": "2026-03-01T04:20:00-07:00"},
    "checks": [{"component": "0412", "by": "118", "at": "2026-03-01T11:40:00-07:00"}],
    "builds": [{"element": "coat", "parts": ["0412"]}],
}


def faults_of(**changes: object) -> dict[str, str]:
    """Return the faults of the small job with some fields changed: place to message."""
    job = decode(Job, json.dumps(WHOLE | changes))
    with pytest.raises(BadInputError) as refused:
        check_job(job)
    return {fault.place: fault.message for fault in refused.value.faults}


def test_accepts_a_job_that_holds_together() -> None:
    """Everything named is there, once."""
    job = decode(Job, json.dumps(WHOLE))

    assert check_job(job) is job


def test_accepts_a_job_without_a_request() -> None:
    """Deciding needs no plan."""
    job = decode(Job, json.dumps({key: WHOLE[key] for key in WHOLE if key != "request"}))

    assert check_job(job) is job


def test_refuses_an_unknown_version() -> None:
    """A later form of the document is refused, not guessed."""
    assert faults_of(version=2) == {"version": "job.version"}


def test_names_ids_given_twice() -> None:
    """Two members with one id would share each other's exposures."""
    assert faults_of(members=[{"id": "211"}, {"id": "211"}]) == {"members": "job.twice"}


def test_names_everything_that_is_not_there() -> None:
    """Each place where something unknown is named is listed."""
    faults = faults_of(members=[], guides=[], components=[WHOLE["components"][0] | {"id": "9"}])

    assert faults == {
        "components[0].owner": "job.no_such_member",
        "components[0].guide": "job.no_such_guide",
        "calls[0].people[0].worn": "job.no_such_component",
        "calls[0].remarks[0].component": "job.no_such_component",
        "calls[0].evidence": "job.no_such_component",
        "checks[0].component": "job.no_such_component",
        "builds[0].parts": "job.no_such_component",
        "calls[0].people[0].member": "job.no_such_member",
        "calls[0].casualties": "job.no_such_member",
    }


def test_names_a_drying_place_that_is_not_there() -> None:
    """A drying time for a rack nobody has is a slip of the pen."""
    room = {"drying_times": [{"place": "rack", "minutes": "150 min"}]}

    assert faults_of(wash_room=room) == {"wash_room.drying_times[0].place": "job.no_such_place"}


@pytest.mark.parametrize(
    ("request_", "message"),
    [
        ({"goal": "deadline"}, "job.no_deadline"),
        ({"goal": "deadline", "by": "2026-03-01T04:00:00-07:00"}, "job.deadline_passed"),
    ],
)
def test_refuses_a_deadline_nobody_can_meet(request_: dict[str, str], message: str) -> None:
    """A deadline goal needs its moment, and one after the start."""
    start = {"start": "2026-03-01T04:20:00-07:00"}

    assert faults_of(request=start | request_) == {"request.by": message}


def test_assembles_parts_in_order() -> None:
    """Lists are put together, fields said once are taken over."""
    whole = assemble(
        [("a.json", {"version": 1, "members": [1]}), ("b.json", {"version": 1, "members": [2]})]
    )

    assert whole == {"version": 1, "members": [1, 2]}


def test_refuses_parts_that_contradict_each_other() -> None:
    """Two departments in one job are a mix-up; both files are named."""
    with pytest.raises(BadInputError) as refused:
        assemble([("a.json", {"title": "A"}), ("b.json", {"title": "B"})])

    fault = refused.value.faults[0]
    assert (fault.place, dict(fault.values)) == ("title", {"first": "a.json", "second": "b.json"})
