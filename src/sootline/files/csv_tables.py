"""Which table does a file of separated values hold?

The encoding is told by a byte order mark, or it is UTF-8, or somebody says it; no character is
ever replaced. Quoting is strict: a quotation mark that is opened and not closed would swallow the
rows after it, so the file is refused at the line where it was opened.
"""

import codecs
import csv
import io
import re
from collections.abc import Iterator

from sootline.core.basis import Bearing
from sootline.core.roster import Table
from sootline.files.tables import MAX_CELL, TableBuilder, Wish, refusal

ENCODINGS = (
    "utf-8",
    "cp1252",
    "iso-8859-1",
    "iso-8859-15",
    "mac-roman",
    "cp437",
    "cp850",
    "utf-16",
)
DELIMITERS = (",", ";", "\t")
_MARKS = (
    (codecs.BOM_UTF8, "utf-8-sig"),
    (codecs.BOM_UTF32_LE, "utf-32"),
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
_MAX_LINE = 1_000_000
# Empty lines and line breaks within cells count too; no real list comes near.
_MAX_LINES = 500_000
_LINES_COMPARED = 20
_BLOCK = 64 * 1024
_SHOWN = 20
_DELIMITER_LINE = re.compile(r"sep=(.)[\r\n]*", re.IGNORECASE)
_QUOTED = re.compile(r'"(?:[^"]|"")*"')


def csv_table(content: bytes, name: str, wish: Wish) -> Table:
    """Read a file of separated values.

    Raises:
        BadInputError: the encoding is not told, a character is no text, the delimiter cannot be
            told, a quotation mark is not closed, or rows and columns disagree.
    """
    lines = _Lines(content, name, _encoding(content, name, wish))
    delimiter = _delimiter(lines, name, wish)
    builder = TableBuilder(name=name, wish=wish)
    spread: list[str] = []
    for first, last, cells in _records(lines, delimiter):
        width = builder.width
        if width is not None and any(cells) and (len(cells) < width or any(cells[width:])):
            builder.refuse(first, "table.ragged", count=len(cells), limit=width)
            continue
        if last > first and cells:
            spread.append(f"{first}-{last}")
        builder.add(first, cells)
    if spread:
        shown = ", ".join(spread[:_SHOWN]) + (", ..." if len(spread) > _SHOWN else "")
        builder.note(Bearing.WARNS, "table.spread", n=len(spread), rows=shown)
    return builder.table()


class _Lines:
    """The lines of a file, decoded as they are asked for; counts them from 1."""

    def __init__(self, content: bytes, name: str, encoding: str) -> None:
        self._content = content
        self.name = name
        self._encoding = encoding
        self.number = 0
        self.since_record: list[str] = []
        self.rewind()

    def rewind(self) -> None:
        """Begin again at the first line."""
        raw = io.BytesIO(self._content)
        self._text = io.TextIOWrapper(raw, encoding=self._encoding, errors="strict", newline="")
        self.number = 0
        self.since_record = []

    def __iter__(self) -> Iterator[str]:
        return self

    def __next__(self) -> str:
        try:
            line = self._text.readline(_MAX_LINE)
        except UnicodeError:
            raise self._undecodable() from None
        if not line:
            raise StopIteration
        self.number += 1
        place = f"{self.name}:{self.number}"
        if self.number > _MAX_LINES:
            raise refusal(place, "table.lines", limit=_MAX_LINES)
        if "\0" in line:
            raise refusal(place, "table.nul", row=self.number)
        if len(line) >= _MAX_LINE:
            raise refusal(place, "table.line", row=self.number, limit=_MAX_LINE)
        self.since_record.append(line)
        return line

    def _undecodable(self) -> Exception:
        """Name the line and the byte; the text layer itself only knows its place in a block."""
        decoder = io.IncrementalNewlineDecoder(
            codecs.getincrementaldecoder(self._encoding)(), translate=True
        )
        row, at = 1, 0
        for step in (_BLOCK, 1):
            try:
                while at < len(self._content):
                    before = decoder.getstate()
                    last = at + step >= len(self._content)
                    row += decoder.decode(self._content[at : at + step], last).count("\n")
                    at += step
            except UnicodeError:
                decoder.setstate(before)
        values = {"row": row, "byte": f"0x{self._content[at]:02X}", "encoding": self._encoding}
        return refusal(f"{self.name}:{row}", "table.encoding", **values)


def _encoding(content: bytes, name: str, wish: Wish) -> str:
    for mark, encoding in _MARKS:
        if content.startswith(mark) and not (
            encoding == "utf-16" and content.startswith(codecs.BOM_UTF32_LE)
        ):
            return encoding
    if wish.encoding is None:
        return "utf-8"
    try:
        asked = codecs.lookup(wish.encoding).name
    except (LookupError, ValueError):
        asked = ""
    if asked not in {codecs.lookup(known).name for known in ENCODINGS}:
        known = ", ".join(ENCODINGS)
        raise refusal(name, "table.encoding_unknown", value=wish.encoding, known=known)
    return asked


def _delimiter(lines: _Lines, name: str, wish: Wish) -> str:
    """Tell the delimiter by the line that names the columns, then by the lines after it."""
    start: list[str] = []
    for line in lines:
        if said := _DELIMITER_LINE.fullmatch(line):
            lines.rewind()
            next(lines)
            return said[1]
        if line.strip() and lines.number >= (wish.header_row or 1):
            start.append(_QUOTED.sub("", line))
        if len(start) == _LINES_COMPARED:
            break
    lines.rewind()
    if not start:
        raise refusal(name, "table.empty")
    there = [mark for mark in DELIMITERS if mark in start[0]]
    if len(there) < 2:
        if not there and "|" in start[0]:
            raise refusal(name, "table.delimiter", found="|")
        return there[0] if there else ","
    even = [mark for mark in there if len({line.count(mark) for line in start}) == 1]
    if len(even) != 1:
        raise refusal(name, "table.delimiter", found=" ".join(map(repr, there)))
    return even[0]


def _records(lines: _Lines, delimiter: str) -> Iterator[tuple[int, int, list[str]]]:
    """Return each record with its first and last line."""
    reader = csv.reader(lines, delimiter=delimiter, strict=True)
    while True:
        first = lines.number + 1
        lines.since_record = []
        try:
            cells = next(reader)
        except StopIteration:
            return
        except csv.Error:
            raise _broken(lines, first, delimiter) from None
        yield first, lines.number, cells


def _broken(lines: _Lines, first: int, delimiter: str) -> Exception:
    """Name what is wrong with a record, at the line where it began to be."""
    text = "".join(lines.since_record)
    name = lines.name
    at = 0
    while at < len(text):
        start, row = at, first + len(re.findall(r"\r\n|\r|\n", text[:at]))
        place = f"{name}:{row}"
        if text[at] == '"':
            match = _QUOTED.match(text, at)
            if match is None or match.end() - start > MAX_CELL:
                return refusal(place, "table.quote_open", row=row, limit=MAX_CELL)
            at = match.end()
            if at < len(text) and text[at] not in (delimiter, "\r", "\n"):
                near = text[max(start, at - 12) : at + 12]
                return refusal(place, "table.quote_inside", row=row, near=ascii(near))
        else:
            at = min((found for mark in (delimiter, "\r", "\n")
                      if (found := text.find(mark, at)) >= 0), default=len(text))  # fmt: skip
        if at - start > MAX_CELL:
            return refusal(place, "table.cell", row=row, count=at - start, limit=MAX_CELL)
        at += 1
    return refusal(f"{name}:{first}", "table.quote_open", row=first, limit=MAX_CELL)
