"""What do the typed rows of a ticked check sheet say?

One row a line: the row's number or the piece's own, the letters of the points that felt dry, then
flaws by number, each with the letter of its point where it has one: "3 ABD 5C 9", "0412 - 1A".
A box left empty is "not dry"; a lone "-" is "dry nowhere". Empty lines and lines that begin with
"#" are passed over.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from string import ascii_uppercase

from sootline.core.basis import (
    BadInputError,
    ComponentId,
    Fault,
    MessageId,
    Moment,
    UnreadableValueError,
)
from sootline.core.exposure.calls import Answer
from sootline.core.rebuild.checks import AfterWashCheck, Felt, Flaw, FlawFound

_FLAWS = tuple(Flaw)
_FLAW = re.compile(r"(\d{1,2})([A-Z])?", re.ASCII)


@dataclass(frozen=True, kw_only=True)
class SheetRow:
    """One row as it is printed: its number, its piece, and the points in the order of letters."""

    number: int
    component: ComponentId
    points: tuple[MessageId, ...]


def read_rows(
    text: str, rows: Sequence[SheetRow], *, by: str, at: Moment
) -> tuple[AfterWashCheck, ...]:
    """Return a check for every typed row.

    Args:
        rows: the sheet's rows, as printed.
        by: who felt the pieces.
        at: when.

    Raises:
        BadInputError: with every fault, by line: a row that is not on the sheet, a row typed
            twice, a letter or flaw that is not there.
        UnreadableValueError: nobody's name is given.
    """
    known = {str(row.number): row for row in rows} | {row.component: row for row in rows}
    checks: dict[ComponentId, AfterWashCheck] = {}
    faults: list[Fault] = []
    for line, words in _lines(text):
        try:
            row = _row(words[0], known, checks)
            felt = _felt(words[1] if len(words) > 1 else "-", row)
            flaws = tuple(_flaw(word, row) for word in words[2:])
        except UnreadableValueError as error:
            place = f"line {line}"
            faults.append(Fault(place=place, message=error.message, values=error.values))
            continue
        checks[row.component] = AfterWashCheck(
            component=row.component, by=by, at=at, felt=felt, flaws=flaws
        )
    if faults:
        raise BadInputError(faults)
    return tuple(checks.values())


def _lines(text: str) -> Iterator[tuple[int, list[str]]]:
    for number, line in enumerate(text.splitlines(), 1):
        words = line.split()
        if words and not words[0].startswith("#"):
            yield number, words


def _row(
    word: str, known: dict[str, SheetRow], checks: dict[ComponentId, AfterWashCheck]
) -> SheetRow:
    row = known.get(word)
    if row is None:
        raise UnreadableValueError("rebuild.rows.unknown", row=word)
    if row.component in checks:
        raise UnreadableValueError("rebuild.rows.twice", row=word)
    return row


def _felt(word: str, row: SheetRow) -> tuple[Felt, ...]:
    letters = ascii_uppercase[: len(row.points)]
    ticked = "" if word == "-" else word.upper()
    wrong = [letter for letter in ticked if letter not in letters]
    if wrong:
        raise UnreadableValueError("rebuild.rows.letter", letter=wrong[0], letters=letters)
    return tuple(
        Felt(point=point, dry=Answer.YES if letter in ticked else Answer.NO)
        for letter, point in zip(letters, row.points, strict=True)
    )


def _flaw(word: str, row: SheetRow) -> FlawFound:
    match = _FLAW.fullmatch(word.upper())
    if not match or not 1 <= int(match[1]) <= len(_FLAWS):
        raise UnreadableValueError("rebuild.rows.flaw", flaw=word, most=str(len(_FLAWS)))
    letters = ascii_uppercase[: len(row.points)]
    if match[2] and match[2] not in letters:
        raise UnreadableValueError("rebuild.rows.letter", letter=match[2], letters=letters)
    place = row.points[letters.index(match[2])] if match[2] else ""
    return FlawFound(flaw=_FLAWS[int(match[1]) - 1], place=place)
