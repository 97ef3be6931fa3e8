"""Reads printed sheets back: words, fonts, boxes of text, pictures of pages, codes."""

import io
from collections.abc import Iterator
from typing import cast

import pypdfium2  # type: ignore[import-untyped]
import zxingcpp
from PIL import Image
from pypdf import PdfReader
from pypdf.generic import DictionaryObject


def words_of(pdf: bytes) -> str:
    """Return all text of a PDF as it is laid out."""
    with pypdfium2.PdfDocument(pdf) as document:
        pages = [page.get_textpage().get_text_range() for page in document]
    return "\n".join(pages).replace("\u200b", "")


def text_of(pdf: bytes) -> str:
    """Return all text of a PDF, without blanks and breaks that only the layout put in."""
    return "".join(words_of(pdf).split())


def pages_of(pdf: bytes) -> int:
    """Return how many pages a PDF has."""
    with pypdfium2.PdfDocument(pdf) as document:
        return len(document)


def fonts_of(pdf: bytes) -> dict[str, bool]:
    """Return the fonts of a PDF by name, and whether the file of each is embedded."""
    found: dict[str, bool] = {}
    for page in PdfReader(io.BytesIO(pdf)).pages:
        resources = cast("DictionaryObject", page["/Resources"])
        for entry in cast("DictionaryObject", resources.get("/Font", {})).values():
            font = entry.get_object()
            name = font["/BaseFont"].partition("+")[2].removesuffix("-Identity-H")
            inner = font["/DescendantFonts"][0].get_object() if "/DescendantFonts" in font else font
            descriptor = inner["/FontDescriptor"].get_object()
            found[name] = any(f"/FontFile{kind}" in descriptor for kind in ("", "2", "3"))
    return found


def images_of(pdf: bytes, dpi: int = 300) -> Iterator[Image.Image]:
    """Return a grey picture of every page."""
    with pypdfium2.PdfDocument(pdf) as document:
        for page in document:
            yield page.render(scale=dpi / 72).to_pil().convert("L")


def photocopied(image: Image.Image) -> Image.Image:
    """Return a page as a photocopier without greys gives it back."""
    return image.point(lambda grey: 255 if grey > 128 else 0)


def codes_in(image: Image.Image) -> set[tuple[str, str]]:
    """Return every code of a picture: its kind and its text."""
    found = zxingcpp.read_barcodes(image)
    return {(str(one.format), one.text) for one in found}


def text_outside(pdf: bytes) -> list[str]:
    """Return the texts whose boxes leave the page."""
    outside: list[str] = []
    with pypdfium2.PdfDocument(pdf) as document:
        for page in document:
            wide, high = page.get_size()
            text = page.get_textpage()
            for place in range(text.count_rects()):
                left, bottom, right, top = text.get_rect(place)
                if left < 0 or bottom < 0 or right > wide or top > high:
                    outside.append(text.get_text_bounded(left, bottom, right, top))
    return outside
