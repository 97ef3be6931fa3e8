"""How texts are made visible before they are printed."""

import io
import json
import unicodedata

import pytest
import typst
from PIL import Image

from sootline.paper.engine import FONTS, LAYOUTS
from sootline.paper.signs import drawable, visible

_MISSING = "日"
_ACROSS = 40
_GRID = b"""#set page(width: 400pt, height: auto, margin: 0pt)
#set text(font: ("Atkinson Hyperlegible Next", "DejaVu Sans Mono"), size: 5pt)
#grid(columns: (10pt,) * 40, rows: 10pt,
  ..json("signs.json").map(sign => align(center + horizon, sign)))
"""


@pytest.mark.parametrize(
    ("given", "shown"),
    [
        ("0412", "0412"),
        ("Zoë Łukasiewicz", "Zoë Łukasiewicz"),
        ("e\u0301", "é"),
        ("line\x0cfeed", "line feed"),
        ("two\r\nlines", "two  lines"),
        ("\u202etxt.exe", "[U+202E]txt.exe"),
        ("a\u200bb\x00c", "a[U+200B]b[U+0000]c"),
        ("🧯", "[U+1F9EF]"),
        ("日本", "[U+65E5][U+672C]"),
        ("עברית", "עברית"),
        ("\ud800", "[U+D800]"),
    ],
)
def test_nothing_in_a_text_is_lost_or_hidden(given: str, shown: str) -> None:
    """Blanks stay blanks; controls, orders of direction and missing signs show their code."""
    assert visible(given) == shown


def test_every_sign_listed_is_drawn() -> None:
    """Each listed sign differs from the box the engine draws for a sign it has not."""
    listed = sorted(point for point in drawable() if unicodedata.category(chr(point)) != "Cn")
    signs = [_MISSING, *map(chr, listed)]
    compiler = typst.Compiler(root=LAYOUTS, font_paths=[FONTS], ignore_system_fonts=True)
    files = {"main.typ": _GRID, "signs.json": json.dumps(signs).encode()}
    drawn = compiler.compile(input=files, format="png", ppi=144)  # type: ignore[type-var]
    assert isinstance(drawn, bytes)
    image = Image.open(io.BytesIO(drawn)).convert("L")
    cells = [
        image.crop((20 * x, 20 * y, 20 * x + 20, 20 * y + 20)).tobytes()
        for y, x in (divmod(place, _ACROSS) for place in range(len(signs)))
    ]

    assert [signs[place] for place, cell in enumerate(cells) if place and cell == cells[0]] == []
