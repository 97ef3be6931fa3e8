"""What did not fit together is answered for by somebody who saw it: how is it recorded?

An answer ends the question. What counts stays until something new is recorded.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from sootline.core.basis import ComponentId
from sootline.core.ledger import Appended, EntryKind, component
from sootline.core.ledger.acts import Act
from sootline.tasks.recording import Book, required


@dataclass(frozen=True, kw_only=True)
class Answered:
    """Somebody says how it was.

    Args:
        entries: the entries that did not fit together, as the question named them.
        said: how it was, in that person's words.
    """

    piece: ComponentId
    entries: tuple[int, ...]
    by: str
    said: str


def answer_question(book: Book, act: Act, answered: Answered) -> Sequence[Appended]:
    """Record an answer by name.

    Raises:
        BadInputError: nobody is named, nothing is said, or the record does not know the piece.
    """
    required(by=answered.by, said=answered.said)
    known = book.known(answered.piece)
    said = {"by": answered.by, "said": answered.said, "entries": list(answered.entries)}
    draft = act.entry(EntryKind.ANSWERED, component(answered.piece), said)
    return book.record([draft], known)
