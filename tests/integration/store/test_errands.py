"""Long work is done once, found again when its worker died, and closed with a reason."""

import datetime as dt
import json
import logging
import threading
from pathlib import Path

import pytest
from tests.integration.store_acts import draft, store_in, worn
from tests.integration.store_databases import Database, Databases

from sootline.core.basis import MemberId, MessageId
from sootline.core.ledger import EntryKind, component
from sootline.project.logs import JsonLines
from sootline.storage.alive import is_silent, show_life, silence
from sootline.storage.errands import LEASE, ErrandStore
from sootline.storage.ledger import LedgerStore
from sootline.storage.models import EntryRow, ErrandRow
from sootline.tasks.errands import ErrandKind, ErrandState, Outcome, Wish
from sootline.wiring.worker import work

NAME = "Wenna Tregarth"
DONE = Outcome(message=MessageId("errands.verified"), values=(("n", "2"),))


class Clock:
    """A clock that a test sets."""

    def __init__(self) -> None:
        self.at = dt.datetime(2026, 3, 1, 12, tzinfo=dt.UTC)

    def __call__(self) -> dt.datetime:
        """Read it."""
        return self.at


@pytest.fixture
def clock() -> Clock:
    """Begin at noon."""
    return Clock()


@pytest.fixture
def errands(database: Database, clock: Clock) -> ErrandStore:
    """Make a store of errands with nothing asked for."""
    assert database.folder
    return ErrandStore(now=clock)


def _wish(key: str = "a", kind: ErrandKind = ErrandKind.VERIFY) -> Wish:
    return Wish(kind=kind, by=MemberId("118"), station=None, total=2, said={"x": "1"}, key=key)


def test_a_wish_is_read_back_as_it_was_asked(errands: ErrandStore) -> None:
    """Who asked, for what, and that nothing of it is done yet."""
    asked = errands.ask(_wish())

    assert (asked.wish, asked.state, asked.done) == (_wish(), ErrandState.WAITING, 0)
    assert errands.newest(ErrandKind.VERIFY, None) == asked
    assert errands.newest(ErrandKind.EXPORT, None) is None
    assert errands.newest(ErrandKind.VERIFY, "2") is None


def test_a_wish_sent_twice_is_one(errands: ErrandStore) -> None:
    """The second form is answered with what became of the first."""
    first = errands.ask(_wish())
    taken = errands.take("h:1")

    again = errands.ask(_wish())

    assert (again.id, again.state) == (first.id, ErrandState.RUNNING)
    assert taken is not None
    assert ErrandRow.objects.count() == 1


def test_an_errand_is_taken_by_one_worker(errands: ErrandStore) -> None:
    """The oldest comes first; nobody gets what another has."""
    errands.ask(_wish("a"))
    errands.ask(_wish("b"))
    taken = [errands.take(f"h:{n}") for n in range(3)]

    assert [one and one.wish.key for one in taken] == ["a", "b", None]


def test_progress_is_what_was_done_of_what_there_is(errands: ErrandStore) -> None:
    """The worker's last word stands; another's does not count."""
    errands.ask(_wish())
    taken = errands.take("h:1")
    assert taken is not None

    assert errands.beat(taken, "h:1", 1)
    assert not errands.beat(taken, "h:2", 2)
    found = errands.newest(ErrandKind.VERIFY, None)
    assert found is not None
    assert (found.done, found.wish.total) == (1, 2)


def test_a_silent_worker_loses_its_errand_to_the_next(errands: ErrandStore, clock: Clock) -> None:
    """Past the lease it waits again, and what the lost worker hands in late is refused."""
    errands.ask(_wish())
    lost = errands.take("h:1")
    assert lost is not None
    clock.at += LEASE / 2
    assert errands.reap() == 0
    clock.at += LEASE
    assert errands.abandoned() == 1
    assert (errands.reap(), errands.reap()) == (1, 0)
    again = errands.take("k:2")

    assert again is not None
    assert not errands.hand_in(lost, "h:1", DONE)
    assert errands.hand_in(again, "k:2", DONE)
    assert not errands.hand_in(again, "k:2", DONE)
    found = errands.newest(ErrandKind.VERIFY, None)
    assert found is not None
    assert (found.state, found.outcome) == (ErrandState.DONE, DONE)


def test_an_errand_that_ends_its_workers_is_given_up_with_the_reason(
    errands: ErrandStore, clock: Clock
) -> None:
    """After the third worker it is closed, and stays closed however often the reaper looks."""
    errands.ask(_wish())
    for _ in range(3):
        assert errands.take("h:1") is not None
        clock.at += 2 * LEASE
        assert errands.reap() == 1

    assert (errands.reap(), errands.take("h:1")) == (0, None)
    found = errands.newest(ErrandKind.VERIFY, None)
    assert found is not None
    assert found.state is ErrandState.GIVEN_UP
    assert found.outcome == Outcome(message=MessageId("errands.lost"), values=(("n", "3"),))


def test_a_worker_that_begins_takes_what_an_earlier_one_of_the_machine_had(
    errands: ErrandStore,
) -> None:
    """There is one worker to a machine, so nobody has to wait for the lease."""
    errands.ask(_wish("a"))
    errands.ask(_wish("b"))
    errands.take("here:1")
    errands.take("there:1")

    assert errands.reap(of_host="here") == 1
    taken = errands.take("here:2")
    assert taken is not None
    assert taken.wish.key == "a"


def test_old_errands_are_forgotten(errands: ErrandStore, clock: Clock) -> None:
    """They are no part of the record."""
    errands.ask(_wish())
    taken = errands.take("h:1")
    assert taken is not None
    errands.hand_in(taken, "h:1", DONE)
    clock.at += dt.timedelta(days=31)
    errands.reap()

    assert ErrandRow.objects.count() == 0


@pytest.fixture
def store(databases: Databases) -> LedgerStore:
    """Make a record of two entries in a file."""
    made = store_in(databases.fresh("sqlite"))
    made.append([draft("r", EntryKind.REGISTERED, component("0412"), kind="hood"), worn("w")])
    return made


def _done(kind: ErrandKind, clock: Clock) -> Outcome:
    """Ask, let a worker work until nothing waits, and return what came of it."""
    asked = ErrandStore(now=clock).ask(_wish(kind=kind))
    work(threading.Event(), until_idle=True)
    found = ErrandStore(now=clock).newest(kind, None)
    assert found is not None
    assert found.id == asked.id
    assert not found.open
    assert found.outcome is not None
    return found.outcome


def test_the_worker_verifies_the_record(store: LedgerStore, clock: Clock) -> None:
    """Every entry is read."""
    assert store.head().seq == 2
    outcome = _done(ErrandKind.VERIFY, clock)

    assert outcome.message == "errands.verified"
    assert dict(outcome.values)["n"] == "2"


def test_the_worker_exports_the_record(store: LedgerStore, clock: Clock) -> None:
    """The file holds every entry, is the owner's alone, and no half file lies beside it."""
    assert store.head().seq == 2
    file = Path(dict(_done(ErrandKind.EXPORT, clock).values)["file"])

    kept = [json.loads(line) for line in file.read_text(encoding="utf-8").splitlines()]
    assert sum("header" in line for line in kept) == 2
    assert file.stat().st_mode & 0o077 == 0
    assert [one.name for one in file.parent.iterdir()] == [file.name]
    file.unlink()


def test_a_mistake_closes_the_errand_and_the_log_names_nobody(
    store: LedgerStore, clock: Clock, caplog: pytest.LogCaptureFixture
) -> None:
    """What failed is told by its kind; a name in the record or the mistake stays out of the log."""
    store.append([draft("n", EntryKind.NOTED, component("0412"), said=NAME)])
    wish = Wish(kind=ErrandKind.IMPROVE, by=MemberId(NAME), station=None, total=1,
                said={"established": NAME, "device": NAME}, key="a")  # fmt: skip
    ErrandStore(now=clock).ask(wish)
    with caplog.at_level(logging.DEBUG):
        work(threading.Event(), until_idle=True)
    found = ErrandStore(now=clock).newest(ErrandKind.IMPROVE, None)
    lines = [JsonLines().format(record) for record in caplog.records if record.name[0] != "d"]

    assert found is not None
    assert found.state is ErrandState.GIVEN_UP
    assert found.outcome == Outcome(
        message=MessageId("errands.failed"), values=(("what", "ValueError"),)
    )
    assert any('"an errand failed"' in line and '"ValueError"' in line for line in lines)
    assert not any(NAME in line or "Wenna" in line for line in lines)
    assert EntryRow.objects.count() == 3


def test_a_worker_told_to_stop_leaves_its_errand_to_the_next(
    store: LedgerStore, clock: Clock
) -> None:
    """Nothing is handed in half done; the next worker of the machine begins it anew."""
    assert store.head().seq == 2
    over = threading.Event()
    ErrandStore(now=clock).ask(_wish())
    over.set()
    work(over)
    work(threading.Event(), until_idle=True)
    found = ErrandStore(now=clock).newest(ErrandKind.VERIFY, None)

    assert found is not None
    assert found.state is ErrandState.DONE


def test_signs_of_life(databases: Databases) -> None:
    """Who never gave one is silent; who just did is not."""
    folder = databases.fresh("sqlite").folder
    assert (silence(folder, "web"), is_silent(folder, "web")) == (None, True)
    show_life(folder, "web")

    since = silence(folder, "web")
    assert since is not None
    assert since < 5
    assert not is_silent(folder, "web")
