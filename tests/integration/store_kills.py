"""Kill writers at random moments and count what was lost: nothing that was acknowledged may be."""

import os
import random
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from tests.integration.store_databases import Database

from sootline.core.ledger import verify_chain
from sootline.storage.ledger import LedgerStore
from sootline.storage.models import EntryRow

_DEADLINE_S = 20
_LINE = 3
_MOSTLY = 0.8


@dataclass
class Kills:
    """What came out of killing writers.

    Args:
        kills: how many writers were killed.
        acked: entries a writer was told of before it died.
        lost: those that are not there, or are another entry.
        unacked: entries that were kept though the reply never came.
        damaged: chains that did not verify.
        doubled: keys that stand twice.
    """

    kills: int = 0
    acked: int = 0
    lost: int = 0
    unacked: int = 0
    damaged: int = 0
    doubled: int = 0


def kill_writers(
    database: Database, store: LedgerStore, *, kills: int, seed: int, within_s: float
) -> Kills:
    """Run two writers at a time, kill both at a random moment, and look; again and again.

    Each round begins with the keys whose replies were lost in the one before.

    Args:
        within_s: on a busy machine it ends with fewer kills after so many seconds.
    """
    end = time.monotonic() + within_s
    chance = random.Random(seed)  # noqa: S311
    found, nexts = Kills(), {"a": 0, "b": 0}
    with _nursery(database) as begin:
        while found.kills < kills and time.monotonic() < end:
            files = {name: database.folder / f"{name}-{found.kills}" for name in nexts}
            writers = [begin(name, nexts[name], file) for name, file in files.items()]
            # Mostly once they write, now and then before the first entry.
            if chance.random() < _MOSTLY:
                _await_writing(list(files.values()))
            time.sleep(chance.uniform(0.0, 0.1))
            for writer in writers:
                _kill(writer)
                found.kills += 1
            for name, file in files.items():
                nexts[name] = _look(file, name, found, nexts[name])
            found.damaged += bool(verify_chain(store.entries()).damages)
    rows = list(EntryRow.objects.values_list("actor", "idem"))
    found.doubled = len(rows) - len(set(rows))
    return found


@contextmanager
def _nursery(database: Database) -> Iterator[Callable[[str, int, Path], int]]:
    """Give what starts a writer and returns its process id."""
    command = [sys.executable, "-m", "tests.integration.store_writer"]
    pipe = subprocess.PIPE
    with subprocess.Popen(
        command, env=database.environment, stdin=pipe, stdout=pipe, text=True
    ) as nursery:
        assert nursery.stdin is not None
        assert nursery.stdout is not None
        asks, tells = nursery.stdin, nursery.stdout

        def begin(name: str, first: int, file: Path) -> int:
            asks.write(f"{name} {first} {file}\n")
            asks.flush()
            return int(tells.readline())

        yield begin


def _await_writing(files: Iterable[Path]) -> None:
    """Wait until every writer was told of an entry."""
    end = time.monotonic() + _DEADLINE_S
    while time.monotonic() < end and not all(_has_begun(file) for file in files):
        time.sleep(0.002)


def _has_begun(file: Path) -> bool:
    return file.exists() and file.stat().st_size > 0


def _kill(process: int) -> None:
    """Kill a process and wait until it is gone."""
    os.kill(process, signal.SIGKILL)
    end = time.monotonic() + _DEADLINE_S
    while time.monotonic() < end:
        try:
            os.kill(process, 0)
        except ProcessLookupError:
            return
        time.sleep(0.002)
    raise TimeoutError(process)


def _look(file: Path, name: str, found: Kills, first: int) -> int:
    """Hold a dead writer's acknowledgements against the record; return the next key to try."""
    number = first
    for line in file.read_text().splitlines() if file.exists() else ():
        parts = line.split(" ")
        assert len(parts) == _LINE  # a line is written in one piece
        number = int(parts[0]) + 1
        found.acked += 1
        row = EntryRow.objects.filter(actor=name, idem=f"{name}-{parts[0]}").first()
        found.lost += row is None or (str(row.seq), row.hash) != (parts[1], parts[2])
    found.unacked += EntryRow.objects.filter(actor=name, idem=f"{name}-{number}").exists()
    return number
