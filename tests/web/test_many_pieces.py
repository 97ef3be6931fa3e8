"""However much gear there is, a page asks the database as often and stays small."""

import gzip
import re

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from tests.integration.store_acts import draft
from tests.integration.store_databases import Databases
from tests.large_record import fill
from tests.web.records import EVERYTHING

from sootline.core.ledger import EntryKind, component

PAGES = (
    "/", "/?crew=Engine+1+St+1", "/?page=2", "/wall/", "/radio/", "/call/", "/needs/", "/wash/",
    "/check/", "/pieces/?q=coat", "/pieces/0473-1/", "/people/", "/people/219-1/", "/due/",
    "/due/?all=1", "/handover/", "/paper/", "/rules/", "/history/", "/more/",
)  # fmt: skip
# Session and account, and the record's end; after an entry what was written since, and its rows.
MOST_QUESTIONS = 8
# Where somebody's exposures show, the look itself is written down: two more.
LOOK, LOOKED_AT = 2, ("/pieces/0473-1/",)
MOST_AFTER_AN_ENTRY = 22
MOST_BYTES = 60 * 1024


def _sit_at(databases: Databases, pieces: int) -> Client:
    """Sign in to a record of so many components, each washed once."""
    # Only once the framework is set up.
    from sootline.storage.models import User  # noqa: PLC0415

    databases.fresh("sqlite")
    fill(pieces, pieces)
    user = User.objects.make("118", None, EVERYTHING, member="118")
    client = Client(SERVER_NAME="localhost")
    client.force_login(user, backend="django.contrib.auth.backends.ModelBackend")
    return client


def _write(key: str) -> None:
    from sootline.wiring.store import open_store  # noqa: PLC0415

    open_store().append([draft(key, EntryKind.NOTED, component("0401-1"), said="x")])


def _questions(client: Client, path: str, mark: str) -> tuple[int, int]:
    """Count what a page asks right after an entry, and when nothing was written since.

    The guards are looked at once a minute by whichever page comes first; not by the second.
    """
    return min(_asked(client, path, f"{mark}{turn}") for turn in range(2))


def _asked(client: Client, path: str, mark: str) -> tuple[int, int]:
    client.get(path)
    _write(f"{mark}{path}")
    with CaptureQueriesContext(connection) as first:
        assert client.get(path).status_code == 200, path
    asked = len(first)
    with CaptureQueriesContext(connection) as again:
        client.get(path)
    return asked, len(again)


def test_the_number_of_questions_does_not_grow_with_the_gear(databases: Databases) -> None:
    """At 60 and at 600 components every page asks as often, and never often."""
    small = _sit_at(databases, 60)
    few = {path: _questions(small, path, "a") for path in PAGES}
    large = _sit_at(databases, 600)
    many = {path: _questions(large, path, "b") for path in PAGES}

    assert many == few
    assert max(first for first, _ in many.values()) <= MOST_AFTER_AN_ENTRY
    asked = {path: again - LOOK * (path in LOOKED_AT) for path, (_, again) in many.items()}
    assert max(asked.values()) <= MOST_QUESTIONS


@pytest.fixture(scope="module")
def county(databases: Databases) -> Client:
    """Sit at a record of eight stations."""
    return _sit_at(databases, 1300)


@pytest.mark.parametrize("path", PAGES)
def test_a_page_stays_small_over_many_pieces(county: Client, path: str) -> None:
    """Sixty people's rows at the most: under 60 kB on the line, whatever the department owns."""
    answer = county.get(path)

    assert answer.status_code == 200
    assert len(gzip.compress(answer.content)) < MOST_BYTES


def test_the_grid_turns_leaf_by_leaf(county: Client) -> None:
    """No member is on two leaves, and none is left out."""
    seen: list[str] = []
    for number in (1, 2):
        page = county.get(f"/?page={number}").content.decode()
        rows = set(re.findall(r'href="/people/([^/"]+)/"', page))
        assert 0 < len(rows) <= 60
        seen += rows

    assert len(seen) == len(set(seen)) == 96


def test_the_wall_turns_by_itself(county: Client) -> None:
    """The leaf after it comes with the next drawing; after the last, the first."""
    assert county.get("/wall/")["Refresh"] == "60; url=?page=2"
    assert county.get("/wall/?page=2")["Refresh"] == "60; url=?page=1"
