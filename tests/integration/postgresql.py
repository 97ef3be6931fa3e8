"""A PostgreSQL server of the tests' own: made in a temporary folder, gone afterwards."""

import os
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

_PROGRAMS = Path("/usr/lib/postgresql")


@dataclass(frozen=True, kw_only=True)
class Server:
    """A running server.

    Args:
        folder: where its socket is.
        programs: where its programs are.
    """

    folder: Path
    programs: Path

    def url(self, name: str, user: str = "postgres") -> str:
        """Return the address of a database on it."""
        return f"postgresql://{user}@/{name}?host={self.folder}"

    def run(self, statement: str, database: str = "postgres") -> None:
        """Run one statement as the server's own superuser."""
        where = ["-h", str(self.folder), "-U", "postgres", "-d", database]
        command = [str(self.programs / "psql"), *where, "-v", "ON_ERROR_STOP=1", "-qc", statement]
        subprocess.run(command, check=True, capture_output=True)

    def control(self, *words: str) -> None:
        """Start or stop it."""
        options = f"-c listen_addresses='' -c unix_socket_directories={self.folder}"
        data, log = self.folder / "data", self.folder / "log"
        command = [self.programs / "pg_ctl", "-D", data, "-w", "-l", log, "-o", options, *words]
        subprocess.run(_as_postgres(map(str, command)), check=True, stdout=subprocess.DEVNULL)


def programs() -> Path | None:
    """Return where the newest server's programs are; None where there is none."""
    found = sorted(_PROGRAMS.glob("*/bin/initdb"), key=lambda path: int(path.parts[-3]))
    if found:
        return found[-1].parent
    elsewhere = shutil.which("initdb")
    return Path(elsewhere).parent if elsewhere else None


@contextmanager
def server(where: Path) -> Iterator[Server]:
    """Run a server while the block runs.

    Args:
        where: the server's programs.
    """
    folder = Path(tempfile.mkdtemp(prefix="sootline-pg-"))
    one = Server(folder=folder, programs=where)
    if _is_root():
        shutil.chown(folder, "postgres", "postgres")
    make = [where / "initdb", "-D", folder / "data", "-A", "trust", "-U", "postgres", "-k",
            "--no-sync", "-E", "UTF8", "--locale=C"]  # fmt: skip
    try:
        subprocess.run(_as_postgres(map(str, make)), check=True, stdout=subprocess.DEVNULL)
        one.control("start")
        yield one
        one.control("-m", "immediate", "stop")
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def _is_root() -> bool:
    return hasattr(os, "geteuid") and os.geteuid() == 0


def _as_postgres(command: Iterator[str]) -> list[str]:
    """Run a command as another user where this is root: a server refuses to be."""
    before = ["runuser", "-u", "postgres", "--"] if _is_root() else []
    return [*before, *command]
