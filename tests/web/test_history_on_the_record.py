"""The history as a screen: searched, verified, taken out."""

import json

from django.test import Client
from tests.integration.store_databases import Databases
from tests.web.pages import read, send, text_of
from tests.web.records import account


def test_the_record_is_read_again_and_said_to_be_whole_or_not(databases: Databases) -> None:
    """Every entry counts; without an anchor it says what that cannot show; a change shows."""
    # Only once the framework is set up.
    from django.db import connection  # noqa: PLC0415

    client = account(databases, owners=("223",))
    page = text_of(read(client, "/history/verify/"))

    assert "No damage" in page or "fit" in page
    assert "anchor" in page.casefold()
    with connection.cursor() as cursor:
        cursor.execute("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'")
        guards = cursor.fetchall()
        for name, _ in guards:
            cursor.execute(f'DROP TRIGGER "{name}"')
        cursor.execute(
            "UPDATE ledger_entry SET header = replace(header, '118', '119') WHERE seq = 3"
        )
    assert "do not fit together" in text_of(read(client, "/history/verify/"))


def test_the_record_is_taken_out_with_a_second_factor(databases: Databases) -> None:
    """One line an entry after a head; whoever has not shown a second factor is asked for it."""
    # Only once the framework is set up.
    from sootline.wiring.verifying import export_record  # noqa: PLC0415

    client = account(databases, owners=("223",))
    lines = list(export_record() or ())

    assert client.get("/history/export.jsonl").status_code == 403
    assert len(lines) > 10
    assert all(json.loads(line) for line in lines)


def test_an_office_without_the_right_takes_nothing_out(databases: Databases) -> None:
    """Looking is one right, taking it out another."""
    client = account(databases, owners=("223",), roles=("safety-officer",))

    assert client.get("/history/verify/").status_code == 200
    assert client.get("/history/export.jsonl").status_code == 403


def test_a_number_finds_a_pieces_whole_life(databases: Databases) -> None:
    """From its first entry on, however long ago."""
    client = account(databases, owners=("223",))

    assert "registered" in text_of(read(client, "/history/?q=0501")).casefold()


def test_the_demonstration_says_that_it_keeps_none(demo: Client) -> None:
    """There is nothing to verify and nothing to take out."""
    assert "keeps no record" in text_of(read(demo, "/history/verify/"))
    assert demo.get("/history/export.jsonl").status_code == 404
    assert send(demo, "/wash/load/1/start/")[0] == 200
