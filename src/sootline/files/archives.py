"""May this zip archive be unpacked, and what do its members hold?

The directory is judged before anything is inflated: how many members, how large, how dense, under
which names. Then every member is inflated once and counted, because a directory can lie.
"""

import copy
import io
import struct
import zipfile
import zlib
from collections.abc import Iterator
from pathlib import PurePosixPath

from sootline.core.basis import BadInputError, Fault
from sootline.core.roster import fault
from sootline.files.tables import refusal

MAX_MEMBERS = 1_000
MAX_INFLATED = 50 * 1000 * 1000
MAX_RATIO = 100
_MAX_DIRECTORY = 1024 * 1024
_BLOCK = 64 * 1024
_END = struct.Struct("<4s4H2LH")
_END_MARK = b"PK\x05\x06"
_ARCHIVES = (".zip", ".xlsx", ".xlsm", ".docx", ".jar", ".gz", ".bz2", ".xz", ".7z", ".rar", ".tar")
_ARCHIVE_STARTS = (b"PK\x03\x04", b"PK\x05\x06", b"\x1f\x8b", b"7z\xbc\xaf", b"Rar!", b"\xfd7zXZ")
_METHODS = (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED)
_ENCRYPTED = 0x1


class Archive:
    """A zip archive whose every member was inflated and counted.

    Raises:
        BadInputError: it is no whole zip archive or goes beyond a bound; every fault of its
            directory is listed.
    """

    def __init__(self, content: bytes, name: str) -> None:
        self.name = name
        _check_end(content, name)
        try:
            self._zip = zipfile.ZipFile(io.BytesIO(content))
        except (zipfile.BadZipFile, ValueError, NotImplementedError, struct.error):
            raise refusal(name, "table.zip.damaged") from None
        self._members = {info.filename: info for info in self._zip.infolist()}
        faults = tuple(_directory_faults(self._zip.infolist(), name))
        if faults:
            raise BadInputError(faults)
        for info in self._members.values():
            for _block in self._inflate(info):
                pass

    @property
    def members(self) -> frozenset[str]:
        """The names of the members."""
        return frozenset(self._members)

    def blocks(self, member: str) -> Iterator[bytes]:
        """Return a member's content, block by block.

        Raises:
            BadInputError: there is no such member.
        """
        if member not in self._members:
            raise refusal(self.name, "table.xlsx.part_missing", part=member)
        return self._inflate(self._members[member])

    def _inflate(self, info: zipfile.ZipInfo) -> Iterator[bytes]:
        """Return what a member really holds, and refuse more or less than its directory says."""
        place = f"{self.name}:{info.filename}"
        # The library stops at the stated size; with a larger one it goes on to the real end.
        unbounded = copy.copy(info)
        unbounded.file_size = MAX_INFLATED + 1
        count = 0
        try:
            with self._zip.open(unbounded) as file:
                while block := file.read(_BLOCK):
                    if count == 0 and block.startswith(_ARCHIVE_STARTS):
                        raise refusal(place, "table.zip.nested", member=info.filename)
                    count += len(block)
                    if count > info.file_size:
                        break
                    yield block
        except BadInputError:
            raise
        except (zipfile.BadZipFile, zlib.error, EOFError, ValueError, NotImplementedError, OSError):
            raise refusal(place, "table.zip.damaged_member", member=info.filename) from None
        if count != info.file_size:
            values = {"member": info.filename, "stated": info.file_size}
            raise refusal(place, "table.zip.lying_size", **values)


def _check_end(content: bytes, name: str) -> None:
    """Judge the directory's own summary before the library reads entry after entry."""
    at = content.rfind(_END_MARK, max(0, len(content) - _END.size - 0xFFFF))
    if at < 0 or at + _END.size > len(content):
        raise refusal(name, "table.zip.damaged")
    _, disk, _, here, count, size, _, _ = _END.unpack_from(content, at)
    if disk or here != count or content[at - 20 : at - 16] == b"PK\x06\x07":
        raise refusal(name, "table.zip.split")
    if count > MAX_MEMBERS:
        raise refusal(name, "table.zip.members", count=count, limit=MAX_MEMBERS)
    if size > _MAX_DIRECTORY:
        raise refusal(name, "table.zip.directory", count=size, limit=_MAX_DIRECTORY)


def _directory_faults(infos: list[zipfile.ZipInfo], name: str) -> Iterator[Fault]:
    if len(infos) > MAX_MEMBERS:
        yield fault(name, "table.zip.members", count=len(infos), limit=MAX_MEMBERS)
        return
    total = sum(info.file_size for info in infos)
    if total > MAX_INFLATED:
        megabytes, limit = f"{total / 1e6:.0f} MB", f"{MAX_INFLATED / 1e6:.0f} MB"
        yield fault(name, "table.zip.inflated", count=megabytes, limit=limit)
    seen: set[str] = set()
    for info in infos:
        member = info.filename
        place = f"{name}:{member}"
        if member in seen:
            yield fault(place, "table.zip.twice", member=member)
        seen.add(member)
        if _leads_out(info.orig_filename):
            yield fault(place, "table.zip.path", member=member)
        if member.lower().endswith(_ARCHIVES):
            yield fault(place, "table.zip.nested", member=member)
        if info.file_size > MAX_RATIO * max(info.compress_size, 1):
            ratio = info.file_size // max(info.compress_size, 1)
            yield fault(place, "table.zip.ratio", member=member, count=ratio, limit=MAX_RATIO)
        if info.flag_bits & _ENCRYPTED:
            yield fault(place, "table.zip.encrypted", member=member)
        elif info.compress_type not in _METHODS:
            yield fault(place, "table.zip.method", member=member)


def _leads_out(member: str) -> bool:
    """Whether a member's name would lead out of the folder it is unpacked into."""
    parts = PurePosixPath(member).parts
    return (
        member.startswith("/") or ".." in parts or "\\" in member or "\0" in member or ":" in member
    )
