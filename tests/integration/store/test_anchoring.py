"""Anchors leave the machine: in a daily file, with each backup, in the foot of each sheet."""

import datetime as dt
import time
from pathlib import Path

import pytest
from django.db import connection
from tests.integration.store_acts import NOON, store_in, worn
from tests.integration.store_databases import Database

from sootline.core.basis import BadInputError
from sootline.core.ledger import read_anchors, take_anchor, verify_chain
from sootline.core.ledger.check_words import words_at
from sootline.storage.backups import write_backup
from sootline.storage.comparing import Difference, compare
from sootline.storage.ledger import LedgerStore
from sootline.storage.models import ComponentRow, Thing
from sootline.wiring.daily import begin_daily

DAY = dt.timedelta(days=1)


class _Clock:
    now = NOON

    def __call__(self) -> dt.datetime:
        return self.now


@pytest.fixture
def clock() -> _Clock:
    """Return a clock that a test may turn."""
    return _Clock()


@pytest.fixture
def store(database: Database, clock: _Clock) -> LedgerStore:
    """Begin a record."""
    return store_in(database, clock)


def _file(store: LedgerStore) -> Path:
    return store.folder / "anchors.jsonl"


def test_an_anchor_summed_up_is_one_read_from_the_beginning(store: LedgerStore) -> None:
    """What came since the last anchor is added to it, entry by entry."""
    for n in range(7):
        store.append([worn(f"k{n}", f"piece-{n}")])
        hashes = [entry.hash for entry in store.entries()]
        assert store.anchor(NOON) == take_anchor(store.head().installation, hashes, NOON)


def test_the_daily_file_has_one_anchor_a_day(store: LedgerStore, clock: _Clock) -> None:
    """However often it is asked for; and the record verifies against all of them."""
    for day in range(3):
        clock.now = NOON + day * DAY
        store.append([worn(f"a{day}")])
        assert store.keep_anchor(once_a_day=True) is not None
        store.append([worn(f"b{day}")])
        assert store.keep_anchor(once_a_day=True) is None

    kept = read_anchors(_file(store).read_text())

    assert [anchor.n for anchor in kept] == [1, 3, 5]
    assert len(verify_chain(store.entries(), kept).anchors) == 3


def test_nothing_new_is_not_anchored_again(store: LedgerStore, clock: _Clock) -> None:
    """A day without entries adds no line; an empty record has no anchor."""
    assert store.keep_anchor(once_a_day=True) is None
    store.append([worn("a")])
    store.keep_anchor(once_a_day=True)
    clock.now = NOON + DAY

    assert store.keep_anchor(once_a_day=True) is None


def test_a_backup_is_anchored(store: LedgerStore, tmp_path: Path) -> None:
    """Also on a day that has its anchor."""
    store.append([worn("a")])
    store.keep_anchor(once_a_day=True)
    store.append([worn("b")])

    write_backup(store, tmp_path / "b.zip")

    assert [anchor.n for anchor in read_anchors(_file(store).read_text())] == [1, 2]


def test_a_file_of_something_else_is_not_added_to(store: LedgerStore) -> None:
    """A wrong SOOTLINE_ANCHORS spoils no other file."""
    store.append([worn("a")])
    _file(store).write_text("my list\n")

    with pytest.raises(BadInputError):
        store.keep_anchor(once_a_day=True)
    assert _file(store).read_text() == "my list\n"


def test_the_file_may_lie_elsewhere(
    store: LedgerStore, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """On a share that is copied off the machine."""
    monkeypatch.setenv("SOOTLINE_ANCHORS", str(tmp_path / "off" / "a.jsonl"))
    store.append([worn("a")])
    store.keep_anchor(once_a_day=True)

    assert len(read_anchors((tmp_path / "off" / "a.jsonl").read_text())) == 1


def test_printed_words_tell_a_record_that_was_written_anew(store: LedgerStore) -> None:
    """The words at an earlier length stay what they were, whatever comes after."""
    store.append([worn("a"), worn("b", "0413")])
    words = words_at((entry.hash for entry in store.entries()), 2)
    store.append([worn("c")])

    hashes = [entry.hash for entry in store.entries()]

    assert words_at(hashes, 2) == words
    assert words_at([hashes[1], hashes[0]], 2) != words
    assert words_at(hashes, 9) is None


def test_tables_are_held_against_a_replay(store: LedgerStore) -> None:
    """A row that was changed, lost or invented is named; looking changes nothing."""
    store.append([worn("a", "0412"), worn("b", "0413")])
    assert compare(store).differing == ()
    ComponentRow.objects.filter(id="0412").update(stage="checked")
    ComponentRow.objects.filter(id="0413").delete()
    Thing.objects.create(item="bag:B7", kind="bag", facts="{}", registered=True, seq=1)

    found = compare(store)

    assert dict(found.differing) == {
        "component:0412": Difference.OTHER,
        "component:0413": Difference.MISSING,
        "bag:B7": Difference.EXTRA,
    }
    assert (found.entries, found.rows) == (2, 2)
    assert ComponentRow.objects.get().stage == "checked"
    assert connection.vendor in ("sqlite", "postgresql")


def test_the_serving_process_keeps_them_by_itself(store: LedgerStore, clock: _Clock) -> None:
    """Today's at once, and the next day's when it has come."""
    store.append([worn("a")])
    stop = begin_daily(store, every_s=0.02)
    try:
        assert _file(store).read_text().count("\n") == 1
        store.append([worn("b")])
        clock.now = NOON + DAY
        end = time.monotonic() + 10
        while _file(store).read_text().count("\n") < 2 and time.monotonic() < end:
            time.sleep(0.02)
    finally:
        stop.set()

    assert [anchor.n for anchor in read_anchors(_file(store).read_text())] == [1, 2]


def test_serving_goes_on_without_a_file_of_anchors(store: LedgerStore) -> None:
    """What lies there is no file of anchors: it is left, and nothing stops."""
    store.append([worn("a")])
    _file(store).mkdir()

    begin_daily(store).set()

    assert _file(store).is_dir()
