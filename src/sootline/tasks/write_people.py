"""How do people who come, get gear, try it on, exchange it and leave come into the record?"""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import assert_never

from sootline.core.basis import BadInputError, ComponentId, MemberId
from sootline.core.gear import CareStage, Event, EventKind
from sootline.core.job.jobs import Job
from sootline.core.ledger import Draft, EntryKind, ItemKind, component, item
from sootline.core.ledger.acts import Act
from sootline.core.ledger.canonical import Json
from sootline.tasks.exchange_gear import exchange_gear
from sootline.tasks.hand_out_gear import issue
from sootline.tasks.happening import fault
from sootline.tasks.people_deeds import (
    GearExchanged,
    GearGiven,
    MemberCame,
    MemberLeft,
    PeopleDeed,
    TriedOn,
)
from sootline.tasks.ports import Known, Rules
from sootline.tasks.recording import Book, also, refuse_unless, required
from sootline.tasks.register_things import register_things
from sootline.tasks.take_people import answer_exchange


def write_people(rules: Rules, book: Book, act: Act, job: Job, deed: PeopleDeed) -> None:
    """Record a deed about people and their gear.

    Raises:
        RefusedError: a piece may not, as it stands.
        BadInputError: somebody or something named is not known, or is left out.
    """
    match deed:
        case MemberCame(member=member):
            register_things(book, act, [member])
        case GearGiven(pieces=pieces, member=member):
            issue(book, act, pieces, holder=member)
            _tried(book, act, member, dict.fromkeys(pieces, ""))
        case TriedOn():
            _try_on(book, act, deed)
        case GearExchanged(facts=facts):
            answer = answer_exchange(rules, job, facts)
            exchange_gear(book, act, facts, answer, by=deed.by, place=deed.place)
        case MemberLeft():
            _leave(book, act, job, deed)
        case _:
            assert_never(deed)


def _try_on(book: Book, act: Act, deed: TriedOn) -> None:
    """Record who watched; what does not fit stays unsigned, with what was said."""
    required(by=deed.by)
    known = book.known(*deed.pieces)
    words = deed.said or ("fits" if deed.fits else "does not fit")
    said = {"said": words, "by": deed.by, "member": deed.member}
    noting = replace(act, idem=f"{act.idem}/tried")
    book.record([noting.entry(EntryKind.NOTED, component(one), said) for one in deed.pieces], known)
    _tried(book, act, deed.member, dict.fromkeys(deed.pieces, deed.by if deed.fits else ""))


def _tried(book: Book, act: Act, member: MemberId, signed: Mapping[ComponentId, str]) -> None:
    """Keep with the member which pieces were tried on, and who signed; empty is nobody yet."""
    thing = item(ItemKind.MEMBER, member)
    life = book.register.thing(thing)
    before = life.facts.get("tried") if life else None
    tried: dict[str, Json] = dict(before) if isinstance(before, dict) else {}
    tried.update({str(piece): by for piece, by in signed.items()})
    book.ledger.append([also(act, "tried", EntryKind.FACTS_CHANGED, thing, {"tried": tried})])


def _leave(book: Book, act: Act, job: Job, deed: MemberLeft) -> None:
    required(by=deed.by)
    thing = item(ItemKind.MEMBER, deed.member)
    if not book.registered(thing):
        raise BadInputError([fault(deed.member, "tasks.no_such_member")])
    known = book.known(*deed.returned)
    coming = [one for one in known if one.component.state.stage is not CareStage.TO_WASH]
    refuse_unless(coming, [Event(kind=EventKind.RETURNED_SOILED, by=deed.by)])
    drafts = list(_given_up(act, known, coming, deed.by))
    if drafts:
        book.record(drafts, known)
    left = {"left": f"{job.now:%Y-%m-%d}", "crew": "", "role": "", "changed_by": deed.by}
    book.ledger.append([act.entry(EntryKind.FACTS_CHANGED, thing, left)])


def _given_up(
    act: Act, known: Iterable[Known], coming: Iterable[Known], by: str
) -> Iterable[Draft]:
    back = {one.component.id for one in coming}
    for one in known:
        thing = component(one.component.id)
        if one.component.id in back:
            yield act.entry(EntryKind.RETURNED, thing, {"by": by})
        changes = {"owner": None, "changed_by": by}
        yield also(act, "owner", EntryKind.FACTS_CHANGED, thing, changes)
