"""Is everything as it must be for a record that is evidence? One look at each thing."""

import shutil
import stat
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from django.db import DatabaseError, connections
from django.db.migrations.executor import MigrationExecutor

from sootline.core.basis import Fault, MessageId
from sootline.core.ledger import verify_chain
from sootline.storage.alive import PROCESSES, is_silent, silence
from sootline.storage.attachments import AttachmentStore
from sootline.storage.errands import ErrandStore
from sootline.storage.ledger import LedgerStore
from sootline.storage.models import User
from sootline.storage.readiness import find_faults

_LEAST_FREE = 500 * 10**6
_LEAST_SHARE = 0.1
# Locks and synced writes are not to be relied on over a network.
_NETWORK = frozenset({"nfs", "nfs4", "cifs", "smb3", "smbfs", "9p", "fuse.sshfs", "afs"})


@dataclass(frozen=True, kw_only=True)
class Checked:
    """One thing that was looked at.

    Args:
        name: as in the words' names of checks.
        faults: what is amiss; none when nothing is.
    """

    name: str
    faults: tuple[Fault, ...] = ()


def check_up(store: LedgerStore, *, deep: bool = False) -> tuple[Checked, ...]:
    """Look at everything, whatever is amiss with the rest.

    Args:
        deep: also read the whole record and every attachment again.
    """
    looks: dict[str, Callable[[], Iterator[Fault]]] = {
        "secret": lambda: _secret(store.folder),
        "room": lambda: _room(store.folder),
        "file_system": lambda: _file_system(store.folder),
        "database": lambda: iter(find_faults(store.alias)),
        "tables": lambda: _tables(store),
        "clock": lambda: _clock(store),
        "accounts": _accounts,
        "processes": lambda: _processes(store),
    }
    if deep:
        looks |= {"record": lambda: _record(store), "attachments": lambda: _attachments(store)}
    return tuple(Checked(name=name, faults=_looked(look)) for name, look in looks.items())


def _looked(look: Callable[[], Iterator[Fault]]) -> tuple[Fault, ...]:
    try:
        return tuple(look())
    except DatabaseError as error:
        return (_fault("database", "store.unreachable", what=type(error).__name__),)


def _secret(folder: Path) -> Iterator[Fault]:
    mode = stat.S_IMODE((folder / "secret-key").stat().st_mode)
    if mode & 0o077:
        yield _fault("secret-key", "store.check.readable", mode=oct(mode))


def _room(folder: Path) -> Iterator[Fault]:
    usage = shutil.disk_usage(folder)
    if usage.free < _LEAST_FREE or usage.free < usage.total * _LEAST_SHARE:
        free, least = usage.free // 10**6, max(_LEAST_FREE, int(usage.total * _LEAST_SHARE))
        yield _fault("disk", "store.check.room", free=str(free), limit=str(least // 10**6))


def _file_system(folder: Path) -> Iterator[Fault]:
    mounts = Path("/proc/mounts")
    if not mounts.exists():
        return
    rows = [line.split() for line in mounts.read_text(encoding="utf-8").splitlines()]
    under = [row for row in rows if folder.resolve().is_relative_to(row[1])]
    kind = max(under, key=lambda row: len(row[1]))[2] if under else ""
    if kind in _NETWORK:
        yield _fault("file system", "store.check.network", kind=kind)


def _tables(store: LedgerStore) -> Iterator[Fault]:
    executor = MigrationExecutor(connections[store.alias])
    waiting = executor.migration_plan(executor.loader.graph.leaf_nodes())
    if waiting:
        yield _fault("tables", "store.check.tables", n=str(len(waiting)))


def _clock(store: LedgerStore) -> Iterator[Fault]:
    head, now = store.head(), store.now()
    if head.trusted_at is not None and now < head.trusted_at:
        yield _fault("clock", "store.check.clock", now=now.isoformat(timespec="seconds"),
                     last=head.trusted_at.isoformat(timespec="seconds"))  # fmt: skip


def _accounts() -> Iterator[Fault]:
    if not any("administrator" in user.roles for user in User.objects.filter(is_active=True)):
        yield _fault("accounts", "store.check.accounts")


def _processes(store: LedgerStore) -> Iterator[Fault]:
    """Look for signs of life, where a server was ever begun here."""
    for process in PROCESSES:
        since = silence(store.folder, process)
        if since is not None and is_silent(store.folder, process):
            yield _fault(process, "store.check.silent", process=process, seconds=f"{since:.0f}")
    running = ErrandStore(now=store.now, alias=store.alias).abandoned()
    if running:
        yield _fault("errands", "store.check.abandoned", n=str(running))


def _record(store: LedgerStore) -> Iterator[Fault]:
    found = verify_chain(store.entries())
    for damage in found.damages:
        yield _fault(f"entry {damage.seq}", "store.check.entry", what=damage.kind.value)


def _attachments(store: LedgerStore) -> Iterator[Fault]:
    for digest in AttachmentStore(folder=store.folder, alias=store.alias).damaged():
        yield _fault(f"attachment {digest[:12]}", "store.check.attachment")


def _fault(place: str, message: str, **values: str) -> Fault:
    return Fault(place=place, message=MessageId(message), values=tuple(values.items()))
