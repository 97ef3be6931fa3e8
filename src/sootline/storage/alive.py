"""Are both processes at work? Each touches a file of its own while it is.

Files, not rows: the sign of life of a process must cost the record's disk no synced write, and be
seen while the database cannot be reached.
"""

import time
from pathlib import Path

PROCESSES = ("web", "worker")
# Between two signs; past three of them a process counts as silent.
EVERY_S = 10.0
_SILENT_S = 3 * EVERY_S


def show_life(folder: Path, process: str) -> None:
    """Leave a sign of life."""
    signs = folder / "alive"
    signs.mkdir(mode=0o700, exist_ok=True)
    (signs / process).touch(mode=0o600)


def silence(folder: Path, process: str) -> float | None:
    """Return for how long a process gave no sign [s]; None where it never did."""
    try:
        return max(0.0, time.time() - (folder / "alive" / process).stat().st_mtime)
    except OSError:
        return None


def is_silent(folder: Path, process: str) -> bool:
    """Whether a process that should be at work gives no sign."""
    since = silence(folder, process)
    return since is None or since > _SILENT_S
