"""A department's own list comes into the record: as one act, which can be taken back as one."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.gear import Component
from sootline.core.gear.records import Deed, Record
from sootline.core.job.jobs import Member
from sootline.core.ledger import Draft, Entry, EntryKind, ItemKind, component, item, kind_of
from sootline.core.ledger.acts import Act
from sootline.core.rulebook.contaminants import Level
from sootline.tasks.import_roster import Register
from sootline.tasks.recording import Book, also
from sootline.tasks.register_gear import draft_components
from sootline.tasks.register_things import draft_things

_KINDS = {
    Deed.ADVANCED_CLEANING: (EntryKind.WASH_WRITTEN_UP, {"level": Level.ADVANCED.value}),
    Deed.ADVANCED_INSPECTION: (EntryKind.INSPECTED_ADVANCED, {}),
    Deed.LINER_INSPECTION: (EntryKind.INSPECTED_LINER, {}),
    Deed.DISINFECTED: (EntryKind.DISINFECTED, {}),
}
# Nobody wrote down who did it; the entry must not claim that it was the one who types.
_NOBODY = "not recorded"
_DEEDS = frozenset(kind for kind, _ in _KINDS.values())


@dataclass(frozen=True, kw_only=True)
class TakenRoster:
    """What came in.

    Args:
        act: the act's key: with it everything can be taken back.
        members, components: how many are new.
        deeds: how many washes and inspections were added to pieces that were there.
        entries: how many entries are new; none when the list came in before.
    """

    act: str
    members: int
    components: int
    deeds: int
    entries: int


def take_in_roster(book: Book, act: Act, register: Register, *, station: str = "") -> TakenRoster:
    """Record what a list became: new members, new gear, and deeds on gear that is there.

    Args:
        station: to which the new gear belongs; blank is not said.

    Raises:
        BadInputError: nothing in it is new.
    """
    before = book.ledger.of_act(act.actor, act.idem)
    if before:
        return _told(act, before, new=0)
    there = {one.id: _there(book, one) for one in register.components}
    fresh = [one for one in register.components if there[one.id] is None]
    members = [one for one in register.members if not _registered(book, one)]
    drafts = [draft for one in register.components for draft in _deeds(act, one, there[one.id])]
    drafts += draft_things(book, act, members, station=station) if members else []
    drafts += draft_components(book, act, fresh, station=station) if fresh else []
    if not drafts:
        raise BadInputError([Fault(place="list", message=MessageId("tasks.nothing"))])
    done = tuple(one.entry for one in book.ledger.append(drafts))
    return _told(act, done, new=len(done))


def _told(act: Act, entries: Sequence[Entry], *, new: int) -> TakenRoster:
    headers = [entry.read_header() for entry in entries]
    registered = [one.item for one in headers if one.kind is EntryKind.REGISTERED]
    members = sum(kind_of(thing) is ItemKind.MEMBER for thing in registered)
    return TakenRoster(
        act=act.idem,
        members=members,
        components=len(registered) - members,
        deeds=sum(one.kind in _DEEDS for one in headers),
        entries=new,
    )


def _there(book: Book, one: Component) -> Component | None:
    known = book.register.component(one.id)
    return None if known is None else known.component


def _registered(book: Book, member: Member) -> bool:
    return book.registered(item(ItemKind.MEMBER, member.id))


def _deeds(act: Act, one: Component, there: Component | None) -> Iterator[Draft]:
    """Return the deeds of a list that a piece's record does not have yet."""
    if there is None:
        return
    lacking = [record for record in one.records if record not in there.records]
    for at, record in enumerate(lacking):
        if record.deed in _KINDS:
            kind, said = _KINDS[record.deed]
            about = {**said, **_said(record)}
            yield also(act, f"deed-{at}", kind, component(one.id), about)


def _said(record: Record) -> dict[str, str]:
    said = {"on": str(record.on), "by": record.by or _NOBODY, "said": record.note}
    return {name: value for name, value in said.items() if value}
