"""The line pictures: each has words, needs no grey, and brings nothing with it."""

import io
import re

import pytest
import typst
from PIL import Image
from tests.paper_reading import photocopied

from sootline.core.basis import MessageId
from sootline.core.gear import KINDS
from sootline.paper.cautions import ON_CONTAMINANT
from sootline.paper.engine import LAYOUTS, PICTURES
from sootline.paper.pictures import Picture, picture_of
from sootline.words import languages, say

NAMES = sorted(path.stem for path in PICTURES.glob("*.svg"))
MUST = (
    "barrier_inward", "hook_covered", "closures", "drag_device_out", "pockets", "liner_out",
    "suspenders_off", "mesh_bag", "gloves_on_posts", "no_heat", "sealed_bag", "blood",
    "battery_fragments", "fibres", "sharps", "wet_hours",
)  # fmt: skip


def drawn(name: str) -> Image.Image:
    """Return a picture as it is printed on a card, 23 mm wide at 300 dpi."""
    main = f'#set page(width: auto, height: auto, margin: 0pt)\n#image("{name}.svg", width: 23mm)'
    files = {"main.typ": main.encode(), f"{name}.svg": (PICTURES / f"{name}.svg").read_bytes()}
    png = typst.Compiler(root=LAYOUTS).compile(input=files, format="png", ppi=300)  # type: ignore[type-var]
    assert isinstance(png, bytes)
    return Image.open(io.BytesIO(png)).convert("L")


@pytest.mark.parametrize("name", MUST)
def test_every_picture_the_work_needs_is_there(name: str) -> None:
    """Preparation, drying and the dangers each have theirs."""
    assert Picture(name=name).drawn


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("lang", languages())
def test_every_picture_is_told_in_words(name: str, lang: str) -> None:
    """Who cannot see it is told what it shows, in their language."""
    text = say(f"paper.picture.{name}", lang=lang)

    assert not text.startswith("[")
    assert lang == "en" or text != say(f"paper.picture.{name}", lang="en")


@pytest.mark.parametrize("name", NAMES)
def test_a_picture_is_black_lines_and_brings_nothing_with_it(name: str) -> None:
    """No grey, no colour, no script, no text that could not be translated, nothing to fetch."""
    source = (PICTURES / f"{name}.svg").read_text(encoding="utf-8")

    assert set(re.findall(r'(?:fill|stroke)="([^"]+)"', source)) <= {"none", "#000", "#fff"}
    assert not re.search(r"<(?:script|text|image|style|foreignObject)|href|url\(", source)


@pytest.mark.parametrize("name", NAMES)
def test_a_picture_keeps_its_lines_on_a_photocopier(name: str) -> None:
    """Thresholding to black and white changes hardly a point of it."""
    image = drawn(name)
    grey = sum(
        abs(a - b) for a, b in zip(image.tobytes(), photocopied(image).tobytes(), strict=True)
    )
    black = photocopied(image).tobytes().count(0) / (image.width * image.height)

    assert grey / 255 < 0.03 * image.width * image.height
    assert 0.04 < black < 0.5


@pytest.mark.parametrize(
    "step",
    ["pockets", "liner_out", "drag_device_out", "suspenders_off", "knee_pads_out", "hook_covered",
     "closures", "barrier_inward", "barrier_outward", "mesh_bag", "soft_parts_out"],
)  # fmt: skip
def test_a_step_of_the_catalogue_finds_its_picture(step: str) -> None:
    """Steps are found by name; a renamed step would lose its picture."""
    steps = {preparation.step for kind in KINDS for preparation in kind.preparation}

    assert step in steps
    assert picture_of(MessageId(f"gear.prep.{step}")) == Picture(name=step)


def test_every_caution_has_its_picture() -> None:
    """Blood, battery smoke, asbestos."""
    assert all(picture.drawn for picture, _ in ON_CONTAMINANT.values())


def test_a_step_without_picture_has_none() -> None:
    """Not every step can be drawn; its words stand alone."""
    assert picture_of(MessageId("gear.prep.nothing_like_it")) is None
