"""Records of any length with every sort of entry, drawn by chance from a seed."""

import datetime as dt
import random

from sootline.core.basis import DeviceId, InstallationId, MemberId
from sootline.core.ledger import (
    ClockSource,
    Draft,
    EntryKind,
    Established,
    Occurred,
    Second,
    component,
    foreign_draft,
)
from tests.ledger_cases import Book, draft, span

K = EntryKind
# The kinds whose payloads need nothing but a name.
PLAIN = (K.HUNG, K.DRIED, K.BAGGED, K.SORTED, K.TOUCH_CHECKED, K.WASHED_BY_HAND, K.LOST_SIGHT,
         K.FOUND, K.RETURNED_SOILED, K.BACK_ON_HOOK, K.REBUILT, K.LOOKED_OVER)  # fmt: skip
SAID = ("dry", "wet at the cuffs", "r\u00e1pido", "\U0001f525", 'a "quoted" \\ word', "\u0001", "")


def other_record() -> Book:
    """Return a short record of another department."""
    book = Book(InstallationId("d-05"))
    book.add(draft(K.WORN, "04:00", member="d5-7"), draft(K.BAGGED, "05:00"))
    return book


FOREIGN = other_record().entries


def grow(book: Book, chance: random.Random, count: int) -> None:
    """Append entries by chance; some are corrections, erasures, foreign, or flagged."""
    for _ in range(count):
        book.now += dt.timedelta(seconds=chance.choice((0, 1, 60, 3600, -60)))
        roll, last = chance.random(), book.head.seq
        target = chance.randrange(1, last + 1) if last else 0
        header = book.entries[target - 1].read_header() if target else None
        if header is not None and header.kind is not K.ERASED and roll < 0.08:
            thing = header.item
            book.add(draft(K.CORRECTED, "06:00", thing=thing, corrects=target, reason="typing",
                           withdrawn=True, key=f"k{last}"))  # fmt: skip
        elif header is not None and header.kind is not K.ERASED and roll < 0.12:
            if not book.entries[target - 1].erased:
                book.add(_erasure(header.item, target, last))
                book.erase(target)
        elif roll < 0.15:
            entry = chance.choice(FOREIGN)
            book.add(foreign_draft(entry, device=DeviceId("desk"), actor=MemberId("201"),
                                   established=Established.SIGNED_IN))  # fmt: skip
        else:
            book.add(_plain(book, chance, last))


def _erasure(thing: str, target: int, last: int) -> Draft:
    second = Second(person=MemberId("118"), established=Established.PIN)
    return draft(K.ERASED, "06:30", thing=component(thing.partition(":")[2]), erases=target,
                 second=second, reason="court order", key=f"k{last}")  # fmt: skip


def _plain(book: Book, chance: random.Random, last: int) -> Draft:
    first = book.now - dt.timedelta(minutes=chance.randrange(300))
    occurred = Occurred(
        earliest=first,
        latest=first + dt.timedelta(minutes=chance.choice((0, 0, 0, 30))),
        clock=chance.choice(tuple(ClockSource)),
        offset_s=chance.choice((None, 0, -660)),
    )
    return draft(
        chance.choice(PLAIN),
        occurred if chance.random() < 0.9 else span("04:00"),
        thing=component(f"{chance.randrange(5):04}"),
        device=chance.choice(("phone-a", "phone-b", "wall sheet")),
        actor=chance.choice(("201", "204")),
        key=f"k{last}",
        by=chance.choice(("118", "131")),
        said=chance.choice(SAID),
    )


def grown(seed: int, count: int) -> Book:
    """Return a record of a seed."""
    book = Book()
    grow(book, random.Random(seed), count)  # noqa: S311  # a seed must give the same record again
    return book
