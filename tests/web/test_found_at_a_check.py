"""A finding at a check has a place on an outline and a photo, on both desks."""

import io
import re
from xml.etree import ElementTree

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from PIL import Image
from tests.web.pages import points, read, text_of
from tests.web.records import account

from sootline.core.gear import KINDS, Element
from sootline.web.reading.outlines import FIGURES, Figure, figures_of, is_spot

PIECE = "0501"


@pytest.fixture(params=["demo", "record"])
def desk(request: pytest.FixtureRequest) -> Client:
    """Sit at the demonstration, then at a record."""
    if request.param == "demo":
        client: Client = request.getfixturevalue("demo")
        return client
    return account(request.getfixturevalue("databases"), owners=("223",))


def _photo() -> bytes:
    """Take a photo that says where it was taken and by whom."""
    picture = Image.new("RGB", (640, 480), (90, 80, 60))
    facts = picture.getexif()
    facts[0x010F] = "a camera of ours"
    facts.get_ifd(0x8825)[2] = (51.0, 30.0, 0.0)
    target = io.BytesIO()
    picture.save(target, "JPEG", exif=facts)
    return target.getvalue()


def _check(desk: Client, **given: object) -> str:
    path = f"/check/piece/{PIECE}/"
    dry = dict.fromkeys(points(read(desk, path)), "yes")
    answer = desk.post(path, {"by": "118", "flaws": ["torn"], **dry, **given}, follow=True)
    return answer.content.decode()


def test_place_and_photo_stand_on_the_page_of_the_piece(desk: Client) -> None:
    """Where it is on the outline by name, and the photo, which is another file than came in."""
    _check(desk, spot="trousers-front/left-knee", note="a nail", photo=_file(_photo()))
    page = read(desk, f"/pieces/{PIECE}/")
    (address,) = set(re.findall(r'src="(/photos/[0-9a-f]{64}/)"', page))
    answer = desk.get(address)

    assert "torn · trousers, front · left knee · a nail" in text_of(page)
    assert answer.headers["Content-Type"] == "image/jpeg"
    assert b"a camera of ours" not in answer.content
    with Image.open(io.BytesIO(answer.content)) as shown:
        assert (shown.size, dict(shown.getexif())) == ((640, 480), {})


def test_words_are_a_place_too(desk: Client) -> None:
    """Nobody has to choose a place on the outline; what is typed stays as it was typed."""
    _check(desk, place="inside the left pocket, at the seam")

    assert "inside the left pocket, at the seam" in text_of(read(desk, f"/pieces/{PIECE}/"))


def test_what_is_no_picture_is_refused_and_what_was_typed_stays(desk: Client) -> None:
    """A paper is no photo: nothing is written down, and the words are still in the form."""
    page = _check(desk, note="a nail went in", photo=_file(b"%PDF-1.7 ..."))

    assert "no JPEG, PNG or WebP picture" in text_of(page)
    assert 'value="a nail went in"' in page
    assert "a nail went in" not in read(desk, f"/pieces/{PIECE}/")


def _file(data: bytes) -> SimpleUploadedFile:
    return SimpleUploadedFile("photo.jpg", data)


def test_a_photo_that_is_not_there_is_nowhere(demo: Client) -> None:
    """A name of nothing is not found."""
    assert demo.get(f"/photos/{'0' * 64}/").status_code == 404


_DRAWN = (Element.COAT, Element.TROUSERS, Element.HOOD, Element.HELMET, Element.GLOVES,
          Element.BOOTS)  # fmt: skip


def test_every_garment_has_an_outline() -> None:
    """Coat, trousers, hood, helmet, gloves, boots: front and back where both are seen."""
    drawn = {kind.element: len(figures_of(kind.id)) for kind in KINDS}

    assert [drawn[one] for one in _DRAWN] == [2, 2, 1, 1, 1, 1]


@pytest.mark.parametrize("figure", FIGURES.values(), ids=lambda one: one.id)
def test_a_drawing_is_whole_and_its_numbers_lie_on_it(figure: Figure) -> None:
    """Each number stands once, inside the drawing, and far enough from the next to be touched."""
    spots = figure.spots
    numbers = [one.number for one in spots]
    near = [
        (a.id, b.id)
        for at, a in enumerate(spots)
        for b in spots[at + 1 :]
        if (a.x - b.x) ** 2 + (a.y - b.y) ** 2 < 22**2
    ]

    assert numbers == list(range(numbers[0], numbers[0] + len(numbers)))
    assert all(11 <= one.x <= 189 and 11 <= one.y <= 215 for one in spots)
    assert near == []
    assert all(ElementTree.fromstring(f'<path d="{path}"/>') is not None  # noqa: S314  # our own
               for path in figure.paths)  # fmt: skip


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("coat-front/left-cuff", True),
        ("coat-front/nowhere", False),
        ("left cuff", False),
        ("", False),
    ],
)
def test_what_is_a_place_on_an_outline(text: str, expected: bool) -> None:
    """Only what is drawn is one."""
    assert is_spot(text) is expected
