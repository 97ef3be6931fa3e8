"""A department's own list comes into the store by one command, and goes by one."""

import json
from pathlib import Path

from tests.integration.store.test_commands_store import GOOD, _run
from tests.integration.store_acts import draft, store_in
from tests.integration.store_databases import Database

from sootline.core.ledger import EntryKind, component
from sootline.storage.comparing import compare
from sootline.storage.models import ComponentRow
from sootline.storage.remembered import remember
from sootline.wiring.own_record import free_key

LIST = (
    "Tag No;Type;Assigned To;Shift;DOM;Status\n"
    "C1;coat;M01;A;03/04/25;in service\n"
    "B1;boots;M02;A;2022;in service\n"
)
SAID = ("--column", "Tag No=serial", "--kind", "boots=boots-leather", "--dates", "mdy",
        "--today", "2026-03-01", "--edition", "nfpa-1851/2020", "--into-record",
        "--json")  # fmt: skip


def test_in_and_out_and_in_again(tmp_path: Path) -> None:
    """The list, the same list again, taken back as one act, and anew."""
    here, gear = tmp_path / "d", tmp_path / "gear.csv"
    gear.write_text(LIST, encoding="utf-8")
    _run(here, "admin", "create", "Maren", "--member", "211", typed=f"{GOOD}\n")

    first = _run(here, "import", str(gear), *SAID, "--by", "211")
    again = _run(here, "import", str(gear), *SAID, "--by", "211")
    told = _run(here, "import", str(gear), *SAID[:-1], "--by", "211")

    assert (first.returncode, again.returncode) == (0, 0), first.stderr + again.stderr
    assert "came in before" in " ".join(told.stdout.split())
    key = told.stdout.split("as act ")[1].split(";")[0]
    undone = _run(here, "undo", key, "--by", "211", "--reason", "wrong list")
    assert undone.returncode == 0, undone.stderr
    assert _run(here, "undo", key, "--by", "211", "--reason", "again").returncode == 2
    anew = _run(here, "import", str(gear), *SAID[:-1], "--by", "211")
    assert "2 new members" in " ".join(anew.stdout.split()), anew.stdout + anew.stderr
    assert json.loads(_run(here, "ledger", "replay", "--json").stdout)["differing"] == []
    assert _run(here, "ledger", "verify").returncode == 0


def test_recording_needs_a_name(tmp_path: Path) -> None:
    """Who brings a list in stands in the record."""
    gear = tmp_path / "gear.csv"
    gear.write_text(LIST, encoding="utf-8")

    refused = _run(tmp_path / "d", "import", str(gear), *SAID[:-1])

    assert refused.returncode == 2
    assert "--by" in refused.stderr


def test_a_piece_of_which_nothing_stands_has_no_row(database: Database) -> None:
    """Its entries do; and its number is free."""
    store = store_in(database)
    said = {"kind": "hood", "state": {"custody": "hook", "stage": "checked"}}
    store.append([draft("i/component:H1", EntryKind.REGISTERED, component("H1"), **said)])  # type: ignore[arg-type]
    key = free_key("118", "i")  # type: ignore[arg-type]
    assert (key, ComponentRow.objects.count()) == ("i", 1)

    store.append([draft("u", EntryKind.CORRECTED, component("H1"), corrects=1, reason="wrong",
                        withdrawn=True)])  # fmt: skip

    assert (store.head().seq, ComponentRow.objects.count()) == (2, 0)
    assert compare(store).differing == ()
    assert free_key("118", "i") == "i-2"  # type: ignore[arg-type]


def test_rows_in_memory_forget_what_was_taken_back(database: Database) -> None:
    """The desk's rows are those of the tables."""
    store = store_in(database)
    said = {"kind": "hood", "state": {"custody": "hook", "stage": "checked"}}
    store.append([draft("i", EntryKind.REGISTERED, component("H1"), **said)])  # type: ignore[arg-type]
    assert list(remember().known) == ["H1"]

    store.append([draft("u", EntryKind.CORRECTED, component("H1"), corrects=1, reason="wrong",
                        withdrawn=True)])  # fmt: skip

    assert list(remember().known) == []
