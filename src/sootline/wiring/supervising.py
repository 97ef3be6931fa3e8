"""Are the processes of a server kept at work? One that dies begins again, after a growing wait."""

import logging
import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field

_LOG = logging.getLogger(__name__)
_LOOK_EVERY_S = 0.2
_FIRST_WAIT_S, _LONGEST_WAIT_S = 1.0, 60.0
# Whoever ran so long began well: the wait begins anew.
_WELL_AFTER_S = 60.0
_GRACE_S = 15.0


def next_wait(wait_s: float, ran_s: float) -> float:
    """Return how long to wait before a process is begun again [s].

    Args:
        wait_s: how long was waited the time before; 0 is never.
        ran_s: how long it ran since.
    """
    if ran_s >= _WELL_AFTER_S or wait_s == 0:
        return _FIRST_WAIT_S
    return min(2 * wait_s, _LONGEST_WAIT_S)


@dataclass
class Kept:
    """One process that is kept at work.

    Args:
        name: for the log.
        command: how it is begun.
    """

    name: str
    command: Sequence[str]
    process: subprocess.Popen[bytes] | None = None
    began: float = 0.0
    wait_s: float = 0.0
    again_at: float = 0.0
    times: int = field(default=0)

    def look(self, now: float, environment: Mapping[str, str]) -> None:
        """Begin it where it is not at work and its wait is over."""
        if self.process is not None and self.process.poll() is None:
            return
        if self.process is not None:
            _clear(self.process)
            self.wait_s = next_wait(self.wait_s, now - self.began)
            self.again_at = now + self.wait_s
            self.process = None
            _LOG.error("a process ended and is begun again", extra={"command": self.name})
        if now >= self.again_at:
            # A session of its own, so that what it began can be ended with it. Whoever reads the
            # pipe learns of the end of this process.
            self.process = subprocess.Popen(  # noqa: S603  # our own modules
                self.command,
                env=dict(environment),
                stdin=subprocess.PIPE,
                start_new_session=True,
            )
            self.began = now
            self.times += 1

    def stop(self) -> None:
        """Ask it to end."""
        if self.process is not None and self.process.poll() is None:
            self.process.terminate()

    def wait(self, until: float) -> None:
        """Wait for its end; past the moment it is ended."""
        if self.process is None:
            return
        try:
            self.process.wait(max(0.0, until - time.monotonic()))
        except subprocess.TimeoutExpired:
            self.process.kill()
        _clear(self.process)


def supervise(
    processes: Sequence[Kept],
    over: threading.Event,
    environment: Mapping[str, str] = os.environ,
    clock: Callable[[], float] = time.monotonic,
) -> None:
    """Keep processes at work until told to stop, then end them with grace."""
    while not over.is_set():
        for one in processes:
            one.look(clock(), environment)
        over.wait(_LOOK_EVERY_S)
    for one in processes:
        one.stop()
    until = time.monotonic() + _GRACE_S
    for one in processes:
        one.wait(until)


def until_told() -> threading.Event:
    """Return what is set once somebody stops this process."""
    over = threading.Event()
    for sign in (signal.SIGINT, signal.SIGTERM):
        signal.signal(sign, lambda *_: over.set())
    return over


def python(*words: str) -> tuple[str, ...]:
    """Return the command that runs a part of this program."""
    return (sys.executable, "-m", *words)


def _clear(process: subprocess.Popen[bytes]) -> None:
    """End what a dead process left behind; it would hold the port."""
    if sys.platform != "win32":
        with suppress(ProcessLookupError):
            os.killpg(process.pid, signal.SIGKILL)
