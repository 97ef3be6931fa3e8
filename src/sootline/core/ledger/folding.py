"""What do all entries add up to: the state and the life of every component?

By when things happened, then by their place in the record. `as_of` asks what the state was at a
moment; `known_at`, what the record said at one. Nothing is left out: what a component's state
refuses stays in its history, and somebody is asked.
"""

import datetime as dt
from collections import defaultdict
from collections.abc import Iterable, Sequence

from sootline.core.basis import DateSpan, DeviceId, Finding, ItemId, MemberId, UnreadableValueError
from sootline.core.gear.records import Deed, Record
from sootline.core.ledger.correcting import Amended, Settled, settle
from sootline.core.ledger.entries import Entry
from sootline.core.ledger.facts import Fact, read_facts
from sootline.core.ledger.facts import known_at as known_by
from sootline.core.ledger.forms import Payload
from sootline.core.ledger.items import ItemKind, kind_of
from sootline.core.ledger.kinds import EntryKind
from sootline.core.ledger.lives import (
    Effect,
    Exposure,
    Folded,
    Line,
    LoadLife,
    PieceLife,
    SuspectClock,
)
from sootline.core.ledger.ordering import in_order
from sootline.core.ledger.questions import ask
from sootline.core.ledger.walking import walk
from sootline.core.rulebook.contaminants import Level

_K = EntryKind
_DEEDS = {
    _K.ISSUED: Deed.ISSUED,
    _K.EXCHANGED: Deed.ISSUED,
    _K.WORN: Deed.WORN,
    _K.INSPECTED_ADVANCED: Deed.ADVANCED_INSPECTION,
    _K.INSPECTED_LINER: Deed.LINER_INSPECTION,
    _K.DISINFECTED: Deed.DISINFECTED,
}
_WASHES = (
    _K.WASHER_ENDED,
    _K.LOAD_ENDED,
    _K.WASHED_BY_HAND,
    _K.RECEIVED_WASHED,
    _K.WASH_WRITTEN_UP,
)
_REGISTERS = (_K.REGISTERED, _K.LABEL_READ, _K.FACTS_CHANGED)
_ADVANCED = frozenset({Level.ADVANCED, Level.SPECIALISED})
_Levels = dict[ItemId, str]


def fold(
    entries: Iterable[Entry],
    *,
    as_of: dt.datetime | None = None,
    known_at: dt.datetime | int | None = None,
) -> Folded:
    """Fold entries, in the record's order, into what they add up to.

    For a few components it is enough to hand in the entries that touch them: `touched` names
    them, `loads_of` the loads whose entries must come along.

    Raises:
        BadInputError: an entry is in a form this program does not know.
    """
    return fold_facts(read_facts(entries), as_of=as_of, known_at=known_at)


def fold_facts(
    facts: Iterable[Fact],
    *,
    as_of: dt.datetime | None = None,
    known_at: dt.datetime | int | None = None,
) -> Folded:
    """Fold facts that are read already; as `fold`."""
    settled = settle(known_by(facts, known_at))
    by_item: dict[ItemId, list[Settled]] = defaultdict(list)
    for one in settled:
        by_item[one.fact.item].append(one)
        if one.written.item != one.fact.item:
            # The thing it was first written about keeps the line in its history.
            by_item[one.written.item].append(_gone_from(one))
    loads = {item: found for item, found in by_item.items() if kind_of(item) is ItemKind.LOAD}
    levels = _levels(loads)
    pieces = tuple(
        _piece(item, found, loads, levels, as_of)
        for item, found in by_item.items()
        if kind_of(item) is ItemKind.COMPONENT
    )
    return Folded(
        pieces=pieces,
        loads=_loads(pieces, loads),
        clocks=_clocks(settled),
        as_of=as_of,
        known_at=known_at,
    )


def touched(facts: Iterable[Fact]) -> frozenset[ItemId]:
    """Name every thing whose life these facts may change, corrected names included."""
    found: set[ItemId] = set()
    for fact in facts:
        found.add(fact.item)
        moved = fact.text("item") if fact.kind is EntryKind.CORRECTED else None
        if moved:
            found.add(ItemId(moved))
    return frozenset(found)


def loads_of(facts: Iterable[Fact]) -> frozenset[ItemId]:
    """Name the loads whose entries belong to the life of these facts' components."""
    found: set[ItemId] = set()
    for fact in facts:
        said: list[object] = [fact.payload.get("load")]
        if fact.kind is EntryKind.CORRECTED and isinstance(fact.payload.get("payload"), dict):
            said.append(fact.payload["payload"].get("load"))  # type: ignore[union-attr]
        found.update(ItemId(f"load:{load}") for load in said if isinstance(load, str))
    return frozenset(found)


def _gone_from(settled: Settled) -> Settled:
    """Return the line that stays with the thing an entry was wrongly written about."""
    return Settled(
        fact=settled.written,
        written=settled.written,
        amended=Amended.WITHDRAWN,
        by=settled.by,
    )


def _levels(loads: dict[ItemId, list[Settled]]) -> _Levels:
    """Return how thorough each load's programme was, as far as it is said."""
    found = {}
    for item, settled in loads.items():
        for one in settled:
            level = one.fact.text("level")
            if level is not None and one.amended is not Amended.WITHDRAWN:
                found[item] = level
    return found


def _piece(
    item: ItemId,
    settled: list[Settled],
    loads: dict[ItemId, list[Settled]],
    levels: _Levels,
    as_of: dt.datetime | None,
) -> PieceLife:
    mine = [one for one in settled if as_of is None or one.fact.earliest <= as_of]
    in_loads = loads_of(one.fact for one in mine)
    for load in in_loads & loads.keys():
        mine += [one for one in loads[load] if as_of is None or one.fact.earliest <= as_of]
    ordered = in_order(mine)
    counted = [one for one in ordered if one.amended is not Amended.WITHDRAWN]
    walked = walk(counted, as_of=as_of)
    history = tuple(_line(one, walked.effects) for one in ordered)
    return PieceLife(
        item=item,
        state=walked.node.state,
        history=history,
        register=_register(counted),
        records=_records(history, levels),
        exposures=_exposures(counted, walked.held),
        washes=sum(is_wash(line) for line in history),
        washes_before=_before(counted),
        questions=tuple(ask(item, walked.node.state, history, walked)),
        last_seq=max((one.fact.seq for one in settled), default=0),
    )


def _line(settled: Settled, effects: dict[int, tuple[Effect, Finding | None]]) -> Line:
    if settled.amended is Amended.WITHDRAWN:
        return Line(settled=settled, effect=Effect.WITHDRAWN)
    effect, reason = effects[settled.fact.seq]
    return Line(settled=settled, effect=effect, reason=reason)


def _register(counted: Sequence[Settled]) -> Payload:
    merged: dict[str, object] = {}
    for one in counted:
        if one.fact.kind in _REGISTERS:
            merged.update(one.fact.payload)
    return merged  # type: ignore[return-value]  # what payloads hold, merged


def _before(counted: Sequence[Settled]) -> int | None:
    for one in counted:
        count = one.fact.payload.get("wash_count")
        if one.fact.kind is EntryKind.REGISTERED and isinstance(count, int):
            return count
    return None


def is_wash(line: Line) -> bool:
    """Whether a line of a history is a wash that counts as finished."""
    kind = line.settled.fact.kind
    if kind is EntryKind.WASH_WRITTEN_UP:
        return line.effect is not Effect.WITHDRAWN
    return kind in _WASHES and line.effect is Effect.TOOK


def _records(history: Sequence[Line], levels: _Levels) -> tuple[Record, ...]:
    found = []
    for line in history:
        fact = line.settled.fact
        deed = _DEEDS.get(fact.kind)
        if is_wash(line):
            level = fact.text("level") or levels.get(fact.item)
            deed = Deed.ADVANCED_CLEANING if level in _ADVANCED else None
        if deed is not None and _counts(line, deed):
            by, said = fact.text("by"), fact.text("said")
            found.append(Record(deed=deed, on=_day(fact), by=by, note=said))
    return tuple(found)


def _counts(line: Line, deed: Deed) -> bool:
    """Whether a deed was done; that a component was worn is a fact whatever state refuses it."""
    if line.effect is Effect.REFUSED:
        return deed is Deed.WORN
    return line.effect is not Effect.WITHDRAWN


def _day(fact: Fact) -> DateSpan:
    """Return the civil date of a deed: the one that is written out, or that of its time."""
    written = fact.text("on")
    if written is not None:
        try:
            return DateSpan.parse(written)
        except UnreadableValueError:
            pass
    return DateSpan(earliest=fact.earliest.date(), latest=fact.latest.date())


def _exposures(counted: Sequence[Settled], held: set[int]) -> tuple[Exposure, ...]:
    return tuple(
        Exposure(
            seq=one.fact.seq,
            call=one.fact.text("call"),
            member=MemberId(one.fact.text("member") or ""),
            occurred=one.fact.occurred,
            on_hold=one.fact.seq in held,
        )
        for one in counted
        if one.fact.kind is EntryKind.WORN
    )


def _loads(pieces: Iterable[PieceLife], loads: dict[ItemId, list[Settled]]) -> tuple[LoadLife, ...]:
    inside: dict[ItemId, list[ItemId]] = {item: [] for item in loads}
    for piece in pieces:
        put = (
            line.settled.fact
            for line in piece.history
            if line.settled.fact.kind is EntryKind.PUT_IN_WASHER
            and line.effect is not Effect.WITHDRAWN
        )
        for load in loads_of(put):
            inside.setdefault(load, []).append(piece.item)
    return tuple(
        LoadLife(item=item, pieces=tuple(found), history=tuple(in_order(loads.get(item, ()))))
        for item, found in inside.items()
    )


def _clocks(settled: Iterable[Settled]) -> tuple[SuspectClock, ...]:
    found: dict[tuple[DeviceId, int | None], list[int]] = defaultdict(list)
    for one in settled:
        fact = one.written
        if fact.occurred.suspect or fact.flags:
            offset = fact.occurred.offset_s if fact.occurred.suspect else None
            found[fact.device, offset].append(fact.seq)
    return tuple(
        SuspectClock(device=device, offset_s=offset, entries=tuple(entries))
        for (device, offset), entries in found.items()
    )
