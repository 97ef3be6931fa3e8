"""What a deed from a screen makes of a job, where no screen would send it so."""

from dataclasses import replace

import pytest

from sootline.core.basis import BadInputError, CallId, ComponentId, MemberId, PlaceId
from sootline.core.exposure.calls import Presence, Zone
from sootline.core.rebuild import AfterWashCheck
from sootline.tasks.deeds import CallCame, Checked, HazardsSaid, PersonSaid, Washed, WashStep
from sootline.tasks.take_reports import take
from sootline.wiring.demo import demo_job
from sootline.wiring.rules import RULES

JOB = demo_job()


def test_a_call_that_is_not_there_is_named() -> None:
    """Nobody can say what was at a call that nobody wrote down."""
    deed = HazardsSaid(call=CallId("none"), hazards=())

    with pytest.raises(BadInputError) as refused:
        take(RULES, JOB, deed, by="118")

    assert [one.place for one in refused.value.faults] == ["none"]


def test_somebody_who_came_later_is_added_to_the_call() -> None:
    """Who was not on the list joins it."""
    (call,) = JOB.calls
    presence = Presence(member=MemberId("228"), zones=(Zone.PUMP,))

    after = take(RULES, JOB, PersonSaid(call=call.id, presence=presence), by="118")

    assert after.calls[0].people == (*call.people, presence)


def test_a_call_told_anew_takes_its_own_place() -> None:
    """The same number is the same call."""
    (call,) = JOB.calls
    told = replace(call, title="barn")

    assert take(RULES, JOB, CallCame(call=told), by="118").calls == (told,)


def test_a_piece_that_is_not_there_is_named() -> None:
    """Neither a check nor a load can name what the job does not hold."""
    check = AfterWashCheck(component=ComponentId("none"), by="118", at=JOB.now)
    washed = Washed(
        step=WashStep.STARTED, load=1, pieces=(ComponentId("none"),), place=PlaceId("drum 1")
    )

    for deed in (Checked(check=check), washed):
        with pytest.raises(BadInputError) as refused:
            take(RULES, JOB, deed, by="118")
        assert [one.place for one in refused.value.faults] == ["none"]
