"""Is the kernel there as machine code? Kept code is used; what is missing is made aside.

Making it takes most of a minute, so nobody who waits for a plan waits for that: until it is there
the text is interpreted, with equal results but fewer tries.
"""

import hashlib
import os
import subprocess
import sys
import time
from functools import cache
from importlib import metadata
from pathlib import Path

from sootline.core.washplan import engine, kernel
from sootline.core.washplan.engine import Engine, interpreted

_STALE_S = 600.0


@cache
def find_engine() -> Engine:
    """Return the compiled engine if its code is kept, else the interpreted one."""
    folder = kept_code()
    if folder is None:
        return interpreted()
    if not (folder / "warm").exists():
        _warm_aside(folder)
        return interpreted()
    return load_compiled(folder)


def load_compiled(folder: Path) -> Engine:
    """Load the compiled engine, whose code is kept in a folder."""
    os.environ["NUMBA_CACHE_DIR"] = str(folder)
    # Only here: it takes most of a second, and few commands search for a plan.
    from sootline.core.washplan.compiled import compiled  # noqa: PLC0415

    return compiled()


@cache
def kept_code() -> Path | None:
    """Return where this version's code is kept, None where nothing can compile it."""
    try:
        maker = metadata.version("numba")
    except metadata.PackageNotFoundError:
        return None
    digest = hashlib.sha256(f"{maker} {sys.version}".encode())
    for source in (
        *sorted(Path(str(kernel.__file__)).parent.glob("*.py")),
        Path(str(engine.__file__)).with_name("compiled.py"),
    ):
        digest.update(source.read_bytes())
    return _cache_home() / "sootline" / f"kernel-{digest.hexdigest()[:16]}"


def _cache_home() -> Path:
    for name in ("SOOTLINE_CACHE", "XDG_CACHE_HOME", "LOCALAPPDATA"):
        if os.environ.get(name):
            return Path(os.environ[name])
    return Path.home() / ".cache"


def _warm_aside(folder: Path) -> None:
    """Begin to compile in another process, unless one does already or nothing can be kept."""
    mark = folder / "warming"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        if mark.exists() and time.time() - mark.stat().st_mtime < _STALE_S:
            return
        mark.touch()
    except OSError:
        return
    subprocess.Popen(
        [sys.executable, "-m", "sootline.wiring.warming"],
        stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        start_new_session=True,
    )  # fmt: skip
