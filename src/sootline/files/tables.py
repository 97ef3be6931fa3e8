"""Which table does a file from outside hold, read within hard bounds?

Nothing is believed of a file: neither its name nor what it says of its own size. It is read whole
or refused whole.
"""

import sys
from dataclasses import dataclass, field
from pathlib import Path

from sootline.core.basis import BadInputError, Bearing, Fault, Finding, finding
from sootline.core.roster import Row, Table, fault, folded, list_ground
from sootline.files.reading import read_bytes

MAX_COLUMNS = 200
MAX_ROWS = 100_000
MAX_CELL = 4_000
# What the texts of all cells may take in memory; far above any real list [byte].
MAX_TEXTS = 40 * 1024 * 1024
MOST_FAULTS = 1_000


@dataclass(frozen=True, kw_only=True)
class Wish:
    """How somebody wants a file read; None leaves it to the file.

    Args:
        encoding: of a file of separated values.
        sheet: of a workbook.
        header_row: the row that names the columns.
    """

    encoding: str | None = None
    sheet: str | None = None
    header_row: int | None = None


def read_table(path: Path, wish: Wish = Wish()) -> Table:
    """Read a file of separated values or a workbook as one table.

    Raises:
        BadInputError: the file cannot be read, is of another kind, is damaged, goes beyond a
            bound, or is not one table with one named column per value.
    """
    # Loaded here, because a department has either the one kind or the other.
    from sootline.files.csv_tables import csv_table  # noqa: PLC0415
    from sootline.files.xlsx_tables import xlsx_table  # noqa: PLC0415

    content = read_bytes(path)
    name = path.name
    if content.startswith(_ZIP):
        _refuse_name(path, wanted=_SHEET_NAMES)
        return xlsx_table(content, name, wish)
    if content.startswith(_OLD_OFFICE):
        raise refusal(name, "table.old_workbook")
    if path.suffix.lower() in _SHEET_NAMES:
        raise refusal(name, "table.not_workbook")
    for start, kind in _OTHER_KINDS:
        if content.startswith(start):
            raise refusal(name, "table.other_kind", kind=kind)
    return csv_table(content, name, wish)


_ZIP = b"PK"
_OLD_OFFICE = b"\xd0\xcf\x11\xe0"
_SHEET_NAMES = (".xlsx", ".xlsm", ".zip")
_OTHER_KINDS = (
    (b"%PDF", "PDF"),
    (b"\x89PNG", "PNG"),
    (b"\xff\xd8\xff", "JPEG"),
    (b"\x1f\x8b", "gzip"),
    (b"SQLite format", "SQLite"),
)


def _refuse_name(path: Path, wanted: tuple[str, ...]) -> None:
    if path.suffix.lower() not in wanted:
        raise refusal(path.name, "table.name_disagrees", value=path.suffix or "-")


def refusal(place: str, message: str, **values: object) -> BadInputError:
    """Build the refusal of a file for one fault."""
    return BadInputError([fault(place, message, **values)])


@dataclass(kw_only=True)
class TableBuilder:
    """Collects rows into a table, within the bounds, and remembers what was wrong.

    Args:
        wish: which row names the columns, if somebody said so.
    """

    name: str
    wish: Wish
    sheet: str | None = None
    notes: list[Finding] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    _header: tuple[str, ...] | None = None
    _header_row: int = 0
    _width: int = 0
    _kept: tuple[int, ...] = ()
    _rows: list[Row] = field(default_factory=list)
    _texts: dict[str, str] = field(default_factory=dict)
    _size: int = 0
    _empty: int = 0

    @property
    def width(self) -> int | None:
        """How many cells the row has that names the columns; None before it was met."""
        return self._width if self._header is not None else None

    def add(self, number: int, cells: list[str], dated: tuple[int, ...] = ()) -> None:
        """Add one row as it stands in the file.

        Raises:
            BadInputError: a bound is passed, or the row that names the columns does not.
        """
        if self._header is None:
            self._open(number, cells)
        elif not any(cell.strip() for cell in cells):
            self._empty += 1
        elif len(self._rows) >= MAX_ROWS:
            raise refusal(f"{self.name}:{number}", "table.rows", limit=MAX_ROWS)
        else:
            self._rows.append(self._row(number, cells, dated))

    def table(self) -> Table:
        """Return the table.

        Raises:
            BadInputError: no row names columns, or rows and columns disagree; all such rows.
        """
        if self.faults:
            raise BadInputError(self.faults)
        if self._header is None:
            raise refusal(self.name, "table.empty")
        if not self._rows:
            self.note(Bearing.WARNS, "table.no_rows")
        if self._empty:
            self.note(Bearing.NOTES, "table.empty_rows", n=self._empty)
        letters = tuple(letters_of(index) for index in self._kept)
        return Table(
            name=self.name,
            sheet=self.sheet,
            header=self._header,
            header_row=self._header_row,
            letters=letters if self.sheet is not None else (),
            rows=tuple(self._rows),
            notes=tuple(self.notes),
        )

    def note(self, bearing: Bearing, message: str, **values: object) -> None:
        """Keep something a reader should know before trusting the table."""
        self.notes.append(finding(bearing, message, list_ground(self.name), **values))

    def refuse(self, number: int, message: str, **values: object) -> None:
        """Add a fault of one row.

        Raises:
            BadInputError: there are more than anybody would read.
        """
        at = f":{self.sheet}!" if self.sheet is not None else ":"
        self.faults.append(fault(f"{self.name}{at}{number}", message, row=number, **values))
        if len(self.faults) >= MOST_FAULTS:
            more = fault(self.name, "table.too_many_faults", limit=MOST_FAULTS)
            raise BadInputError([*self.faults, more])

    def _open(self, number: int, cells: list[str]) -> None:
        """Take the row that names the columns: the first that is not empty, or the one wished."""
        wished = self.wish.header_row
        if (wished and number < wished) or not any(cell.strip() for cell in cells):
            return
        place = f"{self.name}:{number}"
        named = [cell.strip() for cell in cells]
        while named and not named[-1]:
            named.pop()
        if len(named) > MAX_COLUMNS:
            raise refusal(place, "table.columns", count=len(named), limit=MAX_COLUMNS)
        seen: dict[str, str] = {}
        for name in named:
            if name and folded(name) in seen:
                first = seen[folded(name)]
                self.refuse(number, "table.header_twice", value=name, first=first)
            seen.setdefault(folded(name), name)
        self._kept = tuple(index for index, name in enumerate(named) if name)
        self._header = tuple(named[index] for index in self._kept)
        self._header_row = number
        self._width = len(cells)

    def _row(self, number: int, cells: list[str], dated: tuple[int, ...]) -> Row:
        """Return the cells under the named columns; a value under no name is a fault."""
        unnamed = [index for index, cell in enumerate(cells) if cell and index not in self._kept]
        if unnamed:
            first = letters_of(unnamed[0])
            width = len(self._header or ())
            self.refuse(number, "table.unnamed", column=first, count=len(cells), limit=width)
        texts = [cells[index] if index < len(cells) else "" for index in self._kept]
        position = {index: at for at, index in enumerate(self._kept)}
        within = tuple(position[index] for index in dated if index in position)
        return Row(number=number, cells=tuple(map(self._once, texts)), dated=within)

    def _once(self, text: str) -> str:
        """Return the text itself, held once however often it stands in the table."""
        held = self._texts.get(text)
        if held is None:
            if len(text) > MAX_CELL:
                raise refusal(self.name, "table.cell", count=len(text), limit=MAX_CELL)
            self._size += sys.getsizeof(text)
            if self._size > MAX_TEXTS:
                limit = f"{MAX_TEXTS // 1024 // 1024} MiB"
                raise refusal(self.name, "table.texts", limit=limit)
            held = self._texts.setdefault(text, text)
        return held


def letters_of(index: int) -> str:
    """Return the letters of a column, counted from 0: A, B, ... Z, AA."""
    letters = ""
    while index >= 0:
        index, rest = divmod(index, 26)
        letters = chr(ord("A") + rest) + letters
        index -= 1
    return letters
