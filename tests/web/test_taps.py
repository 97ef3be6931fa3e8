"""How many taps does a call with four people take? Counted in the browser, on a phone's screen."""

import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page
from tests.conftest import COULD_NOT
from tests.web.browser import SIZES, browsing, chromium, served

# A tap on a large target with a look before it, in gloves: value from memory, no source; the
# keystroke-level model has 1.1 s for pointing and 1.35 s for making up one's mind (Card, Moran and
# Newell, "The keystroke-level model", CACM 23(7), 1980).
_TAP_S = 1.1 + 1.35
_MINUTE_S = 60.0


@pytest.fixture
def page() -> Iterator[Page]:
    """Open the demonstration on a phone without scripts: no tap is saved by one."""
    program = chromium()
    if program is None:
        pytest.skip(f"{COULD_NOT}: Chromium is not installed (make services)")
    with tempfile.TemporaryDirectory(prefix="sootline-taps-") as folder:
        Path(folder).chmod(0o700)
        with served(Path(folder)) as where, browsing(program) as browser:
            wide, high = SIZES["phone"]
            context = browser.new_context(
                viewport={"width": wide, "height": high}, java_script_enabled=False
            )
            opened = context.new_page()
            opened.goto(where)
            yield opened


def test_a_call_with_four_people_takes_less_than_a_minute_of_taps(page: Page) -> None:
    """From the first screen to what each piece needs; nothing is typed."""
    taps = 0

    def tap(target: Locator) -> None:
        nonlocal taps
        taps += 1
        target.click()

    def press(target: Locator) -> None:
        nonlocal taps
        taps += 1
        target.check()

    tap(page.get_by_role("link", name="After a call"))
    press(page.get_by_role("radio", name="building fire"))
    for member in ("223", "224", "226", "228"):
        press(page.get_by_role("checkbox", name=member))
    tap(page.get_by_role("button", name="Next: where was each"))
    press(page.get_by_role("checkbox", name="inside, on air"))
    press(page.get_by_role("group", name="In smoke?").get_by_role("radio", name="yes"))
    press(page.get_by_role("radio", name="not done"))
    tap(page.get_by_role("button", name="Next: 223"))
    tap(page.get_by_role("button", name="Same as 228"))
    press(page.get_by_role("checkbox", name="pump"))
    tap(page.get_by_role("button", name="Next: 226"))
    press(page.get_by_role("checkbox", name="don't know"))
    tap(page.get_by_role("button", name="Next: what was there"))
    smoke = page.get_by_role("group", name="smoke and soot").get_by_role("radio", name="known")
    press(smoke)
    tap(page.get_by_role("button", name="What each piece needs"))

    assert page.get_by_role("heading", level=1).inner_text().startswith("What each piece needs")
    assert taps * _TAP_S < _MINUTE_S
