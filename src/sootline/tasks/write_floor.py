"""How does what is decided and done on the floor come into the record?"""

import json
from collections.abc import Iterable
from dataclasses import replace
from typing import assert_never

from sootline.core.basis import BadInputError, CallId, ComponentId
from sootline.core.exposure.calls import Call
from sootline.core.gear import Event, EventKind, Hold
from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job
from sootline.core.ledger import Draft, EntryKind, ItemKind, component, item
from sootline.core.ledger.acts import Act
from sootline.core.rebuild import Next
from sootline.tasks.asked_holds import found_at_check, washed_elsewhere
from sootline.tasks.floor_deeds import (
    Disinfected,
    FloorDeed,
    GuestsCame,
    GuestsWent,
    HandedOver,
    HoldLifted,
    Ruled,
    SurveyCame,
    WashedElsewhere,
)
from sootline.tasks.happening import fault
from sootline.tasks.holds import open_hold, release_hold
from sootline.tasks.ports import Rules
from sootline.tasks.record_call import call_of
from sootline.tasks.recording import Book, also, refuse_unless, required
from sootline.tasks.register_gear import register_components
from sootline.tasks.register_things import HERE
from sootline.tasks.retire_gear import retire
from sootline.tasks.take_floor import (
    RULING,
    disinfection_note,
    guest_remark,
    refuse_contact,
    unlisted_hold,
)
from sootline.tasks.wash_room import hang


def write_floor(rules: Rules, book: Book, act: Act, job: Job, deed: FloorDeed) -> None:
    """Record a deed on the floor.

    Raises:
        RefusedError: a piece may not, as it stands.
        BadInputError: something named is not known, or is left out.
    """
    match deed:
        case HoldLifted():
            _lift(rules, book, act, job, deed)
        case SurveyCame(call=name, survey=survey):
            call = _recorded(book, name)
            surveys = (*call.building.surveys, survey)
            building = replace(call.building, surveys=surveys)
            _change_call(book, act, replace(call, building=building), "building")
        case Disinfected():
            refuse_contact(job, deed)
            _disinfect(book, act, deed)
        case GuestsCame():
            _take_in(book, act, deed)
        case GuestsWent(pieces=pieces, to=to, by=by):
            said = {"by": by, "holder": to, "place": to}
            _each(book, act, pieces, Event(kind=EventKind.HANDED_BACK, by=by), said)
        case WashedElsewhere(pieces=pieces, by=by, said=said_how):
            required(by=by)
            hold = washed_elsewhere(by=by, said=said_how, at=job.now)
            _hold(book, act, pieces, hold)
        case Ruled():
            _rule(book, act, job, deed)
        case HandedOver():
            _hand_over(book, act, deed)
        case _:
            assert_never(deed)


def _lift(rules: Rules, book: Book, act: Act, job: Job, deed: HoldLifted) -> None:
    required(by=deed.by, said=deed.said)
    for piece in deed.pieces:
        hold = unlisted_hold(rules, job, piece, deed.cause)
        if hold is not None:
            opening = replace(act, idem=f"{act.idem}/opened")
            book.record([open_hold(opening, piece, hold)], book.known(piece))
    for piece in deed.pieces:
        release_hold(
            book, act, piece, cause=deed.cause, by=deed.by, office=deed.office, said=deed.said
        )


def _disinfect(book: Book, act: Act, deed: Disinfected) -> None:
    required(by=deed.by, product=deed.product)
    known = book.known(*deed.pieces)
    said = {
        "by": deed.by,
        "product": deed.product,
        "minutes": deed.minutes,
        "said": disinfection_note(deed),
    }
    drafts = [act.entry(EntryKind.DISINFECTED, component(piece), said) for piece in deed.pieces]
    book.record(drafts, known)


def _take_in(book: Book, act: Act, deed: GuestsCame) -> None:
    call = _recorded(book, deed.call)
    register_components(book, replace(act, idem=f"{act.idem}/guests"), deed.pieces)
    remarks = (*call.remarks, *(guest_remark(one.id, act.actor) for one in deed.pieces))
    _change_call(book, act, replace(call, remarks=remarks), "remarks")


def _rule(book: Book, act: Act, job: Job, deed: Ruled) -> None:
    piece, said = deed.piece, {"by": deed.by, "said": deed.said, "place": deed.said or "-"}
    required(by=deed.by)
    match deed.next:
        case Next.HOLD:
            _hold(book, act, (piece,), found_at_check(by=deed.by, said=deed.said, at=job.now))
        case Next.OUT:
            retire(book, act, piece, by=deed.by, reason=deed.said)
        case Next.DRY_ON:
            hang(book, act, (piece,), by=deed.by, place=deed.said or "-")
        case Next.WASH_AGAIN | Next.REPAIR:
            _each(book, act, (piece,), Event(kind=RULING[deed.next], by=deed.by), said)
        case Next.BACK | Next.CHECK:
            raise BadInputError([fault(deed.next, "tasks.no_such_thing")])
        case _:
            assert_never(deed.next)


def _hand_over(book: Book, act: Act, deed: HandedOver) -> None:
    required(giver=deed.giver, taker=deed.taker)
    said = {
        "said": deed.said or "handover",
        "giver": deed.giver,
        "taker": deed.taker,
        "exceptions": {left: list(pieces) for left, pieces in deed.exceptions},
    }
    book.ledger.append([act.entry(EntryKind.NOTED, HERE, said)])


def _hold(book: Book, act: Act, pieces: Iterable[ComponentId], hold: Hold) -> None:
    chosen = tuple(pieces)
    known = book.known(*chosen)
    drafts = [open_hold(act, piece, hold) for piece in chosen]
    if not book.answered(act, drafts[0]):
        refuse_unless(known, [Event(kind=EventKind.HOLD_OPENED, hold=hold)])
    book.record(drafts, known)


def _each(
    book: Book, act: Act, pieces: Iterable[ComponentId], event: Event, said: dict[str, str]
) -> None:
    chosen = tuple(pieces)
    known = book.known(*chosen)
    kind = EntryKind(event.kind.value)
    drafts: list[Draft] = [act.entry(kind, component(piece), said) for piece in chosen]
    if not book.answered(act, drafts[0]):
        refuse_unless(known, [event])
    book.record(drafts, known)


def _recorded(book: Book, name: CallId) -> Call:
    life = book.register.thing(item(ItemKind.CALL, name))
    if life is None:
        raise BadInputError([fault(name, "tasks.no_such_thing")])
    return call_of({**life.facts, "id": name})


def _change_call(book: Book, act: Act, call: Call, field: str) -> None:
    said = json.loads(encode(Call, call, indent=None))
    changes = {field: said.get(field, [])}
    thing = item(ItemKind.CALL, call.id)
    book.ledger.append([also(act, field, EntryKind.FACTS_CHANGED, thing, changes)])
