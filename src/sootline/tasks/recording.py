"""How does an act come into the record: looked at against what stands, then whole or not at all?

An act that was answered before, under the same key, is answered again without looking: by now
what it asked for has happened.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from sootline.core.basis import (
    BadInputError,
    ComponentId,
    Fault,
    Finding,
    ItemId,
    MessageId,
    SootlineError,
)
from sootline.core.gear import State
from sootline.core.gear.events import Event, Refusal
from sootline.core.gear.transitions import apply
from sootline.core.ledger import Appended, Draft, EntryKind, component
from sootline.core.ledger.acts import Act
from sootline.tasks.ports import Known, Ledger, Register


class RefusedError(SootlineError):
    """What was asked for may not be done as things stand; nothing was recorded.

    Args:
        refused: the components and why, each with what a reader needs to do about it.
    """

    def __init__(self, refused: Sequence[tuple[ComponentId, Finding]]) -> None:
        self.refused = tuple(refused)
        said = "; ".join(f"{piece}: {reason.message}" for piece, reason in self.refused)
        super().__init__(said)

    @property
    def faults(self) -> tuple[Fault, ...]:
        """The same as faults, each at its component."""
        return tuple(
            Fault(place=piece, message=reason.message, values=reason.values)
            for piece, reason in self.refused
        )


@dataclass(frozen=True, kw_only=True)
class Book:
    """Where acts are recorded, and what the record adds up to.

    Args:
        told: whether acts come in later than they were done: then they have happened, and what
            does not fit with the record by now is recorded and asked about, not refused.
    """

    ledger: Ledger
    register: Register
    told: bool = False

    def known(self, *pieces: ComponentId) -> tuple[Known, ...]:
        """Return components as they stand.

        Raises:
            BadInputError: with every number the record does not know.
        """
        found = [(piece, self.register.component(piece)) for piece in pieces]
        faults = [_absent(piece) for piece, known in found if known is None]
        if faults:
            raise BadInputError(faults)
        return tuple(known for _, known in found if known is not None)

    def registered(self, thing: ItemId) -> bool:
        """Whether somebody registered a thing; other entries may speak of it all the same."""
        life = self.register.thing(thing)
        return life is not None and life.registered

    def answered(self, act: Act, first: Draft) -> bool:
        """Whether the act need not be looked at: it was asked for before, or has happened."""
        return self.told or self.ledger.known(act.actor, first.idem)

    def record(self, drafts: Sequence[Draft], seen: Sequence[Known] = ()) -> tuple[Appended, ...]:
        """Record drafts of one act.

        Args:
            seen: the components as the act was looked at; an entry that came between refuses it.

        Raises:
            KeyReusedError: the act's key stands for other words.
            OvertakenError: somebody wrote about one of the components since.
        """
        last = {component(known.component.id): known.seq for known in seen if not self.told}
        placed: list[Draft] = []
        for draft in drafts:
            # Only the first entry about a thing follows what was seen; the next follow it.
            after = last.pop(draft.item, None)
            placed.append(draft if after is None else replace(draft, after=after))
        return self.ledger.append(placed)


def refuse_unless(known: Sequence[Known], events: Sequence[Event]) -> tuple[State, ...]:
    """Return the components' states after the same events on each.

    Raises:
        RefusedError: with every component that the events are refused on.
    """
    states: list[State] = []
    refused: list[tuple[ComponentId, Finding]] = []
    for one in known:
        outcome = _after(one.component.state, events)
        if isinstance(outcome, Refusal):
            refused.append((one.component.id, outcome.reason))
        else:
            states.append(outcome)
    if refused:
        raise RefusedError(refused)
    return tuple(states)


def also(act: Act, mark: str, kind: EntryKind, thing: ItemId, said: Mapping[str, object]) -> Draft:
    """Return the draft of one more entry of an act about a thing it has an entry about already.

    Args:
        mark: sets its key apart from the act's other entries about the thing.
    """
    draft = act.entry(kind, thing, said)
    return replace(draft, idem=f"{draft.idem}/{mark}")


def required(**texts: str) -> None:
    """Refuse an act that leaves out what it needs.

    Raises:
        BadInputError: with everything that is blank.
    """
    faults = [Fault(place=name, message=MessageId("tasks.blank")) for name in _blank(texts)]
    if faults:
        raise BadInputError(faults)


def _blank(texts: dict[str, str]) -> Iterator[str]:
    return (name for name, text in texts.items() if not text.strip())


def _after(state: State, events: Sequence[Event]) -> State | Refusal:
    for event in events:
        outcome = apply(state, event)
        if isinstance(outcome, Refusal):
            return outcome
        state = outcome
    return state


def _absent(piece: ComponentId) -> Fault:
    return Fault(
        place="component", message=MessageId("tasks.no_such_component"), values=(("id", piece),)
    )
