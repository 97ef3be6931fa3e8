"""Who was shown how to do which work of the wash room, and is somebody assigned who was not?

Nobody is kept from helping: an untrained helper is a warning, for whoever assigns the work.
"""

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    BadInputError,
    Bearing,
    DateSpan,
    Fault,
    Finding,
    MemberId,
    MessageId,
    finding,
)
from sootline.core.ledger import Appended, EntryKind, ItemKind, item
from sootline.core.ledger.acts import Act
from sootline.core.ledger.things import ThingLife
from sootline.core.upkeep.qualified import PRACTICE
from sootline.tasks.ports import Register
from sootline.tasks.recording import Book, required


class Work(StrEnum):
    """Work on soiled gear that somebody must be shown before doing it alone."""

    SORTING = "sorting"
    WASHING = "washing"
    DISINFECTING = "disinfecting"
    DRYING = "drying"
    CHECKING = "checking"
    REBUILDING = "rebuilding"


@dataclass(frozen=True, kw_only=True)
class Training:
    """One training of one helper.

    Args:
        on: the day of it.
        by: who gave it.
        until: the last day it counts; unknown is not known to end.
        source: where that is written.
    """

    member: MemberId
    work: Work
    on: DateSpan
    by: str
    until: DateSpan = DateSpan()
    source: str = ""


def record_training(book: Book, act: Act, training: Training) -> tuple[Appended, ...]:
    """Record that a helper was trained; a later training for the same work takes its place.

    Raises:
        BadInputError: the record does not know the helper, or nobody is named who trained.
    """
    required(by=training.by)
    thing = item(ItemKind.MEMBER, training.member)
    if not book.registered(thing):
        values = (("id", training.member),)
        fault = Fault(place="member", message=MessageId("tasks.no_such_member"), values=values)
        raise BadInputError([fault])
    said = {
        "topic": training.work.value,
        "on": str(training.on),
        "by": training.by,
        "until": str(training.until),
        "source": training.source,
    }
    return book.ledger.append([act.entry(EntryKind.TRAINED, thing, said)])


def trainings_of(register: Register, member: MemberId) -> tuple[Training, ...]:
    """Return what a helper was trained for, the last training of each work."""
    life = register.thing(item(ItemKind.MEMBER, member))
    return () if life is None else tuple(_read(member, life))


def warn_untrained(
    register: Register, helpers: Sequence[MemberId], work: Work, *, on: dt.date
) -> tuple[Finding, ...]:
    """Warn of every helper assigned to a work without a training that counts that day."""
    return tuple(warning for helper in helpers for warning in _warnings(register, helper, work, on))


def _warnings(register: Register, helper: MemberId, work: Work, on: dt.date) -> Iterator[Finding]:
    found = [one for one in trainings_of(register, helper) if one.work is work]
    named = {"member": helper, "work": work.value}
    if not found:
        yield finding(Bearing.WARNS, "tasks.training.none", PRACTICE, **named)
        return
    # Not known until when is not known to have ended; a month may end on its first day.
    until = found[0].until.earliest
    if until is not None and until < on:
        yield finding(Bearing.WARNS, "tasks.training.ended", PRACTICE, **named, until=until)


def _read(member: MemberId, life: ThingLife) -> Iterator[Training]:
    topics = life.facts.get(EntryKind.TRAINED.value)
    for topic, said in sorted(topics.items()) if isinstance(topics, dict) else ():
        # Other words than ours are trainings for something else.
        if topic in set(Work) and isinstance(said, dict):
            yield Training(
                member=member,
                work=Work(topic),
                on=DateSpan.parse(str(said.get("on", "unknown"))),
                by=str(said.get("by", "")),
                until=DateSpan.parse(str(said.get("until", "unknown"))),
                source=str(said.get("source", "")),
            )
