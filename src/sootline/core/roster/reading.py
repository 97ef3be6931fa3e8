"""What does a department's list become, and what must its officer know of it?

All or nothing: with any fault nothing comes in, and every fault is listed by its place.
"""

import datetime as dt
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace

from sootline.core.basis import (
    BadInputError,
    Bearing,
    Fault,
    Finding,
    KindId,
    MemberId,
    finding,
)
from sootline.core.gear.components import Component
from sootline.core.gear.state import Life
from sootline.core.intervals import Due
from sootline.core.roster.chronology import line_disorders
from sootline.core.roster.columns import Column, Field, Mapping, place_columns, unread
from sootline.core.roster.duplicates import LikelyDuplicate, likely_duplicates
from sootline.core.roster.history import read_history
from sootline.core.roster.lines import Line, LineReader
from sootline.core.roster.pieces import components_of, owner_of
from sootline.core.roster.tables import Table, fault, list_ground
from sootline.core.roster.text import skeleton
from sootline.core.roster.worklist import (
    Decision,
    DecisionRecord,
    Missing,
    decide_undated,
    hold_past,
    list_missing,
)

MOST_FAULTS = 1_000
# Several times what a department of 400 with two sets each tracks; a longer list is split.
MOST_PIECES = 25_000
_SHOWN = 20
_IN_USE = (Life.IN_SERVICE, Life.RESERVE, Life.TRAINING_ONLY)


@dataclass(frozen=True, kw_only=True)
class Wearer:
    """One person a list names."""

    id: MemberId
    crew: str = ""
    role: str = ""


@dataclass(frozen=True, kw_only=True)
class Intake:
    """What a list becomes; shown before anything is kept.

    Args:
        source: the file, and the sheet where there are several.
        rows: how many rows were read.
        columns: what each column was taken for.
        unread: the columns nothing was read from.
        components: the pieces that come in; of a list of events, all pieces with the events.
        counts: how many pieces of each kind.
        findings: what to know before trusting it: hidden rows, whole coats, missing rules.
        duplicates: pieces that are likely the same one; nothing was merged.
        missing: the worklist.
        past: first days out of pieces that are past under every reading; each is held.
        decision: what an officer decided for all undated pieces; None where nobody was asked.
    """

    source: str
    rows: int
    columns: tuple[Column, ...]
    unread: tuple[str, ...]
    components: tuple[Component, ...]
    wearers: tuple[Wearer, ...] = ()
    counts: tuple[tuple[KindId, int], ...]
    findings: tuple[Finding, ...]
    duplicates: tuple[LikelyDuplicate, ...] = ()
    missing: tuple[Missing, ...] = ()
    past: tuple[Due, ...] = ()
    decision: DecisionRecord | None = None


def read_list(
    table: Table,
    mapping: Mapping,
    *,
    today: dt.date,
    known: Iterable[Component] = (),
    due: Callable[[Component], Due | None] | None = None,
    decision: Decision | None = None,
) -> Intake:
    """Read a gear list, or a list of what was done with known gear.

    Args:
        mapping: how the list's columns and words are read; columns are suggested where it has none.
        known: pieces that are recorded already.
        due: a piece's first day out; None where no text limits its life.
        decision: one officer's decision for all pieces without a date.

    Raises:
        BadInputError: with every fault of the list, up to 1,000.
    """
    reader = LineReader(table, place_columns(table, mapping), mapping, today)
    recorded = tuple(known)
    lines = _lines(table, reader)
    if reader.holds(Field.EVENT):
        components = read_history(lines, recorded, reader, today)
        _refuse_any(table, reader.faults)
        return _intake(table, mapping, reader, components)
    components = _gear(lines, reader, recorded, today)
    _refuse_any(table, reader.faults)
    record: DecisionRecord | None = None
    past: tuple[Due, ...] = ()
    if decision:
        components, record = decide_undated(components, decision)
    if due:
        components, past = hold_past(components, due, today)
    intake = _intake(table, mapping, reader, components)
    return replace(
        intake,
        wearers=_wearers(lines),
        findings=(*intake.findings, *_gear_findings(table, lines, due)),
        duplicates=_duplicates(recorded, components),
        missing=list_missing(components),
        past=past,
        decision=record,
    )


def _lines(table: Table, reader: LineReader) -> tuple[Line, ...]:
    """Read the rows until there are more faults than anybody would read."""
    lines: list[Line] = []
    for row in table.rows:
        lines += reader.read(row)
        if len(reader.faults) >= MOST_FAULTS:
            _refuse_any(table, reader.faults)
    return tuple(lines)


def _refuse_any(table: Table, faults: list[Fault]) -> None:
    if len(faults) >= MOST_FAULTS:
        more = fault(table.name, "roster.too_many_faults", limit=MOST_FAULTS)
        raise BadInputError([*faults[:MOST_FAULTS], more])
    if faults:
        raise BadInputError(sorted(faults, key=lambda found: int(dict(found.values).get("row", 0))))


def _gear(
    lines: tuple[Line, ...], reader: LineReader, known: tuple[Component, ...], today: dt.date
) -> tuple[Component, ...]:
    """Return the pieces of all lines; what cannot be goes to the reader's faults."""
    taken: set[str] = {component.id for component in known}
    components: list[Component] = []
    for line in lines:
        _check_dates(line, reader, today)
        given = line.text(Field.ID)
        if given is not None and given in taken:
            reader.refuse(line.row, Field.ID, line.kind_column, "roster.id.twice", value=given)
        if line.kinds:
            pieces = tuple(components_of(line, taken))
            taken |= {piece.id for piece in pieces}
            components += pieces
        if len(components) > MOST_PIECES:
            place = reader.place(line.row)
            raise BadInputError([fault(place, "roster.too_many_pieces", limit=MOST_PIECES)])
        if len(reader.faults) >= MOST_FAULTS:
            break
    return tuple(components)


def _check_dates(line: Line, reader: LineReader, today: dt.date) -> None:
    dates = (
        Field.MADE,
        Field.PURCHASED,
        Field.IN_SERVICE,
        Field.CLEANED,
        Field.INSPECTED,
        Field.RETIRED,
    )
    spans = [(of, line.span(of)) for of in dates]
    for disorder in line_disorders(line.row, spans, today):
        values = {"value": disorder.date, "other": disorder.other, "today": today}
        reader.refuse(line.row, disorder.at, line.kind_column, disorder.message, **values)
    status, retired = line.status, line.span(Field.RETIRED)
    if status and status.life in _IN_USE and retired.latest is not None:
        message = "roster.order.retired_in_use"
        reader.refuse(line.row, Field.RETIRED, line.kind_column, message, value=retired)


def _wearers(lines: tuple[Line, ...]) -> tuple[Wearer, ...]:
    """Return each person once, with the first crew and role a line gives."""
    found: dict[MemberId, Wearer] = {}
    for line in lines:
        member = owner_of(line)
        if member is None:
            continue
        before = found.get(member, Wearer(id=member))
        crew = before.crew or line.text(Field.CREW) or ""
        found[member] = Wearer(
            id=member, crew=crew, role=before.role or line.text(Field.ROLE) or ""
        )
    return tuple(found.values())


def _duplicates(
    known: tuple[Component, ...], components: tuple[Component, ...]
) -> tuple[LikelyDuplicate, ...]:
    """Return the likely duplicates that at least one new piece belongs to."""
    new = {component.id for component in components}
    groups = likely_duplicates((*known, *components))
    return tuple(group for group in groups if not new.isdisjoint(group.pieces))


def _intake(
    table: Table, mapping: Mapping, reader: LineReader, components: tuple[Component, ...]
) -> Intake:
    counts = Counter(component.kind for component in components)
    left = unread(table, mapping)
    return Intake(
        source=f"{table.name}, {table.sheet}" if table.sheet is not None else table.name,
        rows=len(table.rows),
        columns=reader.columns,
        unread=left,
        components=components,
        counts=tuple(sorted(counts.items())),
        findings=(*table.notes, *_table_findings(table, left, reader)),
    )


def _table_findings(table: Table, left: tuple[str, ...], reader: LineReader) -> Iterator[Finding]:
    ground = list_ground(table.name)
    if left:
        names = ", ".join(left)
        yield finding(Bearing.WARNS, "roster.note.unread", ground, n=len(left), columns=names)
    if reader.unseen:
        places = _some(reader.unseen)
        yield finding(
            Bearing.WARNS, "roster.note.unseen", ground, n=len(reader.unseen), places=places
        )


def _gear_findings(table: Table, lines: tuple[Line, ...], due: object | None) -> Iterator[Finding]:
    ground = list_ground(table.name)
    whole = [line for line in lines if len(line.kinds) > 1]
    if whole:
        yield finding(Bearing.NOTES, "roster.note.whole", ground, n=len(whole))
    weighed = [str(line.row) for line in whole if line.mass]
    if weighed:
        rows = _some(weighed)
        yield finding(Bearing.WARNS, "roster.note.whole_mass", ground, n=len(weighed), rows=rows)
    alike = [group for group in _alike_members(lines) if len(group) > 1]
    for group in alike:
        members = ", ".join(sorted(group))
        yield finding(Bearing.ASKS, "roster.note.members_alike", ground, members=members)
    if due is None:
        yield finding(Bearing.ASKS, "roster.note.no_lifetime", ground)


def _alike_members(lines: tuple[Line, ...]) -> list[set[MemberId]]:
    alike: dict[str, set[MemberId]] = {}
    for member in {owner_of(line) for line in lines} - {None}:
        assert member is not None  # taken out above; the checker cannot see it
        alike.setdefault(skeleton(member), set()).add(member)
    return list(alike.values())


def _some(names: list[str]) -> str:
    """List the first few; the number says how many there are."""
    return ", ".join(names[:_SHOWN]) + (", ..." if len(names) > _SHOWN else "")
