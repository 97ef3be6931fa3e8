"""The whole way of fourteen sets in a browser: from the call back to the hook."""

import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page
from tests.web.browser import SIZES, served
from tests.web.fourteen import PARTS, SETS, enter, make_fourteen, people


@pytest.fixture
def address() -> Iterator[str]:
    """Where a record of fourteen people is served."""
    with tempfile.TemporaryDirectory(prefix="sootline-fourteen-") as folder:
        Path(folder).chmod(0o700)
        make_fourteen(Path(folder))
        with served(Path(folder), demo=False) as where:
            yield where


@pytest.mark.parametrize(
    ("size", "scripts"),
    [("phone", False), ("desk", True)],
    ids=["phone, no scripts", "desk, scripts"],
)
def test_fourteen_sets_go_from_the_call_back_to_the_hook(
    browser: Browser, address: str, size: str, scripts: bool
) -> None:
    """Call, decisions, a survey, plan, loads, checks, put together: all on their hooks."""
    wide, high = SIZES[size]
    context = browser.new_context(
        viewport={"width": wide, "height": high}, java_script_enabled=scripts
    )
    page = context.new_page()
    enter(page, address)
    _call(page, address)
    _survey(page, address)
    _plan(page, address)
    pieces = _wash(page, address)
    assert len(pieces) == SETS * len(PARTS)
    _check(page, address, pieces)
    _put_together(page, address)
    page.goto(address)
    left = page.get_by_text("needs wash").count() + page.get_by_text("taken apart").count()
    hooked = [_hooked(page, address, str(one.id)) for one in people()]
    context.close()

    assert left == 0
    assert hooked == [len(PARTS)] * SETS


def _press(page: Page, name: str) -> None:
    """Press a button, and wait for the page it leads to, whoever sends the form."""
    with page.expect_navigation():
        page.get_by_role("button", name=name).first.click()


def _call(page: Page, address: str) -> None:
    page.goto(f"{address}/call/")
    page.get_by_role("radio", name="building fire").check()
    page.get_by_label("Called out at").fill("00:01")
    for one in people():
        page.get_by_role("checkbox", name=str(one.id)).check()
    _press(page, "Next: where was each")
    page.get_by_role("checkbox", name="inside, on air").check()
    page.get_by_role("group", name="In smoke?").get_by_role("radio", name="yes").check()
    _press(page, "Next: 402")
    for _ in range(SETS - 1):
        _press(page, "Same as")
    page.get_by_role("group", name="smoke and soot").get_by_role("radio", name="known").check()
    page.get_by_role("group", name="asbestos").get_by_role("radio", name="suspected").check()
    _press(page, "What each piece needs")


def _survey(page: Page, address: str) -> None:
    """Answer the suspicion by a signed survey; before that nothing may be washed."""
    page.goto(f"{address}/needs/")
    page.get_by_role("link", name="Decide, or record what was done").first.click()
    page.get_by_role("radio", name="not found").check()
    page.get_by_label("Signed by").fill("Ames, surveyor")
    _press(page, "Keep the result")
    assert page.get_by_role("link", name="Decide, or record what was done").count() == 0


def _plan(page: Page, address: str) -> None:
    page.goto(f"{address}/wash/")
    page.get_by_role("radio", name="all of it done soonest").check()
    _press(page, "Plan it")


def _wash(page: Page, address: str) -> list[str]:
    pieces: list[str] = []
    for number in range(1, 60):
        page.goto(f"{address}/wash/load/{number}/")
        if page.get_by_role("heading", level=1, name="There is no such page").count():
            break
        links = page.locator(".pieces a")
        pieces += [str(links.nth(at).get_attribute("href")).split("/")[-2]
                   for at in range(links.count())]  # fmt: skip
        first = page.get_by_role("button", name="Loaded and started")
        _press(page, "Loaded and started" if first.count() else "Washed by hand")
        if page.get_by_role("button", name="Drum has ended").count():
            _press(page, "Drum has ended")
        _press(page, "All hung up")
    return pieces


def _check(page: Page, address: str, pieces: list[str]) -> None:
    for piece in pieces:
        page.goto(f"{address}/check/piece/{piece}/")
        dry = page.get_by_role("radio", name="dry", exact=True)
        for at in range(dry.count()):
            dry.nth(at).check()
        page.get_by_label("Felt and seen by").fill("118")
        _press(page, "Keep this check")


def _put_together(page: Page, address: str) -> None:
    for one in people():
        for element in ("coat", "trousers"):
            page.goto(f"{address}/check/build/{one.id}-{element}/")
            boxes = page.get_by_role("checkbox")
            for at in range(boxes.count()):
                boxes.nth(at).check()
            if element == "coat":
                page.get_by_label("Who looked how the drag device is led?").fill("118")
            page.get_by_label("Put together by").fill("118")
            _press(page, "These are together")


def _hooked(page: Page, address: str, member: str) -> int:
    page.goto(f"{address}/people/{member}/")
    return page.get_by_text("on the hook", exact=True).count()
