"""Which entries do not fit together, thing by thing? Kept as rows beside what else is known.

A question is a row of the table of things under a name of its own, so that a screen reads all of
them at once, and a replay makes them anew.
"""

from collections.abc import Collection, Iterable

from sootline.core.basis import ItemId
from sootline.core.job.codec import decode, encode
from sootline.core.ledger import name_of
from sootline.core.ledger.lives import PieceLife, Question
from sootline.storage.models import ComponentRow, Thing

QUESTION = "question"


def put_questions(alias: str, items: Collection[ItemId], pieces: Iterable[PieceLife]) -> None:
    """Replace the questions about some things."""
    rows = Thing.objects.using(alias)
    rows.filter(kind=QUESTION, item__in=[f"{QUESTION}:{item}" for item in items]).delete()
    rows.bulk_create(
        Thing(item=f"{QUESTION}:{piece.item}", kind=QUESTION, registered=True, seq=piece.last_seq,
              facts=encode(tuple[Question, ...], piece.questions, indent=None))
        for piece in pieces
        if piece.item in items and piece.questions
    )  # fmt: skip


def read_questions(alias: str, *, station: str | None = None) -> tuple[Question, ...]:
    """Return every open question, the newest first.

    Args:
        station: only of what belongs to it, or to none; None is all.
    """
    rows = Thing.objects.using(alias).filter(kind=QUESTION).order_by("-seq")
    asked = [one for row in rows for one in decode(tuple[Question, ...], row.facts)]
    if station is None or not asked:
        return tuple(asked)
    names = [name_of(one.item) for one in asked]
    elsewhere = ComponentRow.objects.using(alias).filter(id__in=names).exclude(station=None)
    hidden = set(elsewhere.exclude(station=station).values_list("id", flat=True))
    return tuple(one for one, name in zip(asked, names, strict=True) if name not in hidden)
