"""Was a reading typed on a screen kept, or is there a question about it first?"""

from dataclasses import dataclass
from typing import Protocol

from django.http import HttpRequest

from sootline.core.basis import UnreadableValueError
from sootline.core.drying import RoomAir
from sootline.core.job.jobs import Job
from sootline.tasks.drying_room import question_air
from sootline.tasks.reading_deeds import Reading, ReadingTaken
from sootline.web.reports import report
from sootline.wiring.practice import load_assumptions


class ReadingForm(Protocol):
    """A form that makes one reading."""

    def is_valid(self) -> bool:
        """Whether every field can be read."""
        ...

    def reading(self, job: Job) -> Reading:
        """Return the reading.

        Raises:
            UnreadableValueError: it cannot be.
        """
        ...


@dataclass(frozen=True, kw_only=True)
class Kept:
    """What became of it.

    Args:
        question: what must be asked first; nothing was stored.
    """

    done: bool = False
    question: UnreadableValueError | None = None


def keep_reading(request: HttpRequest, form: ReadingForm, job: Job, message: str) -> Kept:
    """Keep a reading and say so, or return the question about it."""
    if not form.is_valid():
        return Kept()
    try:
        reading = form.reading(job)
    except UnreadableValueError as error:
        return Kept(question=error)
    if isinstance(reading, RoomAir):
        question = question_air(reading, load_assumptions())
        if question is not None:
            return Kept(question=question)
    return Kept(done=report(request, message, ReadingTaken(reading=reading)))
