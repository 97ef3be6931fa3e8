"""How is a row of a ticked sheet read: its piece, its letters, and flaws by number?"""

import re
from collections.abc import Container, Iterator, Mapping, Sequence
from dataclasses import dataclass
from string import ascii_uppercase

from sootline.core.basis import ComponentId, MessageId, UnreadableValueError
from sootline.core.rebuild.checks import Flaw, FlawFound

_FLAWS = tuple(Flaw)
_FLAW = re.compile(r"(\d{1,2})([A-Z])?", re.ASCII)


@dataclass(frozen=True, kw_only=True)
class SheetRow:
    """One row as it is printed: its number, its piece, and the points in the order of letters."""

    number: int
    component: ComponentId
    points: tuple[MessageId, ...]

    @property
    def letters(self) -> str:
        """The letters that stand for its points."""
        return ascii_uppercase[: len(self.points)]


def by_name(rows: Sequence[SheetRow]) -> dict[str, SheetRow]:
    """Return the rows of a sheet by what may be typed for them: their number or their piece."""
    return {str(row.number): row for row in rows} | {row.component: row for row in rows}


def typed_lines(text: str) -> Iterator[tuple[int, list[str]]]:
    """Return the number and the words of every line that says something."""
    for number, line in enumerate(text.splitlines(), 1):
        words = line.split()
        if words and not words[0].startswith("#"):
            yield number, words


def find_row(word: str, known: Mapping[str, SheetRow], typed: Container[ComponentId]) -> SheetRow:
    """Return the row that a word names.

    Raises:
        UnreadableValueError: there is none on the sheet, or it was typed before.
    """
    row = known.get(word)
    if row is None:
        raise UnreadableValueError("rebuild.rows.unknown", row=word)
    if row.component in typed:
        raise UnreadableValueError("rebuild.rows.twice", row=word)
    return row


def ticked(word: str, row: SheetRow) -> tuple[MessageId, ...]:
    """Return the points whose letters a word holds; a lone "-" is none.

    Raises:
        UnreadableValueError: a letter stands for no point of the row.
    """
    letters = "" if word == "-" else word.upper()
    for letter in letters:
        _point(letter, row)
    return tuple(
        point for letter, point in zip(row.letters, row.points, strict=True) if letter in letters
    )


def read_flaw(word: str, row: SheetRow) -> FlawFound:
    """Return the flaw that a number names, at the point of its letter where it has one.

    Raises:
        UnreadableValueError: the flaw or the point is not there.
    """
    match = _FLAW.fullmatch(word.upper())
    if not match or not 1 <= int(match[1]) <= len(_FLAWS):
        raise UnreadableValueError("rebuild.rows.flaw", flaw=word, most=str(len(_FLAWS)))
    place = _point(match[2], row) if match[2] else ""
    return FlawFound(flaw=_FLAWS[int(match[1]) - 1], place=place)


def _point(letter: str, row: SheetRow) -> MessageId:
    if letter not in row.letters:
        raise UnreadableValueError("rebuild.rows.letter", letter=letter, letters=row.letters)
    return row.points[row.letters.index(letter)]
