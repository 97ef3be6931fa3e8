"""A process that dies begins again, after a wait that grows while it keeps dying."""

import os
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from sootline.wiring.supervising import Kept, next_wait, supervise


@pytest.mark.parametrize(
    ("wait", "ran", "expected"),
    [(0, 0.1, 1), (1, 0.1, 2), (16, 59, 32), (32, 1, 60), (60, 1, 60), (60, 60, 1)],
)
def test_the_wait_grows_while_it_keeps_dying(wait: float, ran: float, expected: float) -> None:
    """It doubles up to a minute; whoever ran for a minute begins anew."""
    assert next_wait(wait, ran) == expected


def _until(seen: object, seconds: float = 15.0) -> bool:
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if seen():  # type: ignore[operator]
            return True
        time.sleep(0.05)
    return False


def test_a_killed_process_begins_again_and_all_end_when_told(tmp_path: Path) -> None:
    """Its own children go with it, so that nothing holds the port; at the end nobody is left."""
    child = "import subprocess, sys, time; p = subprocess.Popen([sys.executable, '-c', 'import time; time.sleep(60)']); open(sys.argv[1], 'w').write(str(p.pid)); time.sleep(60)"  # noqa: E501
    note = tmp_path / "pid"
    kept = Kept("one", (sys.executable, "-c", child, str(note)))
    over = threading.Event()
    thread = threading.Thread(target=supervise, args=([kept], over))
    thread.start()
    assert _until(lambda: note.exists() and note.read_text())
    grandchild = int(note.read_text())
    assert kept.process is not None
    os.kill(kept.process.pid, signal.SIGKILL)

    assert _until(lambda: kept.times == 2)
    assert _until(lambda: not _runs(grandchild))
    over.set()
    thread.join(20)
    assert not thread.is_alive()
    assert kept.process.poll() is not None


def test_a_process_on_the_leash_ends_with_its_parent(tmp_path: Path) -> None:
    """A supervisor that is killed leaves nobody behind."""
    note = tmp_path / "pid"
    child = f"import os, time; from sootline.wiring.leash import end_with_parent; end_with_parent(); open({str(note)!r}, 'w').write(str(os.getpid())); time.sleep(60)"  # noqa: E501
    parent = f"import sys, threading; from sootline.wiring.supervising import Kept, supervise; supervise([Kept('x', (sys.executable, '-c', {child!r}))], threading.Event())"  # noqa: E501
    process = subprocess.Popen([sys.executable, "-c", parent])
    assert _until(lambda: note.exists() and note.read_text())
    process.kill()
    process.wait()

    assert _until(lambda: not _runs(int(note.read_text())))


def _runs(pid: int) -> bool:
    try:
        return Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[0] != "Z"
    except OSError:
        return False
