"""The demonstration in Chromium: checked for accessibility, measured, and worked through."""

import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page
from tests.conftest import COULD_NOT
from tests.web.browser import AXE, SIZES, browsing, chromium, served
from tests.web.pages import PAGES

# 15 mm at 96 points an inch.
_TARGET = 56.0
_HTML_PAGES = [path for path in PAGES if path != "/radio/"]


@pytest.fixture(scope="module")
def address() -> Iterator[str]:
    """Where the demonstration is served."""
    if chromium() is None:
        pytest.skip(f"{COULD_NOT}: Chromium is not installed (make services)")
    with tempfile.TemporaryDirectory(prefix="sootline-browser-") as folder:
        Path(folder).chmod(0o700)
        with served(Path(folder)) as where:
            yield where


@pytest.fixture(scope="module")
def browser(address: str) -> Iterator[Browser]:  # noqa: ARG001  # nothing to look at without
    """Chromium."""
    program = chromium()
    assert program is not None
    with browsing(program) as started:
        yield started


def _open(
    browser: Browser, size: str, light: str = "light", *, scripts: bool = True, width: int = 0
) -> Page:
    wide, high = SIZES[size]
    scheme: Any = light
    context = browser.new_context(
        viewport={"width": width or wide, "height": high},
        color_scheme=scheme,
        java_script_enabled=scripts,
    )
    return context.new_page()


@pytest.mark.parametrize("path", _HTML_PAGES)
@pytest.mark.parametrize(("size", "light"), [("phone", "light"), ("desk", "dark")])
def test_a_checker_of_accessibility_finds_nothing(
    browser: Browser, address: str, path: str, size: str, light: str
) -> None:
    """axe-core finds no violation, 7:1 included; nothing is wider than the screen."""
    page = _open(browser, size, light)
    page.goto(address + path)
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = page.evaluate(
        "axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag2aaa', 'wcag21aa', 'wcag22aa']})"
    )
    over = page.evaluate("document.documentElement.scrollWidth - window.innerWidth")
    page.context.close()

    assert [(one["id"], [node["html"][:160] for node in one["nodes"][:3]])
            for one in found["violations"]] == []  # fmt: skip
    assert over <= 0


@pytest.mark.parametrize(
    "path",
    ["/", "/wash/", "/call/26-0311/who/218/", "/due/", "/rules/", "/inspect/advanced/0534/",
     "/contractor/26-01/", "/recalls/26-02/", "/due/month/", "/stores/"],
)  # fmt: skip
def test_a_page_reads_at_twice_its_size(browser: Browser, address: str, path: str) -> None:
    """At 200 % on a small screen nothing runs out of it sideways."""
    page = _open(browser, "desk", width=320)
    page.goto(address + path)
    over = page.evaluate("document.documentElement.scrollWidth - window.innerWidth")
    page.context.close()

    assert over <= 0


@pytest.mark.parametrize("path", ["/", "/call/", "/call/26-0311/who/218/", "/wash/load/1/"])
def test_what_a_thumb_hits_is_fifteen_millimetres_high(
    browser: Browser, address: str, path: str
) -> None:
    """Buttons, answers and stops of the way are large enough for a wet glove."""
    page = _open(browser, "phone")
    page.goto(address + path)
    heights = page.evaluate(
        "[...document.querySelectorAll('.button, .pick label, .nav__way a, .grid .row')]"
        ".filter(one => one.offsetParent).map(one => one.getBoundingClientRect().height)"
    )
    page.context.close()

    assert heights
    assert min(heights) >= _TARGET


def test_a_dark_page_is_dark_from_its_first_paint(browser: Browser, address: str) -> None:
    """The browser is told before any style sheet, and the canvas is dark: no white flash."""
    page = _open(browser, "phone", "dark")
    page.goto(address)
    told = page.locator('meta[name="color-scheme"]').get_attribute("content")
    canvas = page.evaluate("getComputedStyle(document.documentElement).backgroundColor")
    page.context.close()

    assert told == "light dark"
    assert canvas == "rgb(18, 16, 14)"


def test_the_keyboard_reaches_the_content_first(browser: Browser, address: str) -> None:
    """The first stop of the tab key jumps over the navigation."""
    page = _open(browser, "desk")
    page.goto(address)
    page.keyboard.press("Tab")
    first = page.evaluate("document.activeElement.getAttribute('href')")
    page.keyboard.press("Enter")
    after = page.evaluate("document.activeElement.id")
    page.context.close()

    assert (first, after) == ("#main", "main")


def test_no_page_asks_for_anything_from_elsewhere(browser: Browser, address: str) -> None:
    """Every file comes from the station's own machine, and nothing is refused or missing."""
    page = _open(browser, "desk")
    asked: list[tuple[str, int]] = []
    page.on("response", lambda answer: asked.append((answer.url, answer.status)))
    for path in ("/", "/wash/load/1/", "/call/"):
        page.goto(address + path)
    page.context.close()

    assert [one for one in asked if not one[0].startswith(address) or one[1] >= 400] == []


@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no scripts"])
@pytest.mark.parametrize("size", ["phone", "desk"])
def test_a_call_is_taken_in_from_the_first_tap_to_the_decisions(
    browser: Browser,
    address: str,
    size: str,
    scripts: bool,
) -> None:
    """With a thumb, with or without scripts: who rode, where, what was there, what follows."""
    page = _open(browser, size, scripts=scripts)
    page.goto(f"{address}/call/")
    page.get_by_label("Where, or in your own words").fill(f"shed, {size} {scripts}")
    page.get_by_role("checkbox", name="224").check()
    page.get_by_role("button", name="Next: where was each").click()
    page.get_by_role("checkbox", name="inside, on air").check()
    page.get_by_label("Bag number").fill("41")
    page.get_by_role("button", name="Next: what was there").click()
    page.get_by_role("group", name="battery smoke").get_by_role("radio", name="suspected").check()
    page.get_by_role("button", name="What each piece needs").click()
    # Where there are scripts they send the form, and then go on.
    page.wait_for_url(f"{address}/needs/**")
    heading = page.get_by_role("heading", level=1).inner_text()
    page.get_by_role("button", name="Undo").click()
    page.context.close()

    assert heading == "What each piece needs, at the least"


def test_two_people_at_once_do_not_start_a_load_twice(browser: Browser, address: str) -> None:
    """Whoever comes second is told what stands in the way, piece by piece."""
    first, second = _open(browser, "phone"), _open(browser, "desk")
    for page in (first, second):
        page.goto(f"{address}/wash/load/2/")
    first.get_by_role("button", name="Loaded and started").click()
    first.get_by_role("button", name="Undo").wait_for()
    second.get_by_role("button", name="Loaded and started").click()
    said = second.get_by_role("status").first.inner_text()
    first.get_by_role("button", name="Undo").click()
    for page in (first, second):
        page.context.close()

    assert said == "Nothing was written down:"
