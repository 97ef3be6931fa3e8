"""Which record does an exported file hold, line by line?

A record may be larger than memory: it is read as it is checked. A line that cannot be read is
handed on as damage; only a first line that is no record's refuses the file.
"""

from collections.abc import Iterator
from pathlib import Path

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.ledger import Anchor, read_anchors
from sootline.core.ledger.exports import Exported, ExportHead, read_head, read_line
from sootline.files.reading import read_text

# An entry is a few hundred bytes; a photograph is never inside one.
LONGEST_LINE = 4 * 1024 * 1024


class LedgerFile:
    """An exported record that is read from its file as often as it is asked for.

    Args:
        path: of a file in the form of docs/reference/ledger-format.md.

    Raises:
        BadInputError: the file cannot be read, or its first line is no record's.
    """

    def __init__(self, path: Path) -> None:
        self._path = path
        first = next(self._lines(), "")
        try:
            self.head: ExportHead = read_head(first)
        except BadInputError as error:
            faults = [
                Fault(place=f"{path.name}: line 1", message=fault.message, values=fault.values)
                for fault in error.faults
            ]
            raise BadInputError(faults) from None

    def entries(self) -> Iterator[Exported]:
        """Read the entries in the order in which they stand."""
        lines = self._lines()
        next(lines)
        return (read_line(line, place) for place, line in enumerate(lines, start=1))

    def _lines(self) -> Iterator[str]:
        try:
            with self._path.open(encoding="utf-8", errors="surrogateescape", newline="\n") as file:
                while line := file.readline(LONGEST_LINE):
                    yield line.rstrip("\n")
        except OSError as error:
            values = (("file", str(self._path)), ("reason", error.strerror or str(error)))
            message = MessageId("files.read.failed")
            fault = Fault(place=str(self._path), message=message, values=values)
            raise BadInputError([fault]) from None


def read_anchor_file(path: Path) -> tuple[Anchor, ...]:
    """Return the anchors a file holds, one a line.

    Raises:
        BadInputError: unreadable, or no anchor.
    """
    try:
        return read_anchors(read_text(path))
    except BadInputError as error:
        faults = [
            Fault(place=path.name, message=fault.message, values=fault.values)
            for fault in error.faults
        ]
        raise BadInputError(faults) from None
