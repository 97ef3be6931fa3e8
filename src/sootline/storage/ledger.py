"""How does an act come into the record: whole, once, in its place, or not at all?"""

import datetime as dt
import secrets
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, nullcontext
from pathlib import Path

from django.db import connections, transaction

from sootline.core.basis import InstallationId, MemberId
from sootline.core.ledger import (
    Anchor,
    Appended,
    Draft,
    Entry,
    EntryKind,
    Head,
    ItemKind,
    KeyReusedError,
    append,
    begin,
    read_header,
)
from sootline.core.ledger.hashing import SALT_BYTES
from sootline.storage import anchoring, entries
from sootline.storage.gate import gate
from sootline.storage.models import Installation
from sootline.storage.projecting import project
from sootline.storage.readiness import ReadOnlyError, find_faults

# Any number will do, as long as nothing else on the server uses it.
POSTGRESQL_LOCK = 0x50071_1E
_LOOK_AGAIN_S = 60.0


class LedgerStore:
    """The record in a database.

    Args:
        folder: the data directory; the gate's lock lies there.
        now: what the machine's clock reads, with its offset.
        alias: which of the configured databases.
    """

    def __init__(
        self, *, folder: Path, now: Callable[[], dt.datetime], alias: str = "default"
    ) -> None:
        self.folder = folder
        self.now = now
        self.alias = alias
        self._sound_until = 0.0

    def append(self, drafts: Sequence[Draft]) -> tuple[Appended, ...]:
        """Record drafts that belong together: all of them, or none.

        A request that comes again with its keys and words gets the entries it made the first
        time. Readers see the entries and what follows from them at once.

        Raises:
            KeyReusedError: a key stands for other words.
            OvertakenError: somebody else wrote about a thing since the asker looked.
            BadInputError: nothing can be corrected or erased there.
            ReadOnlyError: guards or settings of the database are not as they must be.
        """
        with self._writing():
            head = entries.read_head(self.alias)
            done: list[Appended] = []
            for draft in drafts:
                done.append(self._place(head, draft))
                head = done[-1].head
            _refuse_half(done, drafts)
            project(self.alias, [one.entry for one in done if not one.repeated])
        return tuple(done)

    def of_act(self, actor: MemberId, act: str) -> tuple[Entry, ...]:
        """Return the entries that an actor recorded as one act, in their order."""
        return tuple(entries.of_act(actor, act, self.alias))

    def known(self, actor: MemberId, idem: str) -> bool:
        """Whether an actor has used a key."""
        return entries.find_key(actor, idem, self.alias) is not None

    def begun(self, actor: MemberId, act: str) -> bool:
        """Whether an actor has recorded any entry of an act, by the act's key."""
        return entries.has_begun(actor, act, self.alias)

    def anchor(self, at: dt.datetime) -> Anchor | None:
        """Take an anchor of the record as it stands; None of an empty one."""
        return anchoring.take(self.alias, at)

    def keep_anchor(self, *, once_a_day: bool) -> Anchor | None:
        """Add an anchor to the file of anchors; None of an empty record, or one that has it.

        Args:
            once_a_day: leave it where the newest in the file is of today [UTC].

        Raises:
            BadInputError: the file holds something else than anchors.
            OSError: it cannot be written.
        """
        anchor = self.anchor(self.now())
        if anchor is None or not anchoring.keep(self.folder, anchor, once_a_day=once_a_day):
            return None
        return anchor

    def head(self) -> Head:
        """Return where the record ends."""
        return entries.read_head(self.alias)

    def entries(
        self, after: int = 0, *, item: str | None = None, kind: ItemKind | None = None
    ) -> Iterator[Entry]:
        """Read entries in their order.

        Args:
            after: the place of the last one that is not wanted.
            item: only those about this thing.
            kind: only those about things of this kind.
        """
        return entries.read_entries(self.alias, after=after, item=item, kind=kind)

    def begin(self, name: InstallationId | None = None) -> Head:
        """Begin the record under a name of its own, unless it has begun.

        Args:
            name: None lets chance name it.
        """
        with self._turn():
            if not Installation.objects.using(self.alias).exists():
                fresh = begin(name or InstallationId(f"i-{secrets.token_hex(8)}"))
                Installation.objects.using(self.alias).create(
                    name=fresh.installation, since=self.now()
                )
        return self.head()

    def _place(self, head: Head, draft: Draft) -> Appended:
        """Put one draft at the end and into the tables."""
        placed = append(
            head,
            draft,
            now=self.now(),
            salt=secrets.token_bytes(SALT_BYTES),
            same_key=entries.find_key(draft.actor, draft.idem, self.alias),
            last_of_item=(
                None if draft.after is None else entries.last_about(draft.item, self.alias)
            ),
            target=entries.find_seq(draft.corrects or draft.erases, self.alias),
        )
        if not placed.repeated:
            header = read_header(placed.entry.header)
            entries.insert(placed.entry, header, placed.head, self.alias)
            if header.kind is EntryKind.ERASED and header.erases is not None:
                entries.erase_payload(header.erases, self.alias)
        return placed

    @contextmanager
    def _writing(self) -> Iterator[None]:
        """Hold the turn, in a store that is as it must be."""
        with self._turn():
            self._look()
            yield

    @contextmanager
    def _turn(self) -> Iterator[None]:
        """Let nobody else write meanwhile; commit at the end, or leave everything as it was."""
        embedded = connections[self.alias].vendor == "sqlite"
        queue = gate(self.folder / "write.lock") if embedded else nullcontext()
        with queue, transaction.atomic(using=self.alias):
            if not embedded:
                with connections[self.alias].cursor() as cursor:
                    cursor.execute("SELECT pg_advisory_xact_lock(%s)", [POSTGRESQL_LOCK])
            yield

    def _look(self) -> None:
        """Look at guards and settings, not more often than once a minute.

        Raises:
            ReadOnlyError: something is not as it must be.
        """
        if time.monotonic() < self._sound_until:
            return
        faults = find_faults(self.alias)
        if faults:
            raise ReadOnlyError(faults)
        self._sound_until = time.monotonic() + _LOOK_AGAIN_S


def _refuse_half(done: Sequence[Appended], drafts: Sequence[Draft]) -> None:
    """Refuse an act of which one part was recorded before and another was not.

    Raises:
        KeyReusedError: with the part that was.
    """
    repeated = [one.repeated for one in done]
    if any(repeated) and not all(repeated):
        at = repeated.index(True)
        raise KeyReusedError(done[at].entry, drafts[at])
