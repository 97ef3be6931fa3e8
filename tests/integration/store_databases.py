"""Fresh databases for tests of the store: each test commits for real, in a copy of its own."""

import atexit
import itertools
import os
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import ExitStack
from dataclasses import dataclass, field
from pathlib import Path

import django
from django.core.management import call_command
from django.db import connections
from tests.integration.postgresql import Server, programs, server

FOLDER = Path(tempfile.mkdtemp(prefix="sootline-tests-"))
atexit.register(shutil.rmtree, FOLDER, ignore_errors=True)


def set_up() -> None:
    """Start the framework with the shipped settings and a data directory of the tests' own."""
    os.environ["SOOTLINE_DATA"] = str(FOLDER)
    os.environ["DJANGO_SETTINGS_MODULE"] = "sootline.project.settings"
    os.environ.pop("DATABASE_URL", None)
    django.setup()


@dataclass(frozen=True, kw_only=True)
class Database:
    """One database a test works in.

    Args:
        url: None is a file.
        folder: the data directory.
    """

    vendor: str
    folder: Path
    url: str | None = None

    @property
    def file(self) -> Path:
        """The database file, of SQLite."""
        return self.folder / "sootline.sqlite3"

    @property
    def environment(self) -> dict[str, str]:
        """What a process of its own needs to work in the same database."""
        own = {"SOOTLINE_DATA": str(self.folder), "DATABASE_URL": self.url or ""}
        return {**os.environ, **own}


@dataclass
class Databases:
    """Makes databases from one that was migrated once."""

    folder: Path = field(default_factory=lambda: Path(tempfile.mkdtemp(dir=FOLDER)))
    last: Database | None = None
    _stack: ExitStack = field(default_factory=ExitStack)
    _counter: Iterator[int] = field(default_factory=itertools.count)
    _server: Server | None = None
    _file: Path | None = None

    def able(self, vendor: str) -> bool:
        """Whether this machine has what the database needs."""
        return vendor == "sqlite" or programs() is not None

    def fresh(self, vendor: str, *, migrated: bool = True) -> Database:
        """Make a database and let the framework's connection lead to it."""
        folder = self.folder / f"d{next(self._counter)}"
        folder.mkdir()
        if vendor == "sqlite":
            made = Database(vendor=vendor, folder=folder)
            if migrated:
                shutil.copyfile(self._template_file(), made.file)
        else:
            name = folder.name
            template = "migrated" if migrated else "template0"
            self._running().run(f"CREATE DATABASE {name} TEMPLATE {template}")
            made = Database(vendor=vendor, folder=folder, url=self._running().url(name))
        lead_to(made)
        self.last = made
        return made

    def server(self) -> Server:
        """Return the running PostgreSQL server."""
        return self._running()

    def close(self) -> None:
        """Stop the server and take everything away."""
        connections.close_all()
        self._stack.close()
        shutil.rmtree(self.folder, ignore_errors=True)

    def _template_file(self) -> Path:
        if self._file is None:
            folder = self.folder / "template"
            folder.mkdir()
            lead_to(Database(vendor="sqlite", folder=folder))
            call_command("migrate", verbosity=0)
            connections["default"].close()
            self._file = folder / "sootline.sqlite3"
        return self._file

    def _running(self) -> Server:
        if self._server is None:
            where = programs()
            assert where is not None  # `able` was asked
            self._server = self._stack.enter_context(server(where))
            self._server.run("CREATE DATABASE migrated")
            url = self._server.url("migrated")
            lead_to(Database(vendor="postgresql", folder=self.folder, url=url))
            call_command("migrate", verbosity=0)
            connections["default"].close()
        return self._server


def lead_to(database: Database) -> None:
    """Let the framework's connection lead to a database, in every thread from now on."""
    # Only once the framework is set up.
    from sootline.project.databases import database as settings_of  # noqa: PLC0415

    connections["default"].close()
    fresh = settings_of(database.url, database.folder)
    connections.databases["default"] = {**connections.databases["default"], **{
        "USER": "", "PASSWORD": "", "HOST": "", "PORT": "", "CONN_MAX_AGE": 0,
    }, **fresh, "CONN_MAX_AGE": 0}  # fmt: skip
    del connections["default"]
