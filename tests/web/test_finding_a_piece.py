"""A piece is found by its number, by the code in a photo, or by what it is and whose."""

import datetime as dt
import io

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from PIL import Image
from tests.paper_reading import images_of
from tests.web.pages import read, text_of

from sootline.paper.codes import MOST_PIXELS
from sootline.paper.page import Page, PaperSize
from sootline.paper.tags import print_tags
from sootline.wiring.demo import demo_job

_WHEN = dt.datetime(2026, 3, 11, 4, 20, tzinfo=dt.UTC)


def _photo(*numbers: str, turned: float = 0.0) -> bytes:
    """Take a photo of printed tags: grey, tilted, as a phone's JPEG."""
    pieces = [one for one in demo_job().components if one.id in numbers]
    sheet = print_tags(pieces, Page(printed_at=_WHEN, size=PaperSize.LETTER))
    (image,) = images_of(sheet, dpi=200)
    strip = image.crop((0, 0, image.width, image.height // 4))
    target = io.BytesIO()
    strip.rotate(turned, expand=True, fillcolor=255).save(target, "JPEG", quality=60)
    return target.getvalue()


def _send(demo: Client, data: bytes, name: str = "code.jpg") -> str:
    answer = demo.post("/pieces/code/", {"photo": SimpleUploadedFile(name, data)}, follow=True)
    assert answer.status_code == 200
    where = answer.redirect_chain[-1][0]
    return f"{where} {text_of(answer.content.decode())}"


@pytest.mark.parametrize("turned", [0.0, 7.0, 180.0])
def test_a_photo_of_a_printed_tag_opens_its_piece(demo: Client, turned: float) -> None:
    """The tag as the paper prints it, straight, tilted, upside down."""
    assert _send(demo, _photo("0473", turned=turned)).startswith("/pieces/0473/ ")


def test_two_tags_in_one_photo_are_named(demo: Client) -> None:
    """Nobody guesses which of them was meant."""
    said = _send(demo, _photo("0473", "0474"))

    assert "Several pieces are in the photo" in said
    assert "0473" in said
    assert "0474" in said


def test_a_photo_without_a_code_says_so(demo: Client) -> None:
    """A blank wall is no piece."""
    target = io.BytesIO()
    Image.new("L", (400, 300), 200).save(target, "PNG")

    assert "No code could be read" in _send(demo, target.getvalue())


def _bomb() -> bytes:
    """Make a picture that is small as a file and too large to open."""
    target = io.BytesIO()
    side = int(MOST_PIXELS**0.5) + 10
    Image.new("1", (side, side)).save(target, "PNG")
    return target.getvalue()


@pytest.mark.parametrize("data", [b"%PDF-1.7", b"GIF89a", b"\xff\xd8\xff broken", _bomb()],
                         ids=["pdf", "gif", "broken", "bomb"])  # fmt: skip
def test_what_is_no_photo_is_refused(demo: Client, data: bytes) -> None:
    """Another kind, damaged, or unpacked too large: refused in plain words."""
    assert "no JPEG, PNG or WebP photo" in _send(demo, data)


def test_without_a_code_by_kind_and_member(demo: Client) -> None:
    """What it is and whose it is leave one piece, which opens."""
    answer = demo.get("/pieces/", {"kind": "coat-shell", "member": "211"}, follow=True)

    assert answer.redirect_chain[-1][0] == "/pieces/0401/"


def test_without_a_code_by_size_and_crew(demo: Client) -> None:
    """A size and a crew leave a list."""
    crew = next(one.crew for one in demo_job().members if one.id == "211")
    found = text_of(read(demo, f"/pieces/?kind=coat-shell&crew={crew.replace(' ', '+')}&size=44"))

    assert "coat shell" in found.casefold()
    assert "hood 0" not in found
