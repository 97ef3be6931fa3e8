"""Bad lists and workbooks, made anew for each test; every word in them is invented.

The kinds follow what a careful taker of files must expect: wrong encodings, open quotation marks,
archives that unpack to far more than they are, documents that declare entities. Each returns the
file's content.
"""

import io
import struct
import zipfile
import zlib
from collections.abc import Callable

import openpyxl

HEADER = "serial,kind,station,made,in_service,status"
ROW = "hood,Station 1,2021-03-01,2021-04-01,in service"


def listed(*rows: str, encoding: str = "utf-8") -> bytes:
    """Make a list of separated values from whole rows."""
    return ("\n".join((HEADER, *rows)) + "\n").encode(encoding)


def pieces(*serials: str) -> bytes:
    """Make a list of hoods with these serials."""
    return listed(*(f"{serial},{ROW}" for serial in serials))


def dated(*dates: str) -> bytes:
    """Make a list of hoods made on these dates."""
    rows = (f"D{n},hood,Station 1,{date},," for n, date in enumerate(dates, start=1))
    return listed(*rows)


def workbook(change: Callable[[openpyxl.Workbook], object] = lambda _: None) -> bytes:
    """Make a workbook with one hood, changed as asked, by a library that shares nothing with us."""
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    sheet.title = "Gear"
    sheet.append(HEADER.split(","))
    sheet.append(["SN-1", *ROW.split(",")])
    change(book)
    file = io.BytesIO()
    book.save(file)
    return file.getvalue()


def rewritten(content: bytes, **parts: bytes) -> bytes:
    """Put other content into parts of a workbook ("xl/workbook.xml" is named workbook)."""
    names = {"workbook": "xl/workbook.xml", "sheet": "xl/worksheets/sheet1.xml"}
    named = {names.get(name, name): part for name, part in parts.items()}
    file = io.BytesIO()
    with (
        zipfile.ZipFile(io.BytesIO(content)) as old,
        zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as new,
    ):
        for member in old.namelist():
            new.writestr(member, named.pop(member) if member in named else old.read(member))
        for member, part in named.items():
            new.writestr(member, part)
    return file.getvalue()


def archive(members: dict[str, bytes], method: int = zipfile.ZIP_DEFLATED) -> bytes:
    """Make an archive of these members."""
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w", method) as new:
        for name, content in members.items():
            new.writestr(name, content)
    return file.getvalue()


def entities() -> bytes:
    """Make a workbook whose part expands entities tenfold, eight times over."""
    levels = "".join(
        f'<!ENTITY a{n} "{"&a" + str(n - 1) + ";" if n else "x"}{"y" * 9}">' for n in range(9)
    )
    part = f'<?xml version="1.0"?><!DOCTYPE w [{levels}]><workbook>&a8;</workbook>'
    return rewritten(workbook(), workbook=part.encode())


def bomb() -> bytes:
    """Make a workbook with a member of 300 MB that packs into a thousandth."""
    return rewritten(workbook(), **{"xl/worksheets/sheet2.xml": b"\0" * 300_000_000})


def lying(size: int = 10) -> bytes:
    """Make a workbook whose directory says that its first member is far smaller than it is."""
    content = bytearray(workbook())
    at = content.find(b"PK\x01\x02")
    struct.pack_into("<L", content, at + 24, size)
    return bytes(content)


def lying_with_checksum(size: int = 10) -> bytes:
    """Lie about a member's size, with the checksum of just what would be read."""
    whole = b"<a>" + b"x" * 1000 + b"</a>"
    content = bytearray(archive({"a.xml": whole}))
    for mark, checksum, stated in ((b"PK\x03\x04", 14, 22), (b"PK\x01\x02", 16, 24)):
        at = content.find(mark)
        struct.pack_into("<L", content, at + checksum, zlib.crc32(whole[:size]))
        struct.pack_into("<L", content, at + stated, size)
    return bytes(content)


def one_string(text: str) -> Callable[[openpyxl.Workbook], object]:
    """Put a text into cell A2."""
    return lambda book: book.worksheets[0].__setitem__("A2", text)


def numbered(element: str, count: int) -> bytes:
    """Make a sheet of nothing but one element, each time with another number in it."""
    scattered = ((n * 2_654_435_761) % 1_000_000_007 for n in range(count))
    inside = "".join(element % number for number in scattered)
    return f"<worksheet>{inside}</worksheet>".encode()
