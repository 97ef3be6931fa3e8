"""What stands on a sheet that is a list: fields, boxes, tables, lines to write on?"""

from collections.abc import Mapping, Sequence

from sootline.core.basis import MessageId
from sootline.paper.engine import Facts
from sootline.paper.sheets import print_sheet
from sootline.paper.speaking import Said, Speaker

Block = Mapping[str, Facts]
Cell = Mapping[str, Facts]

TICK: Cell = {"kind": "tick", "said": []}
BLANK: Cell = {"kind": "text", "said": []}


def word(said: Said) -> Cell:
    """Return a cell with a text."""
    return {"kind": "text", "said": said}


def number(identity: str) -> Cell:
    """Return a cell with a number or a name that may be broken anywhere."""
    return {"kind": "id", "said": [identity]}


def table(
    columns: Sequence[tuple[Said, float]],
    rows: Sequence[Sequence[Cell]],
    *,
    ruled: bool = False,
    size: float = 10,
) -> Block:
    """Return a table.

    Args:
        columns: each column's head and width [mm]; 0 shares what is left, -2 takes two shares.
        ruled: with lines between its columns, to write in.
        size: of its letters [pt].
    """
    heads: list[Facts] = [{"head": head, "width": width} for head, width in columns]
    listed = [list(row) for row in rows]
    return {"type": "table", "columns": heads, "rows": listed, "ruled": ruled, "size": size}


def fields(*labels: Said) -> Block:
    """Return fields to fill in, side by side."""
    return {"type": "fields", "fields": list(labels)}


def heading(text: Said) -> Block:
    """Return a heading within the sheet."""
    return {"type": "heading", "text": text}


def box(*texts: Said) -> Block:
    """Return texts in a heavy frame, the first in bold."""
    return {"type": "box", "texts": list(texts)}


def text(said: Said, *, small: bool = False) -> Block:
    """Return a text across the sheet."""
    return {"type": "small" if small else "text", "text": said}


def lines(count: int) -> Block:
    """Return lines to write on."""
    return {"type": "lines", "count": count}


def page_break() -> Block:
    """Begin a new page."""
    return {"type": "break"}


def print_list(
    title: MessageId, blocks: Sequence[Block], speaker: Speaker, *, wide: bool = False
) -> bytes:
    """Return the sheet as PDF.

    Args:
        wide: on paper that lies on its side.
    """
    return print_sheet("list_sheet", title, {"blocks": list(blocks), "wide": wide}, speaker)
