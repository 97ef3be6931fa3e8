"""Acts and faults in any order, drawn by chance: what must hold of the record after each?

Faults: the process dies in the middle of an act, the power goes, the disk is full, somebody else
holds the database, the clock jumps, a reply is lost and the request comes again. The model is a
list of what was acknowledged; the database is a real one on a disk that fails when told to.
"""

import datetime as dt
import random
import sqlite3
from contextlib import closing, suppress
from typing import Any

import pytest
from django.db import DatabaseError, connections, transaction
from hypothesis import HealthCheck, seed, settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    invariant,
    precondition,
    rule,
    run_state_machine_as_test,
)
from tests.integration.store_acts import NOON, draft, erasure, store_in, worn
from tests.integration.store_databases import Database, Databases, lead_to
from tests.integration.store_disk import NAME, Disk
from tests.integration.store_power import Surface

from sootline.core.basis import BadInputError
from sootline.core.ledger import ClockFlag, Draft, Entry, EntryKind, KeyReusedError, component
from sootline.core.ledger.verifying import verify_chain
from sootline.storage import entries
from sootline.storage.ledger import LedgerStore
from sootline.storage.models import ComponentRow, Link, Thing
from sootline.storage.projecting import replay

PIECES = st.sampled_from(["0412", "0413", "0414"])
# An hour, a day, ten years; 1970 is what a board without a battery wakes up with.
JUMPS = st.sampled_from(
    [dt.timedelta(minutes=3), dt.timedelta(hours=-1), dt.timedelta(days=-1),
     dt.timedelta(days=3653), dt.timedelta(days=2), dt.datetime(1970, 1, 1, tzinfo=dt.UTC) - NOON]
)  # fmt: skip
# The offset of the wall clock changes in spring and autumn; the moment goes on.
OFFSETS = st.sampled_from([0, -5, -4, 1, 2])
STEPS = st.integers(0, 12)
HOLD = {"cause": "powder", "question": "care.ask.powder", "decider": "safety-officer",
        "deputy": "chief"}  # fmt: skip


class FaultyStore(RuleBasedStateMachine):
    """One store, its disk, its clock, and what was acknowledged."""

    databases: Databases
    disk: Disk

    @initialize()
    def begin(self) -> None:
        """Begin an empty record on the noting disk."""
        self.now = NOON
        self.number = 0
        self.told: list[tuple[Draft, Entry]] = []
        self.place = self.databases.fresh("sqlite")
        self.surfaces = {self.place.file.name: Surface(bytearray(self.place.file.read_bytes()))}
        self.disk.fresh(self.place.folder)
        self.store = self._open()

    def _open(self) -> LedgerStore:
        lead_to(self.place)
        settings = connections.databases["default"]
        settings["NAME"] = f"file:{self.place.file}?vfs={NAME}"
        settings["OPTIONS"] = {**settings["OPTIONS"], "timeout": 0.02}
        return store_in(self.place, lambda: self.now)

    def _key(self) -> str:
        self.number += 1
        return f"k{self.number}"

    def _append(self, one: Draft) -> Entry:
        """Append, and remember what was acknowledged."""
        (done,) = self.store.append([one])
        if not done.repeated:
            self.told.append((one, done.entry))
        return done.entry

    # What people do.

    @rule(piece=PIECES)
    def wear(self, piece: str) -> None:
        """Somebody wore a piece."""
        self._append(worn(self._key(), piece))

    @rule(piece=PIECES)
    def hold(self, piece: str) -> None:
        """Open a hold, the urgent entry: whatever the clock says, it is taken and flagged."""
        before = self.store.head().trusted_at
        entry = self._append(draft(self._key(), EntryKind.HOLD_OPENED, component(piece), **HOLD))  # type: ignore[arg-type]

        flags = entry.read_header().flags
        assert (ClockFlag.BACK in flags) == (before is not None and self.now < before)
        ahead = before is not None and self.now > before + dt.timedelta(hours=24)
        assert (ClockFlag.AHEAD in flags) == ahead

    @precondition(lambda self: self.told)
    @rule(data=st.data())
    def withdraw(self, data: st.DataObject) -> None:
        """Withdraw an entry by a correction."""
        one, entry = data.draw(st.sampled_from(self.told))
        if one.kind is not EntryKind.ERASED:
            said = {"corrects": entry.seq, "reason": "misread", "withdrawn": True}
            self._append(draft(self._key(), EntryKind.CORRECTED, one.item, **said))  # type: ignore[arg-type]

    @precondition(lambda self: self.told)
    @rule(data=st.data())
    def erase(self, data: st.DataObject) -> None:
        """Two people have a payload erased; a second time there is nothing to erase."""
        one, entry = data.draw(st.sampled_from(self.told))
        try:
            self._append(erasure(self._key(), entry.seq, one.item))
        except BadInputError as error:
            assert error.faults[0].message in (  # noqa: PT017  # either is right
                "ledger.append.erased_already", "ledger.append.erasure_stays",
            )  # fmt: skip

    # What goes wrong.

    @precondition(lambda self: self.told)
    @rule(data=st.data())
    def ask_again(self, data: st.DataObject) -> None:
        """Ask again, a reply being lost: the same request gets the entry it made."""
        one, entry = data.draw(st.sampled_from(self.told))
        (done,) = self.store.append([one])
        assert (done.repeated, done.entry.hash) == (True, entry.hash)

    @precondition(lambda self: self.told)
    @rule(data=st.data())
    def other_words(self, data: st.DataObject) -> None:
        """Use a key for other words: refused, nothing is added."""
        one, _ = data.draw(st.sampled_from(self.told))
        with pytest.raises(KeyReusedError):
            self.store.append([draft(one.idem, EntryKind.NOTED, component("other"), said="x")])

    @rule(jump=JUMPS, offset=OFFSETS)
    def clock_jumps(self, jump: dt.timedelta, offset: int) -> None:
        """Set the machine's clock to another time, in another offset."""
        zone = dt.timezone(dt.timedelta(hours=offset))
        floor = dt.datetime(1970, 1, 2, tzinfo=dt.UTC)
        ceiling = dt.datetime(2400, 1, 1, tzinfo=dt.UTC)
        self.now = min(max(self.now + jump, floor), ceiling).astimezone(zone)

    @rule(piece=PIECES, left=STEPS)
    def disk_fills(self, piece: str, left: int) -> None:
        """No room after a few writes: refused or acknowledged; with room the key succeeds."""
        one = worn(self._key(), piece)
        self.disk.full_after = left
        try:
            self._append(one)
        except DatabaseError as error:
            assert "full" in str(error)  # noqa: PT017  # it may succeed as well
        finally:
            self.disk.full_after = None
        self._once(one)

    @rule(piece=PIECES)
    def somebody_holds_it(self, piece: str) -> None:
        """Another program holds the database: refused after a while; then the key succeeds."""
        one = worn(self._key(), piece)
        with closing(sqlite3.connect(self.place.file)) as other:
            other.execute("BEGIN IMMEDIATE")
            with pytest.raises(DatabaseError, match="locked"):
                self._append(one)
            other.rollback()
        self._once(one)

    @rule(piece=PIECES, left=STEPS, power=st.booleans(), seed=st.integers(0, 2**32))
    def dies(self, piece: str, left: int, *, power: bool, seed: int) -> None:
        """Kill the process or cut the power, anywhere in an act; the key is asked again."""
        one = worn(self._key(), piece)
        self.disk.dead_after = left
        with suppress(DatabaseError, sqlite3.DatabaseError):
            self._append(one)
        self.disk.dead_after = 0
        self._stop()
        for step in self.disk.steps:
            self.surfaces.setdefault(step.file, Surface()).take(step)
        self._start_again(random.Random(seed) if power else None)  # noqa: S311
        self._once(one)

    def _stop(self) -> None:
        with suppress(DatabaseError, sqlite3.DatabaseError):
            connections["default"].close()
        del connections["default"]

    def _start_again(self, chance: random.Random | None) -> None:
        """Open what is left: all that was written, or after a power cut some of it.

        In a folder of its own: this process lives on, and SQLite in it remembers files.

        Args:
            chance: what the power cut leaves; None is a kill.
        """
        after = Database(vendor="sqlite", folder=self.place.folder / "after")
        after.folder.mkdir()
        for name, surface in self.surfaces.items():
            before = (self.place.folder / name).read_bytes() if chance is None else b""
            (after.folder / name).write_bytes(surface.after_a_cut(chance) if chance else before)
            if chance:
                self.surfaces[name] = Surface(bytearray((after.folder / name).read_bytes()))
        self.place = after
        self.disk.fresh(self.place.folder)
        self.store = self._open()

    def _once(self, one: Draft) -> None:
        """Ask for the same again: it stands once, whether or not it did before."""
        (done,) = self.store.append([one])
        if not any(known is one for known, _ in self.told):
            self.told.append((one, done.entry))

    # What holds after each.

    @invariant()
    def nothing_is_lost(self) -> None:
        """Every acknowledged entry stands in its place, once; the chain is whole, in order."""
        there = list(entries.read_entries("default"))
        found = verify_chain(there)
        assert (found.damages, [entry.seq for entry in there]) == ((), [*range(1, len(there) + 1)])
        assert len(there) == len(self.told)
        assert {entry.seq: entry.hash for entry in there} == {
            entry.seq: entry.hash for _, entry in self.told
        }

    def teardown(self) -> None:
        """At the end the tables screens read are what a replay makes."""
        if hasattr(self, "store"):
            before = rows()
            with transaction.atomic():
                replay("default")
            assert rows() == before
        self.disk.fresh(None)
        self._stop()


def rows() -> list[list[tuple[Any, ...]]]:
    """Return every row that follows from the record."""
    named = ((ComponentRow, None), (Thing, None), (Link, ("item", "other")))
    return [
        sorted(model._default_manager.values_list(*(names or ())), key=repr)
        for model, names in named
    ]


def run_faults(databases: Databases, disk: Disk, *, runs: int, steps: int, number: int) -> None:
    """Run the machine.

    Args:
        number: the seed, printed so that a run can be repeated.
    """
    print(f"SOOTLINE_SEED={number}")
    machine = seed(number)(type("Machine", (FaultyStore,), {"databases": databases, "disk": disk}))
    run_state_machine_as_test(
        machine,
        settings=settings(
            max_examples=runs,
            stateful_step_count=steps,
            deadline=None,
            suppress_health_check=list(HealthCheck),
            print_blob=True,
            database=None,
        ),
    )
