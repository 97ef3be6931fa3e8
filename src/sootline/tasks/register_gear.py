"""A component comes into the record: what is it, in which state, and what is known of it?"""

import json
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields

from sootline.core.basis import BadInputError, ComponentId, Fault, MessageId
from sootline.core.gear import Component, State, find_kind
from sootline.core.job.codec import decode, encode
from sootline.core.ledger import Appended, Draft, EntryKind, canonical, component
from sootline.core.ledger.acts import Act
from sootline.core.ledger.canonical import Json
from sootline.tasks.holds import open_hold
from sootline.tasks.recording import Book, required

# The rest follows from what happens to it.
_CHANGEABLE = frozenset(field.name for field in fields(Component)) - {
    "id", "state", "records", "wash_count"
}  # fmt: skip
_OURS = frozenset({"station", "grant"})


def register_components(
    book: Book, act: Act, components: Sequence[Component], *, station: str = "", grant: str = ""
) -> tuple[Appended, ...]:
    """Register components with what is known of them; all of them, or none.

    What was done to them before stands as records on paper; open holds become holds of the
    record.

    Args:
        station: to which they belong; blank is not said.
        grant: the grant they were bought with, whose retention then counts for their papers.

    Raises:
        BadInputError: one is registered already, stands there twice, or is of no known kind.
    """
    drafts = draft_components(book, act, components, station=station, grant=grant)
    return book.ledger.append(drafts)


def draft_components(
    book: Book, act: Act, components: Sequence[Component], *, station: str = "", grant: str = ""
) -> list[Draft]:
    """Return the entries that register components; arguments and faults as there."""
    if not components:
        raise BadInputError([Fault(place="components", message=MessageId("tasks.nothing"))])
    ours = {name: said for name, said in (("station", station), ("grant", grant)) if said}
    drafts = [draft for one in components for draft in _drafts(act, one, ours)]
    if not book.answered(act, drafts[0]):
        faults = tuple(_faults(book, components))
        if faults:
            raise BadInputError(faults)
    return drafts


def change_facts(
    book: Book, act: Act, piece: ComponentId, changes: Mapping[str, Json], *, by: str
) -> tuple[Appended, ...]:
    """Change what the register says of a component: its owner, set, size, label, station.

    Args:
        changes: fields of a component as a job file writes them; None takes a fact back.

    Raises:
        BadInputError: a field cannot be changed, or its value does not fit.
    """
    required(by=by)
    (known,) = book.known(piece)
    draft = act.entry(EntryKind.FACTS_CHANGED, component(piece), {**changes, "changed_by": by})
    if not book.answered(act, draft):
        _check_changes(known.component, changes)
    return book.record([draft], [known])


def register_payload(one: Component) -> dict[str, Json]:
    """Return what an entry says of a component that is registered."""
    document: dict[str, Json] = json.loads(encode(Component, one, indent=None))
    document.pop("id")
    # Said in full: what is left out counts as not known, not as usual.
    return {**document, "state": _state(one.state)}


def _drafts(act: Act, one: Component, ours: Mapping[str, Json]) -> Iterator[Draft]:
    thing = component(one.id)
    yield act.entry(EntryKind.REGISTERED, thing, {**register_payload(one), **ours})
    for at, hold in enumerate(one.state.open_holds):
        yield open_hold(act, one.id, hold, mark=f"hold-{at}")


def _state(state: State) -> dict[str, Json]:
    said: dict[str, Json] = {
        "custody": state.custody.value,
        "stage": state.stage.value,
        "assembly": state.assembly.value,
        "life": state.life.value,
        "place": state.place,
        "holder": state.holder,
    }
    return {name: value for name, value in said.items() if value is not None}


def _faults(book: Book, components: Sequence[Component]) -> Iterator[Fault]:
    counts = Counter(one.id for one in components)
    for at, one in enumerate(components):
        place = f"components[{at}]"
        if counts[one.id] > 1:
            yield _fault(f"{place}.id", "tasks.twice", id=one.id)
        known = book.register.component(one.id)
        if known is not None:
            yield _fault(f"{place}.id", "tasks.registered_already", id=one.id)
        try:
            find_kind(one.kind)
        except BadInputError as error:
            yield from (_fault(f"{place}.kind", f.message, **dict(f.values)) for f in error.faults)


def _check_changes(before: Component, changes: Mapping[str, Json]) -> None:
    """Hold changes to the fields there are, and the component they make to its form."""
    wrong = [name for name in changes if name not in _CHANGEABLE | _OURS]
    if wrong:
        raise BadInputError([_fault(name, "tasks.no_such_fact", name=name) for name in wrong])
    document = json.loads(encode(Component, before, indent=None))
    document |= {name: value for name, value in changes.items() if name not in _OURS}
    said = {name: value for name, value in document.items() if value is not None}
    find_kind(decode(Component, canonical(said)).kind)


def _fault(place: str, message: str, **values: str) -> Fault:
    return Fault(place=place, message=MessageId(message), values=tuple(values.items()))
