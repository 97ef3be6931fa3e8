"""The year between calls in Chromium: with a thumb, with the keyboard alone, without scripts."""

import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page
from tests.conftest import COULD_NOT
from tests.web.browser import SIZES, browsing, chromium, served

# 15 mm at 96 points an inch.
_TARGET = 56.0
_DAY = "/inspect/day/advanced/2026-03-11/"
_SHIPMENT = "/contractor/26-01/"
_NOTICE = "/recalls/26-02/"


@pytest.fixture
def address() -> Iterator[str]:
    """Where a demonstration of this test's own is served."""
    if chromium() is None:
        pytest.skip(f"{COULD_NOT}: Chromium is not installed (make services)")
    with tempfile.TemporaryDirectory(prefix="sootline-browser-") as folder:
        Path(folder).chmod(0o700)
        with served(Path(folder)) as where:
            yield where


@pytest.fixture
def browser(address: str) -> Iterator[Browser]:  # noqa: ARG001  # nothing to look at without
    """Chromium."""
    program = chromium()
    assert program is not None
    with browsing(program) as started:
        yield started


def _page(browser: Browser, size: str, *, scripts: bool = True) -> Page:
    wide, high = SIZES[size]
    view: Any = {"width": wide, "height": high}
    context = browser.new_context(viewport=view, java_script_enabled=scripts)
    return context.new_page()


def _said(page: Page) -> str:
    return page.get_by_role("status").first.inner_text().split("\n")[0]


@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no scripts"])
def test_an_inspection_day_on_a_phone(browser: Browser, address: str, scripts: bool) -> None:
    """Many pieces in a row: found by number, looked at point by point; one lifted trim, one away.

    The day of the officer's example: nothing found is due in a year, a lifted trim goes to
    advanced repair, what is not there stays due (common practice, no published source).
    """
    page = _page(browser, "phone", scripts=scripts)
    page.goto(address + _DAY)
    page.get_by_label("Next piece").fill("0497")
    page.get_by_role("button", name="Open this piece").click()
    for answer in page.get_by_role("radio", name="looked, nothing").all():
        answer.check()
    page.get_by_label("Who looked").fill("206")
    page.get_by_role("button", name="Keep what I saw").click()
    assert _said(page) == "Coat shell 0497, looked at by 206: nothing found. Next 2027-03-11."

    page.get_by_role("link", name="Look at it 0509").click()
    for point in page.get_by_role("group").all():
        named = point.get_attribute("class") or ""
        if "point" in named and "reflective trim: nothing lifted" not in point.inner_text():
            point.get_by_role("radio", name="looked, nothing").check()
    trim = page.get_by_role("group", name="Look at the reflective trim")
    trim.get_by_role("radio", name="found something").check()
    trim.get_by_label("What").select_option("trim-lifted")
    trim.get_by_label("Where").select_option("coat-front/left-sleeve")
    page.get_by_label("Who looked").fill("206")
    page.get_by_role("button", name="Keep what I saw").click()
    assert "advanced repair by maker or verified provider" in _said(page)

    page.get_by_text("It is not here").first.click()
    page.get_by_label("Why not").first.fill("at the tailor")
    page.get_by_role("button", name="Not here, stays due").first.click()
    body = page.locator("main").inner_text()
    page.context.close()

    assert "stays due" in body
    assert "3 to look at, 2 looked at." in body


def test_a_piece_takes_ninety_seconds_of_taps(browser: Browser, address: str) -> None:
    """A routine look is one tap a point, a name and a button; each as high as a glove needs.

    90 seconds is the time an officer gives for it (common practice, no published source); at four
    seconds a tap a coat shell stays within it.
    """
    page = _page(browser, "phone")
    page.goto(address + "/inspect/routine/0533/")
    points = page.get_by_role("radio", name="looked, nothing").count()
    heights = page.evaluate(
        "[...document.querySelectorAll('main .button, main .pick label')]"
        ".filter(one => one.offsetParent).map(one => one.getBoundingClientRect().height)"
    )
    wider = page.evaluate("document.documentElement.scrollWidth - window.innerWidth")
    page.context.close()

    assert (points + 2) * 4 <= 90
    assert min(heights) >= _TARGET
    assert wider <= 0


@pytest.mark.parametrize(("size", "scripts"), [("phone", True), ("desk", False)])
def test_a_shipment_out_and_back(browser: Browser, address: str, size: str, scripts: bool) -> None:
    """Packed, gone, back with one number misread and a stranger; a person says which it is."""
    page = _page(browser, size, scripts=scripts)
    page.goto(f"{address}/contractor/")
    page.get_by_role("link", name="Pack the van").click()
    page.get_by_label("Which pieces").fill("0551\n0552")
    page.get_by_role("checkbox", name="advanced cleaning").check()
    page.get_by_label("In plain words").fill("attic fire, nobody tested for asbestos")
    page.get_by_label("To whom").fill("Aldmere Gear Care")
    page.get_by_label("Who packed it").fill("206")
    page.get_by_role("button", name="It leaves now").click()
    assert _said(page).startswith("26-02: 2 pieces to Aldmere Gear Care")

    page.get_by_label("Numbers as they stand").fill("0551\nO552\n7718")
    page.get_by_label("Who took it in").fill("206")
    page.get_by_role("button", name="Take it in").click()
    body = page.locator("main").inner_text()
    assert "2 sent, 1 back, 1 not back" in body
    assert "Not ours. Set it aside and tell the contractor." in body

    page.get_by_role("radio", name="0552").check()
    page.get_by_label("Who says so").fill("206")
    page.get_by_role("button", name="It is this one").click()
    body = page.locator("main").inner_text()
    page.context.close()

    assert "2 sent, 2 back, 0 not back" in body


@pytest.mark.parametrize(("size", "scripts"), [("phone", True), ("desk", False)])
def test_a_recall_from_notice_to_closed(
    browser: Browser, address: str, size: str, scripts: bool
) -> None:
    """Typed in from its text; every possible piece read by eye; what is affected pulled; closed."""
    page = _page(browser, size, scripts=scripts)
    page.goto(f"{address}/recalls/")
    page.get_by_role("link", name="Type in a notice").click()
    for label, text in (("Its number", "26-07"), ("Who issued it", "Aldmere"),
                        ("What it is called", "seam tape"), ("Styles", "R7-L"),
                        ("Made from", "2021-03"), ("Made until", "2021-03-31")):  # fmt: skip
        page.get_by_label(label).fill(text)
    page.get_by_label("Lots", exact=True).fill("2103*")
    page.get_by_role("checkbox", name="coat liner").check()
    page.get_by_role("button", name="Find the pieces").click()
    assert page.get_by_role("button", name="Close this notice").count() == 0

    while page.get_by_role("button", name="Keep what I read").count():
        first = page.locator("section.waiting", has=page.get_by_text("Is it one of those")).first
        first.get_by_role("radio", name="no, it is not").check()
        first.get_by_label("What stands on the label").fill("lot 2107-A")
        first.get_by_label("Who read it").fill("206")
        first.get_by_role("button", name="Keep what I read").click()
    while page.get_by_role("button", name="Keep what I did").count():
        first = page.locator("section.waiting", has=page.get_by_text("What was done with it")).first
        first.get_by_role("radio", name="pulled").check()
        first.get_by_label("Your name").fill("206")
        first.get_by_role("button", name="Keep what I did").click()
    page.get_by_label("Your name").last.fill("206")
    page.get_by_role("button", name="Close this notice").click()
    body = page.locator("main").inner_text()
    page.context.close()

    assert "Closed by 206" in body


def test_an_inspection_by_the_keyboard_alone(browser: Browser, address: str) -> None:
    """Tab, space, arrows and enter are enough, and what has the focus is seen."""
    page = _page(browser, "desk")
    page.goto(address + "/inspect/routine/0535/")
    page.locator("main").focus()
    reached, outlined = 0, True
    for _ in range(80):
        page.keyboard.press("Tab")
        here = page.evaluate(
            "(() => { const e = document.activeElement; const face = e.nextElementSibling;"
            " const shown = e.type === 'radio' ? face : e;"
            " return [e.type || '', e.value || '', e.name || '',"
            " getComputedStyle(shown).outlineStyle]; })()"
        )
        outlined = outlined and here[3] != "none"
        if here[0] == "radio":
            page.keyboard.press("Space")
            reached += 1
        elif here[2] == "by":
            page.keyboard.type("206")
            page.keyboard.press("Enter")
            break
    said = _said(page)
    page.context.close()

    assert reached >= 4
    assert outlined
    assert said == "Drag rescue device 0535, looked at by 206: nothing found."
