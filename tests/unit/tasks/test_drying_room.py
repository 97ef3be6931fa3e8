"""Whether the drying room tells what it can do tonight, and what would change that."""

from dataclasses import replace

import pytest

from sootline.core.basis import BadInputError, Finding, UnreadableValueError, quantity
from sootline.core.drying import RoomAir
from sootline.core.drying.calibrating import Ratio
from sootline.core.drying.rooms import Remedy
from sootline.core.job.jobs import Job
from sootline.tasks.drying_room import DryingRoom, look_into_drying_room, question_air
from sootline.tasks.estimate_drying import estimate_drying_of
from sootline.wiring.demo import demo_job
from sootline.wiring.practice import load_assumptions
from sootline.wiring.rules import RULES

TABLE = load_assumptions()


@pytest.fixture(scope="module")
def job() -> Job:
    """Return the demonstration's job: a humid night."""
    return demo_job()


def look(job: Job, **changed: object) -> DryingRoom:
    """Look into the room with other air."""
    assert job.readings.air is not None
    air = replace(job.readings.air, **changed)  # type: ignore[arg-type]
    found = look_into_drying_room(RULES, with_air(job, air), TABLE)
    assert found is not None
    return found


def with_air(job: Job, air: RoomAir | None) -> Job:
    """Put other air in."""
    return replace(job, readings=replace(job.readings, air=air))


def test_every_remedy_is_the_same_night_again(job: Job) -> None:
    """The same places, each no slower than in the room as it is."""
    room = look(job)
    as_it_is = [one.estimate for one in room.outlook.places]

    assert room.outlook.room.bottleneck
    assert [one.remedy for one in room.remedied] == list(Remedy)
    for one in room.remedied:
        for better, before in zip(one.outlook.places, as_it_is, strict=True):
            assert better.estimate is not None
            assert before is not None
            assert better.estimate.minutes.likely <= before.minutes.likely


def test_a_room_that_is_not_known_has_no_remedy(job: Job) -> None:
    """Without its volume nobody can say what opening up does."""
    assert look(job, volume=None).remedied == ()


def test_every_logged_load_is_shown_against_the_model(job: Job) -> None:
    """The newest first; one that says nothing is told why."""
    learned = look(job).learned

    assert [one.load for one in learned] == list(reversed(job.readings.logged))
    assert sum(isinstance(one.against, Ratio) for one in learned) == len(learned) - 1
    assert any(isinstance(one.against, Finding) for one in learned)


def test_without_air_there_is_nothing_to_see(job: Job) -> None:
    """The screen asks for a reading; the command says so."""
    assert look_into_drying_room(RULES, with_air(job, None), TABLE) is None
    with pytest.raises(BadInputError):
        estimate_drying_of(RULES, with_air(job, None), TABLE)


def test_a_reading_no_room_has_is_asked_about() -> None:
    """72 in Celsius is a question, 72 in Fahrenheit none."""
    wrong = question_air(RoomAir(temp=quantity("72 °C"), humidity=quantity("40 %")), TABLE)
    right = question_air(RoomAir(temp=quantity("72 °F"), humidity=quantity("40 %")), TABLE)

    assert isinstance(wrong, UnreadableValueError)
    assert wrong.message == "drying.air_temp"
    assert right is None
