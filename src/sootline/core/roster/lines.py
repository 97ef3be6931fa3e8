"""What does each line of a list say, cell by cell, and what in it cannot be read?"""

import datetime as dt
import re
from collections.abc import Callable, Iterator
from collections.abc import Mapping as Facts
from dataclasses import dataclass, field

from sootline.core.basis import DateSpan, Fault, Quantity, UnreadableValueError
from sootline.core.gear.catalogue import find_kind
from sootline.core.roster.cells import Sizes, read_count, read_mass, read_measure, read_size
from sootline.core.roster.columns import Column, Field, Mapping
from sootline.core.roster.dates import read_date
from sootline.core.roster.events import EventKind, read_event
from sootline.core.roster.kinds import Kinds, read_kinds
from sootline.core.roster.statuses import Status, read_status
from sootline.core.roster.tables import Row, Table, fault
from sootline.core.roster.text import folded, has_unseen, is_unknown, kept, unmarked
from sootline.core.roster.unreadable import UnreadableCellError

MOST_CODE = 100
MOST_TEXT = 400

_CODES = (Field.ID, Field.SERIAL, Field.LOT, Field.MEMBER, Field.SET)
_TEXTS = (Field.CREW, Field.ROLE, Field.PLACE, Field.MAKER, Field.STYLE, Field.EDITION, Field.SIZE)
_MEASURES = (
    Field.CHEST,
    Field.SLEEVE,
    Field.WAIST,
    Field.INSEAM,
    Field.HAND,
    Field.FOOT,
    Field.LENGTH,
    Field.RISE,
    Field.CUT,
    Field.WIDTH,
    Field.LETTER,
)
_DATES = (
    Field.MADE,
    Field.PURCHASED,
    Field.IN_SERVICE,
    Field.CLEANED,
    Field.INSPECTED,
    Field.RETIRED,
    Field.DATE,
)
_DIGITS_LOST = re.compile(r"\d(?:[.,]\d+)?E\+\d{1,3}", re.ASCII)
Value = str | Kinds | DateSpan | Status | Quantity | int | EventKind


@dataclass(frozen=True, kw_only=True)
class Line:
    """One piece, or one event, as one line gives it; what nobody knows is absent.

    Args:
        kinds: more than one where the line names a whole coat, trousers or helmet.
        kind_column: the word that begins the columns it was read from, in a list with one line
            per person.
    """

    row: int
    kinds: Kinds = ()
    kind_column: str = ""
    size: Sizes = ()
    facts: Facts[Field, Value] = field(default_factory=dict)

    def text(self, of: Field) -> str | None:
        """Return what the line says in words or as a code."""
        value = self.facts.get(of)
        return value if isinstance(value, str) else None

    def span(self, of: Field) -> DateSpan:
        """Return when, as far as the line says it."""
        value = self.facts.get(of)
        return value if isinstance(value, DateSpan) else DateSpan()

    @property
    def status(self) -> Status | None:
        """What its status word says."""
        value = self.facts.get(Field.STATUS)
        return value if isinstance(value, Status) else None

    @property
    def mass(self) -> Quantity | None:
        """What it weighs, dry."""
        value = self.facts.get(Field.MASS)
        return value if isinstance(value, Quantity) else None

    @property
    def wash_count(self) -> int | None:
        """How many cleanings it has had."""
        value = self.facts.get(Field.WASH_COUNT)
        return value if isinstance(value, int) else None

    @property
    def event(self) -> EventKind | None:
        """What was done with it, in a list of events."""
        value = self.facts.get(Field.EVENT)
        return value if isinstance(value, EventKind) else None


class LineReader:
    """Reads the rows of one table; a text that stands in many cells is read once.

    Args:
        placed: the columns that are read, with their positions.
        today: decides the century of short years.
    """

    def __init__(
        self,
        table: Table,
        placed: tuple[tuple[int, Column], ...],
        mapping: Mapping,
        today: dt.date,
    ) -> None:
        self.faults: list[Fault] = []
        self.unseen: list[str] = []
        self._table = table
        self._placed = placed
        self._known: dict[tuple[int, str], Value | None] = {}
        self._position = {(column.field, column.kind): index for index, column in placed}
        self._kinds = {folded(word): kinds for word, kinds in mapping.kinds}
        self._part_kinds = self._named_parts()
        statuses = {folded(word): status for word, status in mapping.statuses}
        self._readers: dict[Field, Callable[[str], Value]] = {
            **dict.fromkeys(_CODES, _read_code),
            **dict.fromkeys(_TEXTS, _read_text),
            **dict.fromkeys(_MEASURES, read_measure),
            **dict.fromkeys(_DATES, lambda text: read_date(text, today=today, order=mapping.dates)),
            Field.KIND: lambda text: read_kinds(text, self._kinds),
            Field.STATUS: lambda text: read_status(text, statuses),
            Field.WASH_COUNT: read_count,
            Field.EVENT: read_event,
        }

    @property
    def columns(self) -> tuple[Column, ...]:
        """The columns that are read."""
        return tuple(column for _, column in self._placed)

    def place(self, row: int) -> str:
        """Return where a line stands."""
        return self._table.place(row)

    def holds(self, of: Field) -> bool:
        """Whether a column of the table itself holds this."""
        return (of, "") in self._position

    def read(self, row: Row) -> Iterator[Line]:
        """Return the pieces a row speaks of; what cannot be read is added to the faults."""
        before = len(self.faults)
        shared: dict[Field, Value] = {}
        parts: dict[str, dict[Field, Value]] = {}
        for index, column in self._placed:
            value = self._value(row, index, column)
            if value is not None:
                facts = parts.setdefault(column.kind, {}) if column.kind else shared
                facts[column.field] = value
        if not parts:
            what = Field.EVENT if self.holds(Field.EVENT) else Field.KIND
            if what not in shared and len(self.faults) == before:
                self.refuse(row.number, what, "", f"roster.{what.value}.missing", value="")
            yield self._line(row, shared, "")
        for kind, facts in parts.items():
            yield self._line(row, shared | facts, kind)

    def refuse(self, row: int, of: Field, kind_column: str, message: str, **values: object) -> None:
        """Add a fault of a cell that was read before."""
        index = self._position.get((of, kind_column), self._position.get((of, "")))
        column = self._table.header[index] if index is not None else of.value
        place = self._table.place(row, index)
        self.faults.append(fault(place, message, row=row, column=column, **values))

    def _value(self, row: Row, index: int, column: Column) -> Value | None:
        """Return what a cell says; None where it says nothing, or nothing that can be read."""
        typed = row.cells[index]
        became_date = index in row.dated and column.field not in _DATES
        if (index, typed) in self._known and not became_date:
            return self._known[index, typed]
        try:
            if became_date:
                raise UnreadableCellError("roster.cell.became_date")
            text = unmarked(kept(typed))
            value = None if is_unknown(text) else self._read(text, column)
        except UnreadableValueError as error:
            place = self._table.place(row.number, index)
            told = {"row": row.number, "column": column.header, "value": typed}
            self.faults.append(fault(place, error.message, **told | dict(error.values)))
            return None
        if has_unseen(typed):
            self.unseen.append(self._table.place(row.number, index))
        else:
            self._known[index, typed] = value
        return value

    def _read(self, text: str, column: Column) -> Value:
        if column.field is Field.MASS:
            return read_mass(text, column.header)
        return self._readers[column.field](text)

    def _line(self, row: Row, facts: dict[Field, Value], kind: str) -> Line:
        """Put a line together; a size is read now that the kind is known."""
        kinds = self._part_kinds[kind] if kind else facts.pop(Field.KIND, ())
        assert isinstance(kinds, tuple)  # what read_kinds returns
        sizes: Sizes = tuple((of.value, str(facts[of])) for of in _MEASURES if of in facts)
        typed = facts.get(Field.SIZE)
        if kinds and isinstance(typed, str):
            try:
                sizes = (*read_size(typed, find_kind(kinds[0]).element), *sizes)
            except UnreadableValueError as error:
                told = {"value": typed} | dict(error.values)
                self.refuse(row.number, Field.SIZE, kind, error.message, **told)
        return Line(row=row.number, kinds=kinds, kind_column=kind, size=sizes, facts=facts)

    def _named_parts(self) -> dict[str, Kinds]:
        """Return the kinds that columns of a list with one line per person speak of."""
        found: dict[str, Kinds] = {"": ()}
        for index, column in self._placed:
            if column.kind in found:
                continue
            found[column.kind] = ()
            try:
                found[column.kind] = read_kinds(column.kind, self._kinds)
            except UnreadableValueError as error:
                row = self._table.header_row
                told = {"row": row, "column": column.header, "value": column.kind}
                place = self._table.place(row, index)
                self.faults.append(fault(place, error.message, **told | dict(error.values)))
        return found


def _read_code(text: str) -> str:
    if len(text) > MOST_CODE:
        raise UnreadableCellError("roster.text.long", count=str(len(text)), limit=str(MOST_CODE))
    if _DIGITS_LOST.fullmatch(text):
        raise UnreadableCellError("roster.cell.digits_lost")
    return text


def _read_text(text: str) -> str:
    if len(text) > MOST_TEXT:
        raise UnreadableCellError("roster.text.long", count=str(len(text)), limit=str(MOST_TEXT))
    return text
