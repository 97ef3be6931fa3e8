"""What stands in the parts of a workbook, read as a stream and never as a whole?

Each part is parsed as it is inflated. A document type or an entity of its own ends the reading;
elements are counted. Sources of the form: ECMA-376 part 1 (workbook, shared strings, styles).
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import PurePosixPath
from xml.parsers import expat

from sootline.files.archives import Archive
from sootline.files.tables import MAX_TEXTS, refusal

MAX_ELEMENTS = 1_000_000
# A workbook uses a few hundred; each new one costs the parser memory for good.
MAX_NAMES = 5_000
Attributes = dict[str, str]

# Built-in number formats that show a day, also of the East Asian sets (ECMA-376 part 1, 18.8.30).
_DATE_FORMATS = frozenset((*range(14, 18), 22, *range(27, 32), 36, *range(50, 55), 57, 58))
_FORMAT_LITERALS = re.compile(r'"[^"]*"|\\.|_.|\*.|\[[^\]]*\]')


class PartReader:
    """Parses one part, telling `start`, `end` and `text` what it meets; names lose their prefix.

    Args:
        archive: where the part is.
        part: its name.
    """

    def __init__(self, archive: Archive, part: str) -> None:
        self._archive = archive
        self._part = part
        self._count = 0
        self._bare: dict[str, str] = {}

    def parse(
        self,
        start: Callable[[str, Attributes], None],
        end: Callable[[str], None] | None = None,
        text: Callable[[str], None] | None = None,
    ) -> None:
        """Read the part to its end.

        Raises:
            BadInputError: it is missing, no well-formed XML, declares a document type or an
                entity, or holds more elements than any real workbook.
        """
        parser = expat.ParserCreate(namespace_separator="}")
        parser.buffer_text = True
        parser.buffer_size = 64 * 1024
        parser.StartDoctypeDeclHandler = self._refuse_declaration
        parser.EntityDeclHandler = self._refuse_declaration

        def bare(name: str) -> str:
            """Return a name without its namespace; each is taken apart once."""
            if name not in self._bare:
                self._bare[name] = name.rpartition("}")[2]
            return self._bare[name]

        def counted(name: str, attributes: Attributes) -> None:
            self._count += 1
            if self._count > MAX_ELEMENTS:
                raise self._refusal("table.xlsx.elements", limit=MAX_ELEMENTS)
            start(bare(name), attributes)

        parser.StartElementHandler = counted
        if end:
            parser.EndElementHandler = lambda name: end(bare(name))
        if text:
            parser.CharacterDataHandler = text
        try:
            for block in self._archive.blocks(self._part):
                parser.Parse(block, False)
                if len(parser.intern) > MAX_NAMES:
                    raise self._refusal("table.xlsx.names", limit=MAX_NAMES)
            parser.Parse(b"", True)
        except expat.ExpatError:
            raise self._refusal("table.xlsx.not_xml") from None

    def _refuse_declaration(self, *_: object) -> None:
        raise self._refusal("table.xlsx.declaration")

    def _refusal(self, message: str, **values: object) -> Exception:
        return refusal(f"{self._archive.name}:{self._part}", message, part=self._part, **values)


@dataclass(frozen=True, kw_only=True)
class Sheet:
    """One sheet of a workbook."""

    name: str
    part: str
    hidden: bool


@dataclass(kw_only=True)
class Workbook:
    """What a workbook says of itself.

    Args:
        from_1904: whether its days are counted from 1904.
    """

    sheets: tuple[Sheet, ...] = ()
    from_1904: bool = False
    strings: list[str] = field(default_factory=list)
    dated_styles: frozenset[int] = frozenset()
    padded_styles: dict[int, int] = field(default_factory=dict)


def read_workbook(archive: Archive) -> Workbook:
    """Read which sheets there are, the shared strings, and which styles show dates.

    Raises:
        BadInputError: the archive is no workbook, or a part is damaged or hostile.
    """
    if "xl/workbook.xml" not in archive.members:
        raise refusal(archive.name, "table.xlsx.no_workbook")
    targets = _targets(archive)
    workbook = Workbook()
    found: list[Sheet] = []

    def start(name: str, attributes: Attributes) -> None:
        if name == "workbookPr":
            workbook.from_1904 = attributes.get("date1904") in ("1", "true")
        elif name == "sheet":
            reference = next(
                (value for key, value in attributes.items() if key.endswith("}id")), ""
            )
            state = attributes.get("state", "visible")
            title = attributes.get("name", "")[:31]
            part = targets.get(reference, "")
            found.append(Sheet(name=title, part=part, hidden=state != "visible"))

    PartReader(archive, "xl/workbook.xml").parse(start)
    workbook.sheets = tuple(found)
    if "xl/sharedStrings.xml" in archive.members:
        workbook.strings = _strings(archive)
    if "xl/styles.xml" in archive.members:
        workbook.dated_styles, workbook.padded_styles = _styles(archive)
    return workbook


def _targets(archive: Archive) -> dict[str, str]:
    """Return the part each relation of the workbook points at."""
    found: dict[str, str] = {}

    def start(name: str, attributes: Attributes) -> None:
        if name == "Relationship" and attributes.get("TargetMode") != "External":
            target = attributes.get("Target", "")
            inside = target[1:] if target.startswith("/") else str(PurePosixPath("xl") / target)
            found[attributes.get("Id", "")] = inside

    PartReader(archive, "xl/_rels/workbook.xml.rels").parse(start)
    return found


def _strings(archive: Archive) -> list[str]:
    """Return the shared strings: the text of each, without its phonetic reading."""
    found: list[str] = []
    pieces: list[str] = []
    inside = {"t": 0, "rPh": 0}
    size = 0

    def start(name: str, _attributes: Attributes) -> None:
        if name in inside:
            inside[name] += 1

    def end(name: str) -> None:
        nonlocal size
        if name in inside:
            inside[name] -= 1
        elif name == "si":
            text = "".join(pieces)
            pieces.clear()
            size += 60 + len(text) * 2
            if size > MAX_TEXTS:
                limit = f"{MAX_TEXTS // 1024 // 1024} MiB"
                raise refusal(archive.name, "table.texts", limit=limit)
            found.append(text)

    def text(data: str) -> None:
        if inside["t"] and not inside["rPh"]:
            pieces.append(data)

    PartReader(archive, "xl/sharedStrings.xml").parse(start, end, text)
    return found


def _styles(archive: Archive) -> tuple[frozenset[int], dict[int, int]]:
    """Return which cell styles show a date, and which pad numbers with zeros to how many digits."""
    formats: dict[int, str] = {}
    used: list[int] = []
    inside = False

    def start(name: str, attributes: Attributes) -> None:
        nonlocal inside
        if name == "numFmt":
            formats[_number(attributes.get("numFmtId"))] = attributes.get("formatCode", "")
        elif name == "cellXfs":
            inside = True
        elif name == "xf" and inside:
            used.append(_number(attributes.get("numFmtId")))

    def end(name: str) -> None:
        nonlocal inside
        if name == "cellXfs":
            inside = False

    PartReader(archive, "xl/styles.xml").parse(start, end)
    dated = {
        style for style, number in enumerate(used)
        if (_shows_date(formats[number]) if number in formats else number in _DATE_FORMATS)
    }  # fmt: skip
    padded = {
        style: len(formats[number])
        for style, number in enumerate(used)
        if re.fullmatch(r"0{2,32}", formats.get(number, ""))
    }
    return frozenset(dated), padded


def _shows_date(code: str) -> bool:
    """Whether a number format shows days, months or years; hours alone are no date."""
    first = _FORMAT_LITERALS.sub("", code).split(";")[0].lower()
    return "general" not in first and bool(re.search(r"[dy]|mmm", first))


def _number(text: str | None) -> int:
    return int(text) if text and text.isascii() and text.isdigit() and len(text) < 7 else -1
