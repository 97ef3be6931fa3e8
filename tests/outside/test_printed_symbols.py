"""Printed codes and papers against what standards publish of them.

Code 39: ISO/IEC 16388, table of characters. QR code: ISO/IEC 18004, quiet zone, finder pattern,
size of version 1. Papers: ISO 216 (A4) and ANSI/ASME Y14.1 (letter). Values from memory.
"""

import re

import pypdfium2  # type: ignore[import-untyped]
import pytest
from tests.paper_night import page, piece

from sootline.paper.codes import code_39, modules_of, qr_code
from sootline.paper.page import PaperSize
from sootline.paper.tags import print_tags

# Nine elements, bar first, N narrow and W wide.
CODE_39 = {
    "*": "NWNNWNWNN",
    "0": "NNNWWNWNN",
    "1": "WNNWNNNNW",
    "9": "NNWWNNWNN",
    "A": "WNNNNWNNW",
    "Z": "NWWNWNNNN",
    "-": "NWNNNNWNW",
    ".": "WWNNNNWNN",
    "/": "NWNWNNNWN",
}


def elements(text: str) -> list[str]:
    """Return the elements of a printed Code 39, character by character."""
    drawn = code_39(text)
    assert drawn is not None
    bars = [(int(x), int(wide)) for x, wide in re.findall(r"M(\d+) 0h(\d+)v", drawn)]
    row: list[int] = []
    for (left, wide), (following, _) in zip(bars, [*bars[1:], (bars[-1][0], 0)], strict=True):
        row += [wide, following - left - wide]
    return ["".join("W" if width > 1 else "N" for width in row[i : i + 9]) for i in
            range(0, 10 * (len(text) + 2), 10)]  # fmt: skip


@pytest.mark.parametrize("sign", [sign for sign in CODE_39 if sign != "*"])
def test_every_sign_of_code_39_has_its_published_elements(sign: str) -> None:
    """Start, sign, stop."""
    assert elements(sign) == [CODE_39["*"], CODE_39[sign], CODE_39["*"]]


def test_a_code_39_has_ten_narrow_bars_of_quiet_zone_on_each_side() -> None:
    """And is as wide as it is said to be."""
    drawn = code_39("S-1") or ""
    wide = int(re.findall(r'<svg width="(\d+)"', drawn)[0])
    bars = [(int(x), int(width)) for x, width in re.findall(r"M(\d+) 0h(\d+)v", drawn)]

    assert bars[0][0] >= 10
    assert wide - sum(bars[-1]) >= 10
    assert wide == modules_of("S-1")


@pytest.mark.parametrize("text", ["coat", "S_1", "Ä", "", "S\n"])
def test_what_code_39_does_not_know_is_not_printed_in_it(text: str) -> None:
    """It has capitals, digits and seven other signs; small letters are none of them."""
    assert code_39(text) is None


def test_a_short_tag_is_a_qr_code_of_version_1_with_four_modules_of_quiet_zone() -> None:
    """21 modules and 4 on each side; the finder's first row is seven dark modules."""
    drawn = qr_code("0412")
    path = re.findall(r' d="([^"]+)"', drawn)[-1]

    assert re.search(r'(?:width|viewBox)="(?:0 0 29 29|29)"', drawn)
    assert path.startswith("M4 4.5h7")


@pytest.mark.parametrize(
    ("size", "wide_mm", "high_mm"), [(PaperSize.A4, 210.0, 297.0), (PaperSize.LETTER, 215.9, 279.4)]
)
def test_a_paper_has_its_published_size(size: PaperSize, wide_mm: float, high_mm: float) -> None:
    """To a tenth of a millimetre."""
    with pypdfium2.PdfDocument(print_tags([piece("S-1", "hood")], page(size=size))) as document:
        wide, high = (side / 72 * 25.4 for side in document[0].get_size())

    assert (wide, high) == (pytest.approx(wide_mm, abs=0.1), pytest.approx(high_mm, abs=0.1))
