"""Which table does a sheet of a workbook hold?

Cells are read as they stand: text as text, a date as a day of the workbook's own calendar, a
number with every digit it keeps. A formula is refused by its address, because what it showed to
whoever typed it need not be what is stored. What the sheet says of its own size is not read.
"""

import datetime as dt
import re
from decimal import Decimal, InvalidOperation

from sootline.core.basis import Bearing
from sootline.core.roster import Table
from sootline.files.archives import Archive
from sootline.files.tables import (
    MAX_CELL,
    MAX_COLUMNS,
    TableBuilder,
    Wish,
    letters_of,
    refusal,
)
from sootline.files.xlsx_parts import Attributes, PartReader, Sheet, Workbook, read_workbook

_ADDRESS = re.compile(r"([A-Z]{1,3})(\d{1,7})", re.ASCII)
_PLAIN = re.compile(r"0|[1-9]\d{0,14}", re.ASCII)
_DAY_ZERO = dt.datetime(1899, 12, 30)  # noqa: DTZ001 - civil days carry no zone
_DAY_ZERO_1904 = dt.datetime(1904, 1, 1)  # noqa: DTZ001
# Before 1 March 1900 the 1900 calendar counts a day that never was.
_FIRST_SURE_DAY = 61
_LAST_DAY = 2_958_465
_MOST_DIGITS = 15
_SHOWN = 20


def xlsx_table(content: bytes, name: str, wish: Wish) -> Table:
    """Read one sheet of a workbook.

    Raises:
        BadInputError: the archive is hostile or damaged, the sheet is not there or not the only
            one, cells hold formulas or errors, or a bound is passed.
    """
    archive = Archive(content, name)
    workbook = read_workbook(archive)
    sheet = _chosen(workbook, name, wish)
    reader = _SheetReader(workbook, TableBuilder(name=name, wish=wish, sheet=sheet.name))
    PartReader(archive, sheet.part).parse(reader.start, reader.end, reader.text)
    _say_sheets(reader.builder, workbook, sheet)
    reader.say_hidden()
    return reader.builder.table()


def _chosen(workbook: Workbook, name: str, wish: Wish) -> Sheet:
    """Return the sheet that was asked for, or the first that can be seen."""
    known = ", ".join(sheet.name for sheet in workbook.sheets)
    if wish.sheet is not None:
        named = [sheet for sheet in workbook.sheets if sheet.name == wish.sheet]
        if not named:
            raise refusal(name, "table.xlsx.no_such_sheet", value=wish.sheet, known=known)
        return named[0]
    shown = [sheet for sheet in workbook.sheets if not sheet.hidden]
    if not shown:
        raise refusal(name, "table.xlsx.no_sheet", known=known or "-")
    return shown[0]


def _say_sheets(builder: TableBuilder, workbook: Workbook, sheet: Sheet) -> None:
    others = [other.name for other in workbook.sheets if other is not sheet and not other.hidden]
    hidden = [other.name for other in workbook.sheets if other is not sheet and other.hidden]
    builder.note(Bearing.NOTES, "table.xlsx.sheet_read", sheet=sheet.name)
    if others:
        builder.note(Bearing.WARNS, "table.xlsx.other_sheets", n=len(others), sheets=_some(others))
    if hidden:
        builder.note(Bearing.WARNS, "table.xlsx.hidden_sheets", n=len(hidden), sheets=_some(hidden))
    if sheet.hidden:
        builder.note(Bearing.WARNS, "table.xlsx.sheet_is_hidden", sheet=sheet.name)


class _SheetReader:
    """Takes in a sheet's elements as they come, and adds row after row."""

    def __init__(self, workbook: Workbook, builder: TableBuilder) -> None:
        self.builder = builder
        self._workbook = workbook
        self._shown_otherwise = workbook.dated_styles | workbook.padded_styles.keys()
        self._hidden_rows: list[str] = []
        self._hidden_columns: list[str] = []
        self._merged: list[str] = []
        self._number = 0
        self._cells: list[str] = []
        self._dated: list[int] = []
        self._column = -1
        self._in_cell = False
        self._kind = ""
        self._style = 0
        self._pieces: list[str] = []
        self._inside: str | None = None
        self._phonetic = False

    def start(self, name: str, attributes: Attributes) -> None:
        """Take in the start of an element."""
        if name == "c":
            self._open_cell(attributes)
        elif name in ("v", "t") and self._in_cell:
            self._inside = name
        elif name == "row":
            self._open_row(attributes)
        elif name == "f" and self._in_cell:
            self.builder.refuse(self._number, "table.xlsx.formula", address=self._address())
        elif name == "rPh":
            self._phonetic = True
        elif name == "mergeCell":
            self._merged.append(attributes.get("ref", "?")[:24])
        elif name == "col" and attributes.get("hidden") in ("1", "true"):
            self._hide_columns(attributes)

    def end(self, name: str) -> None:
        """Take in the end of an element."""
        if name == "c":
            self._close_cell()
        elif name in ("v", "t"):
            self._inside = None
        elif name == "rPh":
            self._phonetic = False
        elif name == "row":
            self.builder.add(self._number, self._cells, tuple(self._dated))

    def text(self, data: str) -> None:
        """Take in characters."""
        if self._inside and not self._phonetic:
            self._pieces.append(data)

    def say_hidden(self) -> None:
        """Note hidden rows and columns and merged cells; all of them were read as they stand."""
        found = (
            ("table.xlsx.hidden_rows", self._hidden_rows),
            ("table.xlsx.hidden_columns", self._hidden_columns),
            ("table.xlsx.merged", self._merged),
        )
        for message, names in found:
            if names:
                self.builder.note(Bearing.WARNS, message, n=len(names), places=_some(names))

    def _open_row(self, attributes: Attributes) -> None:
        given = attributes.get("r", "")
        number = int(given) if re.fullmatch(r"\d{1,7}", given, re.ASCII) else self._number + 1
        if number <= self._number:
            raise refusal(self.builder.name, "table.xlsx.order", row=number)
        self._number = number
        self._cells, self._dated, self._column = [], [], -1
        if attributes.get("hidden") in ("1", "true"):
            self._hidden_rows.append(str(number))

    def _open_cell(self, attributes: Attributes) -> None:
        match = _ADDRESS.fullmatch(attributes.get("r", ""))
        column = _index_of(match[1]) if match else self._column + 1
        if column <= self._column:
            raise refusal(self.builder.name, "table.xlsx.order", row=self._number)
        self._column = column
        self._in_cell = True
        self._kind = attributes.get("t", "n")
        style = attributes.get("s", "0")
        self._style = int(style) if re.fullmatch(r"\d{1,6}", style, re.ASCII) else 0
        self._pieces = []

    def _close_cell(self) -> None:
        self._in_cell = False
        typed = "".join(self._pieces)
        if not typed:
            return
        if self._column >= MAX_COLUMNS:
            place = f"{self.builder.name}:{self._address()}"
            raise refusal(place, "table.columns", count=self._column + 1, limit=MAX_COLUMNS)
        if len(typed) > MAX_CELL:
            place = f"{self.builder.name}:{self._address()}"
            raise refusal(place, "table.cell", row=self._number, count=len(typed), limit=MAX_CELL)
        self._cells += [""] * (self._column - len(self._cells))
        self._cells.append(self._value(typed))

    def _value(self, typed: str) -> str:
        """Return a cell's value as text; what cannot be one is a fault at its address."""
        if self._kind == "s":
            strings = self._workbook.strings
            known = typed.isascii() and typed.isdigit() and int(typed[:9]) < len(strings)
            return strings[int(typed)] if known else self._fault("table.xlsx.no_such_string", typed)
        if self._kind == "b":
            return "TRUE" if typed == "1" else "FALSE"
        if self._kind == "e":
            return self._fault("table.xlsx.error", typed)
        if self._kind in ("inlineStr", "str"):
            return typed
        if self._kind == "d":
            self._dated.append(self._column)
            return typed
        plain = self._style not in self._shown_otherwise and _PLAIN.fullmatch(typed)
        return typed if plain else self._numeric(typed)

    def _numeric(self, typed: str) -> str:
        """Return a number with all its digits, or the day it stands for."""
        try:
            number = Decimal(typed)
        except InvalidOperation:
            return self._fault("table.xlsx.number", typed)
        if not number.is_finite() or abs(number.adjusted()) > 300:
            return self._fault("table.xlsx.number", typed)
        if self._style in self._workbook.dated_styles:
            return self._day(number, typed)
        shown = repr(float(number))
        whole = Decimal(shown)
        if whole == whole.to_integral_value():
            digits = f"{whole:f}".partition(".")[0]
            if len(digits.lstrip("-")) > _MOST_DIGITS:
                return self._fault("table.xlsx.digits_lost", digits)
            return digits.zfill(self._workbook.padded_styles.get(self._style, 0))
        return f"{whole:f}"

    def _day(self, number: Decimal, typed: str) -> str:
        from_1904 = self._workbook.from_1904
        first = 0 if from_1904 else _FIRST_SURE_DAY
        if not first <= number <= _LAST_DAY - (1462 if from_1904 else 0):
            return self._fault("table.xlsx.day", typed)
        self._dated.append(self._column)
        zero = _DAY_ZERO_1904 if from_1904 else _DAY_ZERO
        moment = zero + dt.timedelta(seconds=round(float(number) * 86_400))
        midnight = moment.time() == dt.time()
        return moment.date().isoformat() if midnight else moment.isoformat()

    def _fault(self, message: str, value: str) -> str:
        self.builder.refuse(self._number, message, address=self._address(), value=value[:40])
        return ""

    def _address(self) -> str:
        return f"{letters_of(max(self._column, 0))}{self._number}"

    def _hide_columns(self, attributes: Attributes) -> None:
        first, last = (attributes.get(key, "") for key in ("min", "max"))
        if re.fullmatch(r"\d{1,5}", first, re.ASCII):
            letters = letters_of(int(first) - 1)
            wide = last != first and re.fullmatch(r"\d{1,5}", last, re.ASCII)
            self._hidden_columns.append(
                f"{letters}:{letters_of(int(last) - 1)}" if wide else letters
            )


def _index_of(letters: str) -> int:
    index = 0
    for letter in letters:
        index = index * 26 + ord(letter) - ord("A") + 1
    return index - 1


def _some(names: list[str]) -> str:
    return ", ".join(names[:_SHOWN]) + (", ..." if len(names) > _SHOWN else "")
