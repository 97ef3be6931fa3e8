"""Many write at once, replies get lost, processes die, the disk fills: the record holds."""

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from django.db import DatabaseError, connections
from tests.conftest import COULD_NOT
from tests.integration.store_acts import store_in, worn
from tests.integration.store_databases import FOLDER, Database, Databases, lead_to
from tests.integration.store_kills import kill_writers
from tests.integration.store_races import ask_at_once, drop_replies, edit_at_once

from sootline.core.ledger import verify_chain
from sootline.storage.gate import gate
from sootline.storage.models import EntryRow

ROUNDS = 5
KILLS = 50


def test_eight_editors_of_one_piece(database: Database) -> None:
    """All saw the same last entry: one wins, seven are shown the winner's."""
    found = edit_at_once(store_in(database), rounds=ROUNDS)

    assert (found.one_winner, found.shown) == (ROUNDS, 7 * ROUNDS)


def test_lost_replies(database: Database) -> None:
    """Four writers whose replies are dropped half the time and asked for again: each entry once."""
    found = drop_replies(store_in(database), each=15, drop=0.5, seed=1)

    assert (found.doubled, found.missing, found.intact) == (0, 0, True)
    assert found.dropped >= 24
    assert EntryRow.objects.count() == 60


def test_the_same_request_eight_times_at_once(database: Database) -> None:
    """One entry, and everybody is told of it."""
    assert ask_at_once(store_in(database), rounds=1) == 1
    assert EntryRow.objects.count() == 1


def test_killed_writers(database: Database) -> None:
    """Whatever was acknowledged before a kill -9 is there after it, once, in a whole chain."""
    store = store_in(database)
    if not hasattr(os, "fork"):
        pytest.skip(f"{COULD_NOT}: processes cannot be forked here")

    found = kill_writers(database, store, kills=KILLS, seed=7, within_s=15)

    assert (found.lost, found.damaged, found.doubled) == (0, 0, 0)
    assert found.acked >= found.kills / 2
    assert found.kills >= 4


def test_the_gate_opens_when_its_holder_dies(tmp_path: Path) -> None:
    """A process that is killed while it holds the gate does not close it for others."""
    code = (
        "import pathlib, sys, time\n"
        "from sootline.storage.gate import gate\n"
        "with gate(pathlib.Path(sys.argv[1])):\n"
        "    print('in', flush=True)\n"
        "    time.sleep(60)\n"
    )
    lock = tmp_path / "lock"
    command = [sys.executable, "-c", code, str(lock)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as holder:
        assert holder.stdout is not None
        assert holder.stdout.readline() == "in\n"
        holder.kill()

    with gate(lock):
        pass


@pytest.fixture
def small_disk() -> Iterator[Path]:
    """Mount a file system of six megabytes."""
    place = FOLDER / "small"
    place.mkdir(exist_ok=True)
    mount = ["mount", "-t", "tmpfs", "-o", "size=6m", "tmpfs", str(place)]
    if not hasattr(os, "geteuid") or os.geteuid() != 0:
        pytest.skip(f"{COULD_NOT}: a small disk needs root to mount it")
    if subprocess.run(mount, check=False, capture_output=True).returncode:
        pytest.skip(f"{COULD_NOT}: this machine lets nobody mount a small disk")
    yield place
    connections["default"].close()
    subprocess.run(["umount", str(place)], check=True)


def test_a_full_disk(databases: Databases, small_disk: Path) -> None:
    """Entries are refused plainly, none is lost, reading works, and space lets the key through."""
    template = databases.fresh("sqlite")
    database = Database(vendor="sqlite", folder=small_disk)
    database.file.write_bytes(template.file.read_bytes())
    lead_to(database)
    store = store_in(database)
    ballast = small_disk / "ballast"
    ballast.write_bytes(bytes(3 * 2**20))

    acknowledged, refusal = 0, None
    while refusal is None:
        try:
            store.append([worn(f"k{acknowledged}", f"piece-{acknowledged}")])
            acknowledged += 1
        except DatabaseError as error:
            refusal = error

    assert "full" in str(refusal)
    assert acknowledged > 0
    found = verify_chain(store.entries())
    assert (found.intact, found.entries) == (True, acknowledged)
    ballast.unlink()
    store.append([worn(f"k{acknowledged}", f"piece-{acknowledged}")])
    assert store.head().seq == acknowledged + 1
