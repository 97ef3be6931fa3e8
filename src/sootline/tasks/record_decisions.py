"""What was decided on each component is written down with its reasons, and its holds open."""

import json
from collections.abc import Sequence

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.care import Decision
from sootline.core.job.codec import encode
from sootline.core.ledger import Appended, Draft, EntryKind, component
from sootline.core.ledger.acts import Act
from sootline.tasks.holds import open_hold
from sootline.tasks.recording import Book


def record_decisions(book: Book, act: Act, decisions: Sequence[Decision]) -> tuple[Appended, ...]:
    """Record decisions, and open every hold they ask for.

    A hold that is open already for the same cause is asked for again and stays one hold.

    Raises:
        BadInputError: there is none, or the record does not know a component.
    """
    if not decisions:
        raise BadInputError([Fault(place="decisions", message=MessageId("tasks.nothing"))])
    known = book.known(*(one.component for one in decisions))
    return book.record([draft for one in decisions for draft in _drafts(act, one)], known)


def _drafts(act: Act, decision: Decision) -> list[Draft]:
    document = json.loads(encode(Decision, decision, indent=None))
    # Terms and holds are said elsewhere: by the texts they come from, by entries of their own.
    said = {name: value for name, value in document.items() if name not in ("terms", "holds")}
    return [
        act.entry(EntryKind.DECIDED, component(decision.component), said),
        *(open_hold(act, decision.component, hold, mark=f"hold-{at}")
          for at, hold in enumerate(decision.open_holds)),
    ]  # fmt: skip
