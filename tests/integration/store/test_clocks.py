"""The machine's clock is wrong, or the season changes it: order stays, flags say so, nothing stops.

The urgent entry is a hold: it must come in whatever the clock reads.
"""

import datetime as dt

import pytest
from tests.integration.store_acts import NOON, draft, store_in, worn
from tests.integration.store_databases import Database

from sootline.core.ledger import ClockFlag, EntryKind, component, verify_chain
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.folding import fold_facts
from sootline.storage.models import ComponentRow

HOLD = {"cause": "powder", "question": "care.ask.powder", "decider": "safety-officer",
        "deputy": "chief"}  # fmt: skip
AHEAD = (ClockFlag.AHEAD,)


class _Clock:
    now = NOON

    def __call__(self) -> dt.datetime:
        return self.now


@pytest.mark.parametrize(
    ("reads", "flags"),
    [
        (NOON - dt.timedelta(hours=1), {ClockFlag.BACK, ClockFlag.FUTURE}),
        (NOON - dt.timedelta(days=1), {ClockFlag.BACK, ClockFlag.FUTURE}),
        (dt.datetime(1970, 1, 1, tzinfo=dt.UTC), {ClockFlag.BACK, ClockFlag.FUTURE}),
        (NOON.replace(year=2036), {ClockFlag.AHEAD}),
        (NOON + dt.timedelta(hours=23), set()),
    ],
    ids=["an hour back", "a day back", "1970", "ten years ahead", "the next day"],
)
def test_a_hold_comes_in_whatever_the_clock_reads(
    database: Database, reads: dt.datetime, flags: set[ClockFlag]
) -> None:
    """It is flagged where the clock cannot be right, stands where it was written, and holds."""
    clock = _Clock()
    store = store_in(database, clock)
    store.append([worn("before", "0412")])
    clock.now = reads

    (done,) = store.append(
        [draft("hold", EntryKind.HOLD_OPENED, component("0412"), **HOLD)]  # type: ignore[arg-type]
    )

    assert set(done.entry.read_header().flags) == flags
    assert done.entry.seq == 2
    assert ComponentRow.objects.get(id="0412").holds == 1


def test_a_clock_put_right_is_trusted_again(database: Database) -> None:
    """Ten years ahead for one entry, then right: only the one is flagged, the chain is whole."""
    clock = _Clock()
    store = store_in(database, clock)
    for n, now in enumerate([NOON, NOON.replace(year=2036), NOON + dt.timedelta(minutes=5)]):
        clock.now = now
        store.append([worn(f"k{n}", "0412")])

    there = list(store.entries())

    assert [one.read_header().flags for one in there] == [(), AHEAD, ()]
    assert [one.seq for one in there] == [1, 2, 3]
    assert verify_chain(there).intact


@pytest.mark.parametrize(
    ("before", "after"),
    [
        # Clocks go back from 02:00 to 01:00: the same reading comes twice.
        ("2026-11-01T01:50:00-06:00", "2026-11-01T01:10:00-07:00"),
        # And forward from 02:00 to 03:00: an hour that never was.
        ("2026-03-08T01:59:00-07:00", "2026-03-08T03:01:00-06:00"),
    ],
    ids=["autumn", "spring"],
)
def test_daylight_saving_is_no_jump(database: Database, before: str, after: str) -> None:
    """Moments carry their offset: nothing is flagged, and what came later stays later."""
    clock = _Clock()
    store = store_in(database, clock)
    for key, text in (("a", before), ("b", after)):
        clock.now = dt.datetime.fromisoformat(text)
        one = worn(key, "0412")
        store.append([one])

    there = list(store.entries())
    piece = fold_facts(read_facts(there)).piece(component("0412"))

    flags = {flag for one in there for flag in one.read_header().flags}
    assert flags <= {ClockFlag.FUTURE}  # the wearing itself is dated by another clock
    assert [line.seq for line in piece.history] == [1, 2]
    recorded = [one.read_header().recorded_at for one in there]
    assert recorded[0] < recorded[1]
