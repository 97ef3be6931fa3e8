"""What is due next, a page at a time: the same as the whole list, however long it is."""

import datetime as dt
import json
from collections.abc import Iterator
from dataclasses import replace

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext, override_settings
from tests.integration.store_acts import draft, store_in
from tests.integration.store_databases import Database, Databases

from sootline.cli.main import main
from sootline.core.basis import ComponentId, DeviceId, MemberId
from sootline.core.intervals import Matter, Standing
from sootline.core.job.jobs import Job
from sootline.core.job.things import DepartmentFacts
from sootline.core.ledger import ClockSource, EntryKind, Established, Occurred, component
from sootline.core.ledger.acts import Act
from sootline.storage.dues import DueStore
from sootline.storage.ledger import LedgerStore
from sootline.storage.register import RegisterStore
from sootline.tasks.list_due import DueItem, due_gear
from sootline.tasks.list_due_page import DuePage, list_due_page
from sootline.tasks.ports import DueKey
from sootline.tasks.recording import Book
from sootline.tasks.register_gear import register_components
from sootline.tasks.register_things import describe_department
from sootline.wiring.demo import demo_job
from sootline.wiring.rules import RULES

TODAY = dt.date(2026, 3, 1)


@pytest.fixture
def store(database: Database) -> LedgerStore:
    """Register the gear of the invented department."""
    made = store_in(database)
    job = _job()
    facts = DepartmentFacts(department=job.department, guides=job.guides)
    describe_department(_book(made), _act("department"), facts)
    register_components(_book(made), _act("gear"), job.components)
    return made


def _job() -> Job:
    return demo_job()


def _act(key: str) -> Act:
    return Act(
        idem=key,
        occurred=Occurred.at(dt.datetime(2026, 3, 1, 12, tzinfo=dt.UTC), ClockSource.SERVER),
        device=DeviceId("office"),
        actor=MemberId("118"),
        established=Established.SIGNED_IN,
    )


def _book(store: LedgerStore) -> Book:
    return Book(ledger=store, register=RegisterStore())


def _page(
    after: DueKey | None = None, station: str | None = None, *, most: int = 200, days: int = 0
) -> DuePage:
    until = TODAY + dt.timedelta(days=days)
    register, due_days = RegisterStore(station=station), DueStore(station=station)
    return list_due_page(
        RULES, register, due_days, today=TODAY, until=until, after=after, most=most
    )


def _all(most: int, days: int) -> Iterator[DueItem]:
    after = None
    while True:
        page = _page(after, most=most, days=days)
        yield from page.items
        after = page.following
        if after is None:
            return


def _key(item: DueItem) -> tuple[dt.date, str, str]:
    day = item.due.first_day.earliest or item.due.first_day.latest
    assert day is not None
    return day, item.component.id, item.due.matter.value


@pytest.mark.usefixtures("store")
def test_all_pages_together_are_the_whole_list() -> None:
    """By day, each matter once, with the standing and reasons that a job file gives."""
    until = TODAY + dt.timedelta(days=4000)
    whole = [
        item
        for item in due_gear(RULES, _job(), today=TODAY).items
        if item.due.standing not in (Standing.WAITS, Standing.NOT_KNOWN) and _key(item)[0] <= until
    ]

    found = list(_all(most=37, days=4000))

    assert [_key(item) for item in found] == sorted(map(_key, whole))
    assert {(_key(item), item.due.standing) for item in found} == {
        (_key(item), item.due.standing) for item in whole
    }
    assert len(found) > 100


def test_what_is_done_moves_what_is_due(store: LedgerStore) -> None:
    """A piece that was inspected is due again later; one disposed of is due no more."""
    first = next(one for one in _all(200, 4000) if one.due.matter is Matter.ADVANCED_INSPECTION)
    piece, before = component(first.component.id), _key(first)
    inspected = EntryKind.INSPECTED_ADVANCED
    store.append([draft("w", inspected, piece, by="131", findings="none")])

    moved = {_key(one)[1:]: _key(one)[0] for one in _all(200, 4000)}

    assert moved[before[1:]] > before[0]
    store.append([draft("r", EntryKind.RETIRED, piece, by="118", reason="worn out")])
    store.append([draft("d", EntryKind.DISPOSED, piece, by="118", method="cut up", witness="120")])
    assert first.component.id not in {one.component.id for one in _all(200, 4000)}


def test_other_texts_move_everything(store: LedgerStore) -> None:
    """Where the department adopts another edition, every day is reckoned anew."""
    register, days = RegisterStore(), DueStore()
    assert days.bring_up("one", lambda _: [(Matter.RETIREMENT, TODAY)]) > 100
    assert days.bring_up("one", lambda _: []) == 0
    assert {row.key.day for row in days.due(TODAY, after=None, most=9)} == {TODAY}

    count = len(register.components())
    assert days.bring_up("two", lambda _: []) >= count
    assert days.due(TODAY, after=None, most=9) == ()
    assert store.head().seq > 0


def test_a_station_sees_its_own_and_what_is_nobodys(store: LedgerStore) -> None:
    """Another station's pieces are in no page of it."""
    one = replace(_job().components[0], set=None)
    for number, station in enumerate(("1", "2", "")):
        piece = replace(one, id=ComponentId(f"S{number}"))
        register_components(_book(store), _act(f"s{number}"), [piece], station=station)

    page = _page(station="1", days=4000)
    seen = {item.component.id for item in page.items}

    assert {"S0", "S2"} <= seen
    assert "S1" not in seen
    assert [_key(item) for item in page.items] == sorted(_key(item) for item in page.items)


@pytest.mark.usefixtures("store")
def test_a_page_costs_the_same_however_much_is_due() -> None:
    """A handful of questions, and no more for a page of many."""
    _page(days=4000)
    with CaptureQueriesContext(connection) as few:
        _page(most=2, days=4000)
    with CaptureQueriesContext(connection) as many:
        _page(most=200, days=4000)

    assert len(few.captured_queries) == len(many.captured_queries) <= 6


def test_a_page_is_one_walk_along_an_index(databases: Databases) -> None:
    """SQLite finds a page without looking at all rows and without sorting."""
    store_in(databases.fresh("sqlite"))
    days = DueStore(station="7")
    key = DueKey(TODAY, ComponentId("0412"), Matter.RETIREMENT)

    with CaptureQueriesContext(connection) as asked:
        assert days.due(TODAY, after=key, most=50) == ()
        assert DueStore().due(TODAY, after=key, most=50) == ()

    walks = [one["sql"] for one in asked.captured_queries if '"due_day"."day" <=' in one["sql"]]
    assert len(walks) == 3
    with connection.cursor() as cursor:
        for sql in walks:
            plan = cursor.execute(f"EXPLAIN QUERY PLAN {sql}").fetchall()
            (step,) = [row[3] for row in plan]
            assert "USING COVERING INDEX due_day_" in step, step


def test_pages_from_a_terminal(
    database: Database, store: LedgerStore, capsys: pytest.CaptureFixture[str]
) -> None:
    """Each page says where the next begins; a slip in that is told; nothing comes twice."""
    seen: list[tuple[str, str]] = []
    after: list[str] = []
    for _ in range(3):
        words = ["due", "--today", str(TODAY), "--most", "7", "--json", *after]
        with override_settings(DATA_DIR=database.folder):
            assert main(words) in (0, 1)
        page = json.loads(capsys.readouterr().out)
        seen += [(one["due"]["component"], one["due"]["matter"]) for one in page["items"]]
        if page["following"] is None:
            break
        after = ["--after", "/".join(page["following"])]

    assert len(seen) == len(set(seen)) == min(21, len(list(_all(200, 0))))
    assert main(["due", "--after", "2026-03-01"]) == 2
    assert "--after" in capsys.readouterr().err
    assert store.head().seq > 0


def test_a_kind_nobody_knows_stops_no_list(store: LedgerStore) -> None:
    """Another installation's piece has no day; the others' pages are as they were."""
    before = [_key(one) for one in _all(200, 4000)]
    store.append([draft("x", EntryKind.REGISTERED, component("X1"), kind="jetpack")])

    assert [_key(one) for one in _all(200, 4000)] == before
