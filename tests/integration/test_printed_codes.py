"""Codes of tags and hold labels are read back from the printed page."""

import pytest
from tests.paper_night import page, piece, planned
from tests.paper_reading import (
    codes_in,
    images_of,
    photocopied,
    text_of,
    text_outside,
)

from sootline.core.job.jobs import Job
from sootline.paper.hold_labels import print_hold_labels
from sootline.paper.page import PaperSize
from sootline.paper.tags import STOCKS, print_tags, without_tag
from sootline.tasks.hold_labels import list_hold_labels
from sootline.tasks.plan_wash import PlanResult
from sootline.wiring.demo import demo_job


@pytest.fixture(scope="module")
def demo() -> tuple[Job, PlanResult]:
    """Return the demo department's night and its plan."""
    job = demo_job()
    return job, planned(job)


def has(pdf: bytes, text: str) -> bool:
    """Whether a PDF says a text, however its lines are broken."""
    return "".join(text.split()) in text_of(pdf)


@pytest.mark.parametrize("size", list(PaperSize))
@pytest.mark.parametrize("copied", [False, True])
def test_codes_of_tags_are_read_at_300_dpi_also_after_a_photocopier(
    size: PaperSize, copied: bool, demo: tuple[Job, PlanResult]
) -> None:
    """Every tag gives its id twice: QR code and Code 39."""
    components = demo[0].components[: STOCKS[size].across * STOCKS[size].down]
    read: set[tuple[str, str]] = set()
    for image in images_of(print_tags(components, page(size=size))):
        read |= codes_in(photocopied(image) if copied else image)

    ids = {component.id for component in components}
    assert {text for kind, text in read if kind == "QR Code"} == ids
    assert {text for kind, text in read if kind == "Code 39"} == ids


def test_the_longest_tag_is_read_and_bars_too_fine_to_scan_are_left_out() -> None:
    """Thirty-two signs are a QR code only; lower-case letters too; twenty signs are both."""
    names = ("A" * 32, "coat-7", "B" * 20)
    pdf = print_tags([piece(one, "coat-shell", "302") for one in names], page())
    (image,) = images_of(pdf)
    read = codes_in(photocopied(image))

    assert {text for kind, text in read if kind == "QR Code"} == set(names)
    assert {text for kind, text in read if kind == "Code 39"} == {"B" * 20}


def test_a_piece_whose_id_makes_no_tag_is_named_not_printed() -> None:
    """A code that nobody could read back is worse than none."""
    odd, usual = piece("no tag!", "hood"), piece("S-1", "hood")

    assert without_tag([odd, usual]) == (odd,)
    assert "notag!" not in text_of(print_tags([odd, usual], page()))


def test_the_owner_on_a_tag_is_shortened_to_its_place() -> None:
    """A label is as large as it is."""
    pdf = print_tags([piece("S-1", "hood", "W" * 60)], page())

    assert text_outside(pdf) == []
    assert has(pdf, "W" * 20)
    assert has(pdf, "…")


@pytest.mark.parametrize("copied", [False, True])
def test_the_code_of_a_hold_label_is_read(copied: bool, demo: tuple[Job, PlanResult]) -> None:
    """Every label has the code of its first piece."""
    labels = list_hold_labels(demo[0], demo[1].loads.decided)
    read: set[tuple[str, str]] = set()
    for image in images_of(print_hold_labels(labels, page())):
        read |= codes_in(photocopied(image) if copied else image)

    assert read == {("QR Code", label.components[0].id) for label in labels}
