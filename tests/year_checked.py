"""What did a simulated year miss? By code that shares nothing with what planned it."""

import datetime as dt
from collections import defaultdict

from sootline.core.basis import (
    ComponentId,
)
from sootline.core.gear.records import Deed
from sootline.core.ledger import EntryKind, name_of
from sootline.core.ledger.drafts import read_payload
from tests.year_simulated import Year

_A_YEAR = 2


def missed(year: Year) -> list[tuple[ComponentId, str, dt.date]]:
    """Find what was not done by its day, read from the texts of the entries and the first file.

    Two cleanings in any twelve months, an inspection every twelve months, a liner opened three
    years after its service began. Source: US care standard, 2020 edition, as articles about it
    tell; the three years are the department's own. The facts of the rule file, by other code.
    """
    done = _done(year)
    end = year.weeks[-1].day
    found = []
    for piece in year.job.components:
        served = piece.in_service.earliest
        assert served is not None
        cleaned = done[piece.id, Deed.ADVANCED_CLEANING.value]
        turns = (served, *sorted(cleaned), end)
        for first, third in zip(turns, turns[_A_YEAR:], strict=False):
            if third > _later(first, 1):
                found.append((piece.id, "cleaning", _later(first, 1)))
        last = served
        for day in (*sorted(done[piece.id, Deed.ADVANCED_INSPECTION.value]), end):
            if day > _later(last, 1):
                found.append((piece.id, "inspection", _later(last, 1)))
            last = day
        opened = done[piece.id, Deed.LINER_INSPECTION.value]
        first = _later(served, 3)
        if piece.kind.endswith("liner") and first <= end and not any(d <= first for d in opened):
            found.append((piece.id, "liner", first))
    return found


def _done(year: Year) -> dict[tuple[ComponentId, str], list[dt.date]]:
    """Collect on which days each piece was seen to."""
    done: dict[tuple[ComponentId, str], list[dt.date]] = defaultdict(list)
    for piece in year.job.components:
        for record in piece.records:
            assert record.on.earliest is not None
            done[piece.id, record.deed.value].append(record.on.earliest)
    thorough: set[str] = set()
    for entry in year.book.ledger.entries():
        header, said = entry.read_header(), read_payload(entry.payload or "{}")
        if header.kind is EntryKind.LOAD_STARTED and said.get("level") == "advanced":
            thorough.add(name_of(header.item))
        named = _DONE.get(header.kind)
        if header.kind is EntryKind.PUT_IN_WASHER and said.get("load") not in thorough:
            continue
        if named is not None:
            day = dt.date.fromisoformat(str(said.get("on", header.occurred.earliest.date())))
            done[ComponentId(name_of(header.item)), named].append(day)
    return done


def _later(day: dt.date, years: int) -> dt.date:
    if (day.month, day.day) == (2, 29):
        day = day.replace(day=28)
    return day.replace(year=day.year + years)


_DONE = {
    EntryKind.PUT_IN_WASHER: Deed.ADVANCED_CLEANING.value,
    EntryKind.INSPECTED_ADVANCED: Deed.ADVANCED_INSPECTION.value,
    EntryKind.INSPECTED_LINER: Deed.LINER_INSPECTION.value,
}
