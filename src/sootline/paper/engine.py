"""How does a layout with its facts become a PDF?

The one file that knows the PDF engine. A layout is ours and is code; facts reach it as JSON read
from memory, so that no text of a user is ever read as code. The layout's root holds layouts only,
and layouts import nothing from outside: nothing is fetched and no file of the machine is read.
"""

import datetime as dt
import json
from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import TypeAlias

import typst

from sootline.paper.signs import breakable, visible

Facts: TypeAlias = "str | int | float | bool | Sequence[Facts] | Mapping[str, Facts] | None"

HERE = Path(__file__).parent
FONTS = HERE / "fonts"
LAYOUTS = HERE / "layouts"
PICTURES = HERE / "pictures"


class LayoutError(AssertionError):
    """A layout of ours does not fit its facts: our own mistake, never the user's."""


def typeset(
    layout: str,
    facts: Mapping[str, Facts],
    *,
    printed_at: dt.datetime,
    drawings: Mapping[str, str] | None = None,
) -> bytes:
    """Return the PDF of a layout; equal facts and moment give equal bytes.

    Args:
        layout: name of a file in `layouts/`, without its ending.
        facts: what the layout shows; every text in it is made visible first.
        printed_at: stands in the document as its date.
        drawings: further SVG texts by name, for this document only (codes, a timeline).

    Raises:
        LayoutError: the engine refuses the layout, or warns of it (a font that is not there).
    """
    files: dict[str, bytes] = {
        **_own_files(),
        "main.typ": (LAYOUTS / f"{layout}.typ").read_bytes(),
        "facts.json": json.dumps(_shown(facts), ensure_ascii=False).encode(),
        **{f"drawings/{name}.svg": text.encode() for name, text in (drawings or {}).items()},
    }
    compiler = typst.Compiler(root=LAYOUTS, font_paths=_fonts())
    try:
        pdf, warnings = compiler.compile_with_warnings(
            input=files,  # type: ignore[type-var]  # a mapping of files, as its manual says
            format="pdf",
            timestamp=int(printed_at.timestamp()),
        )
    except typst.TypstError as error:
        raise LayoutError(f"{layout}: {error}") from error
    if warnings:
        raise LayoutError(f"{layout}: {'; '.join(str(warning) for warning in warnings)}")
    assert isinstance(pdf, bytes)  # one PDF was asked for, and no place to write it to
    return pdf


def _shown(facts: Facts) -> Facts:
    match facts:
        case str():
            return breakable(visible(facts))
        case Mapping():
            return {key: _shown(fact) for key, fact in facts.items()}
        case Sequence():
            return [_shown(fact) for fact in facts]
    return facts


@cache
def _own_files() -> dict[str, bytes]:
    pictures = {f"pictures/{path.name}": path.read_bytes() for path in PICTURES.glob("*.svg")}
    return {"frame.typ": (LAYOUTS / "frame.typ").read_bytes(), **pictures}


@cache
def _fonts() -> typst.Fonts:
    return typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=True, font_paths=[str(FONTS)]
    )
