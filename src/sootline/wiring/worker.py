"""`python -m sootline.wiring.worker`: the process that does what takes long, errand by errand."""

import logging
import os
import platform
import signal
import threading
import time
from typing import TYPE_CHECKING
from uuid import uuid4

from sootline.core.basis import MessageId
from sootline.tasks.errands import Errand, ErrandKind, Outcome
from sootline.wiring.framework import start
from sootline.wiring.leash import end_with_parent

if TYPE_CHECKING:
    from sootline.storage.errands import ErrandStore

_LOG = logging.getLogger(__name__)
_PAUSE_S = 0.5
_REAP_EVERY_S = 30.0
_BEAT_EVERY_S = 1.0


def main() -> None:
    """Work until told to stop."""
    start()
    over = threading.Event()
    for sign in (signal.SIGINT, signal.SIGTERM):
        signal.signal(sign, lambda *_: over.set())
    # Only once the framework is started.
    from sootline.wiring.signing import begin_signs  # noqa: PLC0415

    end_with_parent()
    begin_signs("worker")
    work(over)


def work(over: threading.Event, *, until_idle: bool = False) -> None:
    """Do what was asked for, the oldest first.

    Args:
        over: once set, what is under way is left to the next worker.
        until_idle: come back when nothing waits, instead of waiting for more.
    """
    # Only once the framework is started.
    from sootline.storage.errands import ErrandStore  # noqa: PLC0415
    from sootline.wiring.store import now  # noqa: PLC0415

    store = ErrandStore(now=now)
    # One worker to a machine: what an earlier one of this machine had is free now.
    store.reap(of_host=platform.node())
    worker = _Worker(store, f"{platform.node()}:{os.getpid()}:{uuid4().hex[:8]}", over)
    reaped = time.monotonic()
    while not over.is_set():
        if time.monotonic() - reaped > _REAP_EVERY_S:
            store.reap()
            reaped = time.monotonic()
        errand = store.take(worker.name)
        if errand is not None:
            worker.do(errand)
        elif until_idle:
            return
        else:
            over.wait(_PAUSE_S)


class _Worker:
    """One process that does errands."""

    def __init__(self, store: "ErrandStore", name: str, over: threading.Event) -> None:
        self.name = name
        self._store = store
        self._over = over

    def do(self, errand: Errand) -> None:
        """Do an errand to its end; a mistake of ours closes it with its name."""
        # Only once the framework is started.
        from sootline.wiring.doing import StoppedError, do  # noqa: PLC0415

        with _Beats(self._store, errand, self.name, self._over) as beats:
            try:
                outcome, well = do(errand.wish, beats.tell), True
            except StoppedError:
                return
            except Exception as error:
                _LOG.exception("an errand failed", extra={"command": errand.wish.kind.value})
                what = (("what", type(error).__name__),)
                outcome, well = Outcome(message=MessageId("errands.failed"), values=what), False
        if not self._over.is_set():
            self._store.hand_in(errand, self.name, outcome, well=well)


class _Beats:
    """Says how far an errand is, beside the work: a search may not look up for a while."""

    def __init__(
        self, store: "ErrandStore", errand: Errand, worker: str, over: threading.Event
    ) -> None:
        self._store, self._errand, self._worker = store, errand, worker
        self._over, self._lost, self._ended = over, threading.Event(), threading.Event()
        self._began, self._done = time.monotonic(), 0
        self._thread = threading.Thread(target=self._beat, daemon=True)

    def tell(self, done: int) -> bool:
        """Keep what is done; False where the errand is another's by now, or all is over."""
        self._done = done
        return not (self._lost.is_set() or self._over.is_set())

    def __enter__(self) -> "_Beats":
        self._thread.start()
        return self

    def __exit__(self, *_: object) -> None:
        self._ended.set()
        self._thread.join()

    def _beat(self) -> None:
        # Only once the framework is started.
        from django.db import DatabaseError, connections  # noqa: PLC0415

        while not self._ended.wait(_BEAT_EVERY_S):
            try:
                if not self._store.beat(self._errand, self._worker, self._so_far()):
                    self._lost.set()
            except DatabaseError as error:
                _LOG.error("no beat could be written: %s", type(error).__name__)
        connections.close_all()

    def _so_far(self) -> int:
        """Return seconds where seconds were given, else what the work last told."""
        wish = self._errand.wish
        if wish.kind is not ErrandKind.IMPROVE:
            return self._done
        return min(int(time.monotonic() - self._began), wish.total)


if __name__ == "__main__":
    main()
