"""Which of the record items of an element does the record hold, and which are missing?

Source: NFPA 1851, 2014 edition, topic "records" (eleven items an element; the items are told in
our own words, as articles about the standard list them; confidence high).
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType
from typing import cast

from sootline.core.gear.state import Life
from sootline.core.ledger.folding import is_wash
from sootline.core.ledger.kinds import EntryKind
from sootline.core.ledger.lives import Effect, Line, PieceLife
from sootline.core.rulebook.contaminants import Level


class RecordItem(StrEnum):
    """One thing that must be on record about every element."""

    HOLDER = "holder"
    ISSUE = "issue"
    MAKER = "maker"
    IDENTIFICATION = "identification"
    MADE = "made"
    INSPECTIONS = "inspections"
    CLEANINGS = "cleanings"
    CLEANING_REASONS = "cleaning-reasons"
    REPAIRS = "repairs"
    RETIREMENT = "retirement"
    DISPOSAL = "disposal"


class RecordStanding(StrEnum):
    """How a record item stands: there, missing, or about something that has not happened."""

    THERE = "there"
    MISSING = "missing"
    NOT_YET = "not-yet"


@dataclass(frozen=True, kw_only=True)
class ItemStanding:
    """How one record item of one component stands.

    Args:
        entries: the entries that lack something, of a missing one; those that say it, of one
            that is there. None of either where nothing was recorded at all.
    """

    record_item: RecordItem
    standing: RecordStanding
    entries: tuple[int, ...] = ()


_R, _S, _K = RecordItem, RecordStanding, EntryKind
_ISSUES = (_K.ISSUED, _K.EXCHANGED, _K.LENT)
_INSPECTIONS = (_K.INSPECTED_ADVANCED, _K.INSPECTED_LINER)
_THOROUGH = (Level.ADVANCED, Level.SPECIALISED)
_Said = Callable[[Line], bool]


def list_record_items(life: PieceLife) -> tuple[ItemStanding, ...]:
    """Say of each of the eleven items how it stands for one component."""
    return tuple(
        ItemStanding(record_item=record_item, standing=standing, entries=entries)
        for record_item, (standing, entries) in (
            (record_item, _RULES[record_item](life)) for record_item in RecordItem
        )
    )


def missing_items(life: PieceLife) -> tuple[RecordItem, ...]:
    """Return the items that are missing, in the standard's order."""
    return tuple(
        one.record_item for one in list_record_items(life) if one.standing is RecordStanding.MISSING
    )


_Found = tuple[RecordStanding, tuple[int, ...]]


def _says(*names: str) -> _Said:
    """Ask whether a line's entry says all of these."""
    return lambda line: all(line.settled.fact.payload.get(name) for name in names)


def _lines(life: PieceLife, kinds: Iterable[EntryKind]) -> list[Line]:
    wanted = frozenset(kinds)
    return [
        line
        for line in life.history
        if line.settled.fact.kind in wanted
        and line.effect not in (Effect.WITHDRAWN, Effect.REFUSED)
    ]


def _each(lines: list[Line], said: _Said, *, none: RecordStanding) -> _Found:
    """Demand of every one of some entries that it says something."""
    lacking = tuple(line.seq for line in lines if not said(line))
    if lacking:
        return _S.MISSING, lacking
    return (_S.THERE, tuple(line.seq for line in lines)) if lines else (none, ())


def _register(*names: tuple[str, ...]) -> Callable[[PieceLife], _Found]:
    """Demand one of each of these from the register or the label."""

    def find(life: PieceLife) -> _Found:
        label = life.register.get("label")
        said = {**life.register, **(cast("dict[str, object]", label) if label else {})}
        there = all(any(said.get(name) for name in group) for group in names)
        return (_S.THERE if there else _S.MISSING), ()

    return find


def _issued(said: _Said) -> Callable[[PieceLife], _Found]:
    """Demand an issue of gear that is out with somebody or was used."""

    def find(life: PieceLife) -> _Found:
        lines = _lines(life, _ISSUES)
        used = life.state.life is not Life.RESERVE or bool(life.exposures)
        return _each(lines, said, none=_S.MISSING if used else _S.NOT_YET)

    return find


def _cleanings(said: _Said) -> Callable[[PieceLife], _Found]:
    """Look at thorough washes, and at those of which nobody said how thorough they were."""

    def find(life: PieceLife) -> _Found:
        lines = [line for line in life.history if is_wash(line) and _thorough(line)]
        return _each(lines, said, none=_S.NOT_YET)

    return find


def _thorough(line: Line) -> bool:
    return line.settled.fact.payload.get("level") in (None, *_THOROUGH)


def _after(kinds: Iterable[EntryKind], said: _Said) -> Callable[[PieceLife], _Found]:
    return lambda life: _each(_lines(life, kinds), said, none=_S.NOT_YET)


def _ended(kind: EntryKind, said: _Said, *lives: Life) -> Callable[[PieceLife], _Found]:
    """Demand the end of a life only where the life has ended."""

    def find(life: PieceLife) -> _Found:
        none = _S.MISSING if life.state.life in lives else _S.NOT_YET
        return _each(_lines(life, (kind,)), said, none=none)

    return find


_RULES: Mapping[RecordItem, Callable[[PieceLife], _Found]] = MappingProxyType(
    {
        _R.HOLDER: _issued(_says("holder")),
        _R.ISSUE: _issued(_says("condition")),
        _R.MAKER: _register(("maker",), ("model", "style")),
        _R.IDENTIFICATION: _register(("serial", "lot", "id")),
        _R.MADE: _register(("made",)),
        _R.INSPECTIONS: _after(_INSPECTIONS, _says("findings")),
        _R.CLEANINGS: _cleanings(_says("findings")),
        _R.CLEANING_REASONS: _cleanings(_says("reason", "by")),
        _R.REPAIRS: _after((_K.REPAIRED,), _says("by", "said")),
        _R.RETIREMENT: _ended(_K.RETIRED, _says("by"), Life.RETIRED, Life.DISPOSED),
        _R.DISPOSAL: _ended(_K.DISPOSED, _says("method"), Life.DISPOSED),
    }
)
