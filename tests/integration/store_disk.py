"""A disk that notes what SQLite writes and syncs, and fails when it is told to.

The very library that Python's own sqlite3 uses is given one more file system beside its usual one,
under the name `noting`: a database opened as "file:NAME?vfs=noting" works on it. Locks, shared
memory and files are the usual ones; only writes, truncations and syncs pass through here.
"""

import _sqlite3
import ctypes
import ctypes.util
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

NAME = "noting"
_OK, _IO_ERROR, _FULL = 0, 10, 13
# The database, its rollback journal, its log: what must outlive a power cut.
_LASTING = 0x100 | 0x800 | 0x80000

_Open = ctypes.CFUNCTYPE(
    ctypes.c_int, ctypes.c_void_p, ctypes.c_void_p, ctypes.c_void_p, ctypes.c_int,
    ctypes.POINTER(ctypes.c_int),
)  # fmt: skip
_Write = ctypes.CFUNCTYPE(
    ctypes.c_int, ctypes.c_void_p, ctypes.c_void_p, ctypes.c_int, ctypes.c_longlong
)
_Truncate = ctypes.CFUNCTYPE(ctypes.c_int, ctypes.c_void_p, ctypes.c_longlong)
_Sync = ctypes.CFUNCTYPE(ctypes.c_int, ctypes.c_void_p, ctypes.c_int)


class _FileSystem(ctypes.Structure):
    """sqlite3_vfs, version 3. Source: sqlite.org/c3ref/vfs.html."""

    _fields_ = (
        ("version", ctypes.c_int),
        ("file_size", ctypes.c_int),
        ("longest_path", ctypes.c_int),
        ("next", ctypes.c_void_p),
        ("name", ctypes.c_char_p),
        ("own", ctypes.c_void_p),
        ("open", ctypes.c_void_p),
        ("others", ctypes.c_void_p * 15),
    )


class _Methods(ctypes.Structure):
    """sqlite3_io_methods, version 3. Source: sqlite.org/c3ref/io_methods.html."""

    _fields_ = (
        ("version", ctypes.c_int),
        ("close", ctypes.c_void_p),
        ("read", ctypes.c_void_p),
        ("write", ctypes.c_void_p),
        ("truncate", ctypes.c_void_p),
        ("sync", ctypes.c_void_p),
        ("others", ctypes.c_void_p * 13),
    )


@dataclass(frozen=True, kw_only=True)
class Step:
    """One thing that was asked of the disk.

    Args:
        data: what is written; None truncates to `at`, or syncs where `synced` is set.
    """

    file: str
    at: int = 0
    data: bytes | None = None
    synced: bool = False


@dataclass
class Disk:
    """What the disk was asked, and when it fails.

    Args:
        full_after: so many more steps that write succeed, then there is no room; None is endless.
        dead_after: so many more steps of any kind succeed, then nothing does.
        folder: the only one that is looked at. A connection that died is closed for good only once
            nothing refers to it, and SQLite then still tidies up where it was.
    """

    steps: list[Step] = field(default_factory=list)
    full_after: int | None = None
    dead_after: int | None = None
    folder: Path | None = None
    _kept: list[Any] = field(default_factory=list)
    _methods: dict[int, _Methods] = field(default_factory=dict)
    _paths: dict[int, Path] = field(default_factory=dict)

    def fresh(self, folder: Path | None) -> None:
        """Forget everything, fail no more, and look at what happens in a folder."""
        self.steps, self.full_after, self.dead_after, self.folder = [], None, None, folder

    def take(
        self, file: int, *, at: int = 0, data: bytes | None = None, synced: bool = False
    ) -> int:
        """Note a step, or say why it fails."""
        path = self._paths[file]
        if path.parent != self.folder:
            return _OK
        step = Step(file=path.name, at=at, data=data, synced=synced)
        if self.dead_after is not None:
            if self.dead_after <= 0:
                return _IO_ERROR
            self.dead_after -= 1
        if self.full_after is not None and step.data is not None:
            if self.full_after <= 0:
                return _FULL
            self.full_after -= 1
        self.steps.append(step)
        return _OK

    def open_through(self, usual: Any) -> Any:  # noqa: ANN401
        """Return what opens a file and puts this disk between."""

        def opened(system: int, name: int, file: int, flags: int, out: Any) -> int:  # noqa: ANN401
            # The name goes on as the very pointer: the usual file system keeps it.
            result = int(usual(system, name, file, flags, out))
            place = ctypes.cast(file, ctypes.POINTER(ctypes.c_void_p))
            if result == _OK and flags & _LASTING and place[0]:
                self._paths[file] = Path(ctypes.string_at(name).decode())
                place[0] = ctypes.addressof(self._between(int(place[0])))
            return result

        return self.hold(_Open(opened))

    def _between(self, usual: int) -> _Methods:
        """Return the methods of a kind of file, with ours in front of three of them."""
        if usual not in self._methods:
            methods = _Methods.from_buffer_copy(ctypes.string_at(usual, ctypes.sizeof(_Methods)))
            methods.write = self._address(_Write(self._writes(_Write(methods.write))))
            methods.truncate = self._address(_Truncate(self._cuts(_Truncate(methods.truncate))))
            methods.sync = self._address(_Sync(self._sync))
            self._methods[usual] = methods
        return self._methods[usual]

    def _writes(self, usual: Any) -> Callable[[int, int, int, int], int]:  # noqa: ANN401
        def write(file: int, data: int, size: int, at: int) -> int:
            result = self.take(file, at=at, data=ctypes.string_at(data, size))
            return result or int(usual(file, data, size, at))

        return write

    def _cuts(self, usual: Any) -> Callable[[int, int], int]:  # noqa: ANN401
        def truncate(file: int, size: int) -> int:
            return self.take(file, at=size) or int(usual(file, size))

        return truncate

    def _sync(self, file: int, _flags: int) -> int:
        # What a power cut leaves is reckoned from the steps: the real disk need not be waited for.
        return self.take(file, synced=True)

    def _address(self, function: Any) -> int | None:  # noqa: ANN401
        return ctypes.cast(self.hold(function), ctypes.c_void_p).value

    def hold(self, function: Any) -> Any:  # noqa: ANN401
        """Keep what the library calls from being collected."""
        self._kept.append(function)
        return function


def install() -> Disk | None:
    """Make the file system known once; None where Python's SQLite cannot be reached."""
    if not _installed:
        _installed.append(_install())
    return _installed[0]


_installed: list[Disk | None] = []


def _install() -> Disk | None:
    name = ctypes.util.find_library("sqlite3")
    # A Python that carries its own copy inside cannot be reached by this library's name.
    if name is None or name.encode() not in Path(_sqlite3.__file__).read_bytes():
        return None
    library = ctypes.CDLL(name)
    library.sqlite3_vfs_find.restype = ctypes.POINTER(_FileSystem)
    usual = library.sqlite3_vfs_find(None).contents
    disk = Disk()
    ours = _FileSystem.from_buffer_copy(usual)
    ours.name = NAME.encode()
    ours.open = ctypes.cast(disk.open_through(_Open(usual.open)), ctypes.c_void_p).value
    library.sqlite3_vfs_register(ctypes.byref(disk.hold(ours)), 0)
    return disk
