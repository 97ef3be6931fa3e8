"""What stands in a table, and where in the file, whatever kind of file it came from?"""

from dataclasses import dataclass

from sootline.core.basis import Confidence, EditionId, Fault, Finding, Ground, MessageId, RuleId


@dataclass(frozen=True, kw_only=True, slots=True)
class Row:
    """One row as it stands in the file.

    Args:
        number: its line or row in the file, counted from 1.
        cells: one text per column of the header.
        dated: the columns that hold a real date of a workbook, counted from 0.
    """

    number: int
    cells: tuple[str, ...]
    dated: tuple[int, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Table:
    """One sheet or one file of separated values, with nothing interpreted.

    Args:
        name: the file's name, for pointing at places.
        sheet: the sheet that was read; None where a file has no sheets.
        header: the columns' names.
        letters: the columns' letters in a workbook; empty elsewhere.
        notes: what a reader should know before trusting the table: other sheets, hidden rows.
    """

    name: str
    sheet: str | None = None
    header: tuple[str, ...]
    header_row: int = 1
    letters: tuple[str, ...] = ()
    rows: tuple[Row, ...] = ()
    notes: tuple[Finding, ...] = ()

    def place(self, row: int, column: int | None = None) -> str:
        """Return where a value stands, as one would point at it in the file."""
        if self.sheet is not None:
            letter = self.letters[column] if column is not None else ""
            return f"{self.name}:{self.sheet}!{letter}{row}"
        named = f":{self.header[column]}" if column is not None else ""
        return f"{self.name}:{row}{named}"


def fault(place: str, message: str, **values: object) -> Fault:
    """Build a fault from plain keyword values, each kept as text."""
    named = tuple((name, str(value)) for name, value in values.items())
    return Fault(place=place, message=MessageId(message), values=named)


def list_ground(place: str) -> Ground:
    """Return what a finding cites when it rests on the list that was handed in."""
    return Ground(
        rule=RuleId("register.list"),
        edition=EditionId("statement"),
        source=place,
        confidence=Confidence.STATED,
    )
