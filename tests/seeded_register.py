"""A register of any size whose truth is known, with the gaps and slips of real ones.

Everything here is invented. Each piece is made first as it truly is; then its record loses or
garbles some of it: a blank, half a date, a letter for a digit, a sign nobody can read, another
dash, an end cut off, a label nobody can read, and a wrong date beside a right lot or a wrong lot
beside a right date. What is *not* done: both wrong at once, or one wrong and the other missing. No
register tells such a piece from one that is not meant.
"""

import datetime as dt
import random
from collections.abc import Iterator
from dataclasses import dataclass

from sootline.core.basis import ComponentId, DateSpan, KindId
from sootline.core.gear import Component, Label, Life, State
from tests.spec.test_dunmarrow import NOTICE

FIRST, LAST = dt.date(2021, 3, 1), dt.date(2021, 8, 31)
LOTS = ("2103", "2108")
EXCEPTED = "2105-C"
_KINDS = ("coat-liner", "coat-liner", "coat-liner", "trouser-liner", "coat-shell")
_STYLES = ("K4", "K4", "K4L", "K5")
_SLIPS = {"0": "O", "1": "I", "2": "Z", "5": "S", "6": "G", "8": "B"}
_DASHES = ("-", " ", "\u2013", "/", ".", "")
_DAYS = 600


@dataclass(frozen=True, kw_only=True)
class Seeded:
    """One piece as it is written down, and whether the notice truly means it."""

    piece: Component
    meant: bool


@dataclass
class _Draft:
    kind: str
    style: str | None
    made: str
    lot: str | None
    readable: bool = True
    disposed: bool = False


def seeded_register(count: int, seed: int) -> Iterator[Seeded]:
    """Make a register piece by piece; the notice is that of the county's recall."""
    chance = random.Random(seed)  # noqa: S311
    for number in range(count):
        day = dt.date(2020, 9, 1) + dt.timedelta(days=chance.randrange(_DAYS))
        lot = f"{day:%y%m}-{chance.choice('ABCDEF')}"
        kind, style = chance.choice(_KINDS), chance.choice(_STYLES)
        draft = _Draft(kind=kind, style=style, made=day.isoformat(), lot=lot)
        _spoil(draft, day, chance)
        yield Seeded(piece=_component(number, draft), meant=_meant(kind, style, day, lot))


def _meant(kind: str, style: str, day: dt.date, lot: str) -> bool:
    """Whether the notice means a piece, by its words and nothing of the program's."""
    inside = FIRST <= day <= LAST and LOTS[0] <= lot[:4] <= LOTS[1] and lot != EXCEPTED
    return kind == "coat-liner" and style in ("K4", "K4L") and inside


def _spoil(draft: _Draft, day: dt.date, chance: random.Random) -> None:
    """Lose or garble a little of a record."""
    draft.disposed = chance.random() < 0.05
    if chance.random() < 0.1:
        _contradict(draft, day, chance)
        return
    if chance.random() < 0.2:
        draft.made = chance.choice(
            (f"{day:%Y-%m}", f"{day:%Y}", f"..{day + dt.timedelta(days=40)}", "unknown")
        )
    if chance.random() < 0.2:
        draft.style = chance.choice((None, f" {draft.style} ".lower()))
    draft.readable = chance.random() >= 0.05
    draft.lot = _garbled(draft.lot or "", chance)


def _contradict(draft: _Draft, day: dt.date, chance: random.Random) -> None:
    """Write a wrong date beside the right lot, or the other way round."""
    other = day + dt.timedelta(days=chance.choice((-400, -250, 250, 400)))
    if chance.random() < 0.5:
        draft.made = other.isoformat()
    else:
        draft.lot = f"{other:%y%m}-A"


def _garbled(lot: str, chance: random.Random) -> str | None:
    kind = chance.randrange(10)
    if kind == 0:
        return None
    if kind == 1:
        return "".join(_SLIPS.get(sign, sign) if chance.random() < 0.5 else sign for sign in lot)
    if kind == 2:
        place = chance.randrange(len(lot))
        return f"{lot[:place]}?{lot[place + 1 :]}" if lot[place] != "-" else lot
    if kind == 3:
        return lot.replace("-", chance.choice(_DASHES))
    if kind == 4:
        return f"{lot[: chance.randrange(1, len(lot))]}..."
    return lot.lower() if kind == 5 else lot


def _component(number: int, draft: _Draft) -> Component:
    life = Life.DISPOSED if draft.disposed else Life.IN_SERVICE
    made = DateSpan() if draft.made == "unknown" else DateSpan.parse(draft.made)
    return Component(
        id=ComponentId(f"{number:06}"),
        kind=KindId(draft.kind),
        label=Label(style=draft.style, lot=draft.lot, readable=draft.readable),
        made=made,
        state=State(life=life),
    )


__all__ = ["NOTICE", "Seeded", "seeded_register"]
