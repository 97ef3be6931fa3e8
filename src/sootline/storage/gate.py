"""Whose turn is it to write? One process at a time, in the order they came.

The database's own lock is no queue: a writer that waits at it may be passed by others for more
than a second. A lock on a file beside it is, and the database lock behind it still decides.
"""

import os
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

_PAUSE_S = 0.01


class GateClosedError(TimeoutError):
    """Nobody opened the gate in time."""


if sys.platform == "win32":
    import msvcrt

    def _lock(descriptor: int, wait_s: float) -> None:
        end = time.monotonic() + wait_s
        while True:
            os.lseek(descriptor, 0, os.SEEK_SET)
            try:
                msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)
            except OSError:
                if time.monotonic() > end:
                    raise GateClosedError from None
                time.sleep(_PAUSE_S)
            else:
                return

    def _unlock(descriptor: int) -> None:
        os.lseek(descriptor, 0, os.SEEK_SET)
        msvcrt.locking(descriptor, msvcrt.LK_UNLCK, 1)

else:
    import fcntl

    def _lock(descriptor: int, wait_s: float) -> None:  # noqa: ARG001
        # The system queues who waits and frees the lock of who dies; whoever holds it is bound
        # by the database's own limit of waiting.
        fcntl.flock(descriptor, fcntl.LOCK_EX)

    def _unlock(descriptor: int) -> None:
        fcntl.flock(descriptor, fcntl.LOCK_UN)


@contextmanager
def gate(file: Path, *, wait_s: float = 20.0) -> Iterator[None]:
    """Hold the gate while the block runs; a process that dies lets go of it.

    Raises:
        GateClosedError: it was not free in time (where the system has no queue of its own).
    """
    descriptor = os.open(file, os.O_RDWR | os.O_CREAT, 0o600)
    try:
        _lock(descriptor, wait_s)
        try:
            yield
        finally:
            _unlock(descriptor)
    finally:
        os.close(descriptor)
