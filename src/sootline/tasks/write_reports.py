"""How does a deed reported from a screen come into the record?"""

import json
from collections.abc import Sequence
from dataclasses import replace

from sootline.core.basis import BadInputError, CallId, ComponentId, Fault, MessageId
from sootline.core.exposure.calls import Call, Presence
from sootline.core.gear import CareStage, Event, EventKind
from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job
from sootline.core.ledger import EntryKind, ItemKind, component, item
from sootline.core.ledger.acts import Act
from sootline.tasks.answer_question import Answered, answer_question
from sootline.tasks.deeds import (
    CallCame,
    Checked,
    Deed,
    HazardsSaid,
    LookedOver,
    PersonSaid,
    Planned,
    PutTogether,
    Washed,
)
from sootline.tasks.floor_deeds import FLOOR, FloorDeed
from sootline.tasks.hold_said import HoldSaid, write_hold
from sootline.tasks.people_deeds import PeopleDeed
from sootline.tasks.ports import Rules
from sootline.tasks.reading_deeds import ReadingTaken
from sootline.tasks.record_call import call_of, record_call
from sootline.tasks.recorded_plan import plan_item, plan_said
from sootline.tasks.recording import Book, refuse_unless
from sootline.tasks.take_readings import write_reading
from sootline.tasks.write_checks import write_build, write_check
from sootline.tasks.write_floor import write_floor
from sootline.tasks.write_people import write_people
from sootline.tasks.write_wash import write_wash
from sootline.tasks.write_year import write_year
from sootline.tasks.year_deeds import YearFact


def write(rules: Rules, book: Book, act: Act, job: Job, deed: Deed) -> None:
    """Record a deed.

    Args:
        job: as the record has it now.

    Raises:
        RefusedError: a piece may not, as it stands.
        BadInputError: something named is not known, or was recorded before.
        OvertakenError: somebody wrote about one of the pieces since.
    """
    match deed:
        case CallCame(call=call):
            record_call(book, act, call)
        case Answered():
            answer_question(book, act, deed)
        case HoldSaid():
            write_hold(book, act, deed)
        case PersonSaid(call=name, presence=presence):
            _say_where(book, act, name, presence)
        case HazardsSaid(call=name, hazards=hazards):
            call = replace(_recorded(book, name), hazards=hazards)
            _change_call(book, act, call, "hazards")
        case Washed():
            write_wash(rules, book, act, job, deed)
        case LookedOver(pieces=pieces):
            _look_over(book, act, pieces)
        case Checked(check=check):
            write_check(rules, book, act, job, check)
        case PutTogether():
            write_build(rules, book, act, job, deed)
        case Planned(plan=plan, station=station, because=because):
            said = {**plan_said(plan), **({"because": because} if because else {})}
            book.ledger.append([act.entry(EntryKind.PLANNED, plan_item(station), said)])
        case _:
            _beyond(rules, book, act, job, deed)


def _beyond(
    rules: Rules,
    book: Book,
    act: Act,
    job: Job,
    deed: FloorDeed | PeopleDeed | YearFact | ReadingTaken,
) -> None:
    """Record what is no step of a call, a load or a check."""
    if isinstance(deed, YearFact):
        write_year(rules, book, act, job, deed.fact)
    elif isinstance(deed, ReadingTaken):
        write_reading(book, act, job, deed.reading)
    elif isinstance(deed, FLOOR):
        write_floor(rules, book, act, job, deed)
    else:
        write_people(rules, book, act, job, deed)


def _recorded(book: Book, name: CallId) -> Call:
    life = book.register.thing(item(ItemKind.CALL, name))
    if life is None:
        fault = MessageId("tasks.no_such_thing")
        raise BadInputError([Fault(place="call", message=fault, values=(("id", name),))])
    return call_of({**life.facts, "id": name})


def _change_call(book: Book, act: Act, call: Call, field: str) -> None:
    """Record what is newly known of a call; the latest word on a field counts."""
    said = json.loads(encode(Call, call, indent=None))
    changes = {field: said.get(field, [])}
    book.ledger.append([act.entry(EntryKind.FACTS_CHANGED, item(ItemKind.CALL, call.id), changes)])


def _say_where(book: Book, act: Act, name: CallId, presence: Presence) -> None:
    """Put in where one person was; what was worn stays as it was recorded when the call came."""
    call = _recorded(book, name)
    people = tuple(
        replace(presence, worn=one.worn) if one.member == presence.member else one
        for one in call.people
    )
    _change_call(book, act, replace(call, people=people), "people")
    worn = next((one.worn or () for one in people if one.member == presence.member), ())
    if presence.bags:
        _bag(book, act, worn, ", ".join(presence.bags))


def _bag(book: Book, act: Act, pieces: Sequence[ComponentId], bags: str) -> None:
    """Record that what is still worn went into bags; what went on since stays where it is."""
    known = [one for one in book.known(*pieces) if one.component.state.stage is CareStage.WORN]
    said = {"by": act.actor, "place": bags}
    drafts = [act.entry(EntryKind.BAGGED, component(one.component.id), said) for one in known]
    if drafts:
        book.record(drafts, known)


def _look_over(book: Book, act: Act, pieces: Sequence[ComponentId]) -> None:
    known = book.known(*pieces)
    refuse_unless(known, [Event(kind=EventKind.LOOKED_OVER, by=act.actor)])
    said = {"by": act.actor}
    kind = EntryKind.LOOKED_OVER
    book.record([act.entry(kind, component(one.component.id), said) for one in known], known)
