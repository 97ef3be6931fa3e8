"""Cut the power at random moments and count what was lost: nothing that was acknowledged may be.

What stands on the disk after a cut: everything that was synced, and of the rest nothing, all, the
first part, or any choice of its sectors of 512 bytes. The database as shipped recovers from that,
and its record is verified and held against what a writer was told.

Taken as given: a synced byte stays, and the name of a file that was made is durable.
"""

import gc
import random
import sqlite3
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass, field

from django.db import DatabaseError, connections
from tests.integration.store_acts import NOON, store_in, worn
from tests.integration.store_databases import Database, Databases, lead_to
from tests.integration.store_disk import NAME, Disk, Step

from sootline.core.ledger import Entry, verify_chain
from sootline.storage import entries

SECTOR = 512
_SHIPPED = "synchronous=FULL"


@dataclass
class Cuts:
    """What came out of cutting the power.

    Args:
        acked: entries told of before a cut, over all cuts.
        losing: cuts that lost at least one of them.
        most: entries that one cut lost at most.
        corrupt: cuts after which the database or the chain was damaged.
        torn: cuts that met something not yet synced.
    """

    cuts: int = 0
    acked: int = 0
    losing: int = 0
    most: int = 0
    corrupt: int = 0
    torn: int = 0


@dataclass
class Surface:
    """One file as it stands on the disk: what is durable, and what only was asked for since."""

    durable: bytearray = field(default_factory=bytearray)
    asked: list[Step] = field(default_factory=list)

    def take(self, step: Step) -> None:
        """Take one more step."""
        if not step.synced:
            self.asked.append(step)
            return
        for one in self.asked:
            _do(self.durable, one)
        self.asked.clear()

    def after_a_cut(self, chance: random.Random) -> bytes:
        """Return what may be found when the power is back."""
        found = bytearray(self.durable)
        match chance.choice(("none", "all", "first", "sectors")):
            case "all":
                left = list(self.asked)
            case "first":
                left = self.asked[: chance.randint(0, len(self.asked))]
            case "sectors":
                sectors = (part for step in self.asked for part in _sectors(step))
                left = [part for part in sectors if chance.random() < 0.5]
            case _:
                left = []
        for step in left:
            _do(found, step)
        return bytes(found)


def _do(content: bytearray, step: Step) -> None:
    if step.data is None:
        del content[step.at :]
        return
    content.extend(bytes(max(0, step.at - len(content))))
    content[step.at : step.at + len(step.data)] = step.data


def _sectors(step: Step) -> Iterator[Step]:
    if step.data is None:
        yield step
        return
    at, end = step.at, step.at + len(step.data)
    while at < end:
        until = min(end, (at // SECTOR + 1) * SECTOR)
        yield Step(file=step.file, at=at, data=step.data[at - step.at : until - step.at])
        at = until


def cut_power(
    databases: Databases, disk: Disk, *, cuts: int, seed: int, synchronous: str, acts: int = 120
) -> Cuts:
    """Write many acts and cut the power at random moments of it; again and again.

    Args:
        cuts: how often; a hundred at most of one writing.
        synchronous: the setting under test; the store's own refusal of a weaker one is set aside.
        acts: how many are written in one go: enough that the log is copied back once.
    """
    found, chance = Cuts(), random.Random(seed)  # noqa: S311
    while found.cuts < cuts:
        some = min(100, cuts - found.cuts)
        template = databases.fresh("sqlite")
        before = template.file.read_bytes()
        told = _written(template, disk, chance, synchronous=synchronous, acts=acts)
        place = Database(vendor="sqlite", folder=template.folder / "after")
        place.folder.mkdir()
        moments = sorted(chance.randrange(len(disk.steps) + 1) for _ in range(some))
        _look_at_each(found, place, (disk.steps, moments, told), before, chance)
        disk.fresh(None)
    return found


def _written(
    database: Database, disk: Disk, chance: random.Random, *, synchronous: str, acts: int
) -> list[tuple[int, Entry]]:
    """Write acts on the noting disk; return after how many steps which entry was acknowledged."""
    disk.fresh(database.folder)
    lead_to(database)
    settings = connections.databases["default"]
    settings["NAME"] = f"file:{database.file}?vfs={NAME}"
    options = dict(settings["OPTIONS"])
    options["init_command"] = options["init_command"].replace(
        _SHIPPED, f"synchronous={synchronous}"
    )
    settings["OPTIONS"] = options
    store = store_in(database, lambda: NOON)
    store._sound_until = float("inf")
    told = []
    for act in range(acts):
        many = chance.choice((1, 1, 1, 5))
        drafts = [worn(f"k{act}-{n}", f"piece-{chance.randrange(9)}-{n}") for n in range(many)]
        done = store.append(drafts)
        told += [(len(disk.steps), one.entry) for one in done]
    disk.folder = None  # closing copies the log back, which no cut is to see
    connections["default"].close()
    return told


def _look_at_each(
    found: Cuts,
    place: Database,
    written: tuple[list[Step], list[int], list[tuple[int, Entry]]],
    before: bytes,
    chance: random.Random,
) -> None:
    """Build what each cut leaves, in the order of their moments, and look."""
    steps, moments, told = written
    surfaces = {place.file.name: Surface(durable=bytearray(before))}
    at = 0
    for moment in moments:
        for step in steps[at:moment]:
            surfaces.setdefault(step.file, Surface()).take(step)
        at = moment
        found.cuts += 1
        found.torn += any(surface.asked for surface in surfaces.values())
        for old in place.folder.iterdir():
            old.unlink()
        for name, surface in surfaces.items():
            (place.folder / name).write_bytes(surface.after_a_cut(chance))
        acked = [entry for _, entry in told[: bisect_right(told, moment, key=lambda one: one[0])]]
        _look(found, place, acked)


def _look(found: Cuts, place: Database, acked: list[Entry]) -> None:
    lead_to(place)
    found.acked += len(acked)
    there: list[Entry] | None = None
    whole = False
    try:
        with connections["default"].cursor() as cursor:
            whole = cursor.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
        there = list(entries.read_entries("default"))
    except (DatabaseError, sqlite3.DatabaseError, ValueError):
        found.corrupt += 1
    finally:
        connections["default"].close()
    if there is None:
        # A connection that failed as it opened lives on in the error, and with it what SQLite
        # remembers of a file whose number the next one may get.
        gc.collect()
        return
    found.corrupt += not (whole and verify_chain(there).intact)
    kept = {entry.seq: entry.hash for entry in there}
    lost = sum(kept.get(entry.seq) != entry.hash for entry in acked)
    found.losing += lost > 0
    found.most = max(found.most, lost)
