"""Whatever is asked in whatever order, with faults in between: store and plain model agree."""

import datetime as dt

import pytest
from django.db import connection, transaction
from hypothesis import HealthCheck, note, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule, run_state_machine_as_test
from tests.conftest import COULD_NOT
from tests.integration.store_acts import NOON, erasure, store_in, worn
from tests.integration.store_databases import Databases

from sootline.core.basis import BadInputError
from sootline.core.ledger import KeyReusedError, OvertakenError, component, verify_chain
from sootline.storage.ledger import LedgerStore
from sootline.storage.models import ComponentRow, EntryRow, PayloadRow
from sootline.storage.projecting import replay

KEYS = st.sampled_from(["a", "b", "c", "d", "e", "f"])
PIECES = st.sampled_from(["0412", "0413", "0414"])
PEOPLE = st.sampled_from(["118", "119"])


class _CutError(Exception):
    """The process stops here."""


class Record(RuleBasedStateMachine):
    """The store beside a list of what must be in it."""

    databases: Databases
    vendor: str

    def __init__(self) -> None:
        super().__init__()
        self.now = NOON
        self.store: LedgerStore = store_in(self.databases.fresh(self.vendor), now=lambda: self.now)
        self.kept: list[tuple[str, str, str]] = []
        self.erased: set[int] = set()

    def _expected(self, actor: str, key: str, piece: str, after: int | None) -> object:
        for who, what, about in self.kept:
            if (who, what) == (actor, key):
                return KeyReusedError if about != piece else "again"
        last = max((n for n, one in enumerate(self.kept, 1) if one[2] == piece), default=0)
        return OvertakenError if after is not None and last > after else "new"

    @rule(actor=PEOPLE, key=KEYS, piece=PIECES, after=st.none() | st.integers(0, 12))
    def record(self, actor: str, key: str, piece: str, after: int | None) -> None:
        """Somebody records that a piece was worn."""
        expected = self._expected(actor, key, piece, after)
        draft = worn(key, piece, actor=actor, after=after)
        if isinstance(expected, type):
            with pytest.raises(expected):
                self.store.append([draft])
            return
        (done,) = self.store.append([draft])
        assert done.repeated == (expected == "again")
        if not done.repeated:
            self.kept.append((actor, key, piece))
            assert done.entry.seq == len(self.kept)

    @rule(pieces=st.lists(PIECES, min_size=2, max_size=3, unique=True))
    def record_several(self, pieces: list[str]) -> None:
        """One act over several pieces."""
        keys = [f"act-{len(self.kept)}-{piece}" for piece in pieces]
        self.store.append([worn(key, piece) for key, piece in zip(keys, pieces, strict=True)])
        self.kept += [("118", key, piece) for key, piece in zip(keys, pieces, strict=True)]

    @rule(seq=st.integers(1, 8))
    def erase(self, seq: int) -> None:
        """Two people have a payload erased."""
        piece = self.kept[seq - 1][2] if seq <= len(self.kept) else "0412"
        key, end = f"erase-{len(self.kept)}", len(self.kept)
        possible = seq <= end and seq not in self.erased and not self.kept[seq - 1][1].startswith(
            "erase-"
        )  # fmt: skip
        if not possible:
            with pytest.raises(BadInputError):
                self.store.append([erasure(key, seq, component(piece))])
            return
        self.store.append([erasure(key, seq, component(piece))])
        self.kept.append(("118", key, piece))
        self.erased.add(seq)

    @rule(piece=PIECES)
    def cut_before_commit(self, piece: str) -> None:
        """Stop the process after writing and before it is kept."""

        def write_and_stop() -> None:
            with transaction.atomic():
                self.store.append([worn(f"cut-{len(self.kept)}", piece)])
                raise _CutError

        with pytest.raises(_CutError):
            write_and_stop()

    @rule(hours=st.sampled_from([-24 * 365, -24, -1, 1, 25, 24 * 3650]))
    def set_clock(self, hours: int) -> None:
        """Let the machine's clock jump."""
        self.now = max(NOON.replace(year=1971), self.now + dt.timedelta(hours=hours))
        note(f"clock at {self.now}")

    @rule()
    def restart(self) -> None:
        """Start the program anew on what is on the disk."""
        connection.close()

    @invariant()
    def holds(self) -> None:
        """Verify the chain: nothing is missing or doubled, and only what was erased is gone."""
        found = verify_chain(self.store.entries())
        assert (found.intact, found.entries) == (True, len(self.kept))
        rows = list(EntryRow.objects.order_by("seq").values_list("actor", "idem"))
        assert rows == [(actor, key) for actor, key, _ in self.kept]
        assert {one.seq for one in found.erased} == self.erased
        assert PayloadRow.objects.count() == len(self.kept) - len(self.erased)

    def teardown(self) -> None:
        """Replaying the record makes the same rows."""
        before = list(ComponentRow.objects.order_by("id").values_list())
        with transaction.atomic():
            replay("default")
        assert list(ComponentRow.objects.order_by("id").values_list()) == before


@pytest.mark.parametrize(("vendor", "runs"), [("sqlite", 25), ("postgresql", 8)])
def test_any_order(databases: Databases, vendor: str, runs: int) -> None:
    """Records, repeats, conflicts, erasures, cuts, clock jumps and restarts in any order."""
    if not databases.able(vendor):
        pytest.skip(f"{COULD_NOT}: no PostgreSQL server is installed (make services)")
    machine = type("Record", (Record,), {"databases": databases, "vendor": vendor})

    run_state_machine_as_test(
        machine,
        settings=settings(
            max_examples=runs, stateful_step_count=20, deadline=None, print_blob=True,
            suppress_health_check=list(HealthCheck),
        ),
    )  # fmt: skip
