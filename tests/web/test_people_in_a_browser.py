"""Second factor and station device in Chromium: worked through, checked, and looked at."""

import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page
from tests.web.browser import AXE, SIZES, served
from tests.web.recorded import PIN, code_of, make_record, set_up_factor, sign_in

_TARGET = 56.0


@pytest.fixture
def address() -> Iterator[str]:
    """Where a fresh record is served."""
    with tempfile.TemporaryDirectory(prefix="sootline-people-") as folder:
        Path(folder).chmod(0o700)
        make_record(Path(folder))
        with served(Path(folder), demo=False) as where:
            yield where


def _context(
    browser: Browser, size: str = "phone", light: str = "light", *, scripts: bool = True
) -> BrowserContext:
    wide, high = SIZES[size]
    scheme: Any = light
    return browser.new_context(viewport={"width": wide, "height": high}, color_scheme=scheme,
                               java_script_enabled=scripts)  # fmt: skip


def _findings(page: Page) -> list[tuple[str, list[str]]]:
    """Return what the checker of accessibility finds, and whether the page is too wide."""
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = page.evaluate(
        "axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag2aaa', 'wcag21aa', 'wcag22aa']})"
    )
    over = page.evaluate("document.documentElement.scrollWidth - window.innerWidth")
    wide = [("too wide", [page.url])] if over > 0 else []
    return wide + [(one["id"], [node["html"][:160] for node in one["nodes"][:3]])
                   for one in found["violations"]]  # fmt: skip


def _enrol(page: Page, address: str) -> bytes:
    """Enrol the browser as a device, setting up the second factor that takes on the way."""
    sign_in(page, address)
    page.goto(f"{address}/devices/")
    page.get_by_role("button", name="Set up a second factor").click()
    secret = set_up_factor(page)
    page.get_by_role("link", name="I have them").click()
    page.get_by_label("Name of the device").fill("Tablet")
    page.get_by_label("Where it stands").fill("Wash room")
    page.get_by_role("button", name="Enrol this device").click()
    return secret


def test_what_was_typed_comes_through_setting_up_and_stepping_up(
    browser: Browser, address: str
) -> None:
    """Typed before a second factor was shown or even set up, it is done afterwards as typed."""
    first, second = _context(browser), _context(browser)
    page, other = first.new_page(), second.new_page()
    sign_in(page, address)
    sign_in(other, address)
    page.goto(f"{address}/accounts/")
    page.get_by_role("button", name="Set up a second factor").click()
    secret = set_up_factor(page)
    shown = page.locator(".codes li").count()
    page.get_by_role("link", name="I have them").click()
    page.get_by_text("Offices of 219").first.click()
    page.get_by_role("group", name="Offices of 219").get_by_label("inspector").check()
    # Meanwhile the session's second factor is asked for again: another phone was set up elsewhere.
    other.goto(f"{address}/account/second-factor/")
    other.get_by_label("Code of the authenticator").fill(_next_code(other, secret))
    other.get_by_role("button", name="Go on").first.click()
    newer = set_up_factor(other)
    page.get_by_role("group", name="Offices of 219").locator("xpath=..").get_by_role(
        "button", name="Set the offices"
    ).click()
    asked = page.get_by_role("heading", level=1).inner_text()
    page.get_by_label("Code of the authenticator").fill(_next_code(page, newer))
    page.get_by_role("button", name="Go on").first.click()
    said = page.get_by_role("status").first.inner_text()
    page.get_by_text("Offices of 219").first.click()
    checked = page.get_by_role("group", name="Offices of 219").get_by_label("inspector")

    assert shown == 10
    assert asked == "Second factor"
    assert said == "219 has other offices from the next request."
    assert checked.is_checked()
    first.close()
    second.close()


def _next_code(page: Page, secret: bytes) -> str:
    """Wait until the authenticator shows another code: each counts once."""
    before = code_of(secret)
    while (code := code_of(secret)) == before:
        page.wait_for_timeout(500)
    return code


@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no scripts"])
def test_an_act_at_a_station_device_by_name_and_pin(
    browser: Browser, address: str, scripts: bool
) -> None:
    """With a thumb: what to do, a tile, six keys, go; the device stays and is nobody."""
    context = _context(browser, scripts=scripts)
    page = context.new_page()
    _enrol(page, address)
    page.goto(f"{address}/wash/")
    page.get_by_role("button", name="Plan it").click()
    page.get_by_role("button", name="219").click()
    heights = [box["height"] for key in page.locator(".pad__keys .button").all()
               if (box := key.bounding_box())]  # fmt: skip
    for digit in PIN:
        page.get_by_role("button", name=digit, exact=True).click()
    page.get_by_role("button", name="Go", exact=True).last.click()
    said = page.get_by_role("status").first.inner_text()
    page.goto(f"{address}/people/")

    assert min(heights) >= _TARGET
    assert said
    assert page.url.startswith(f"{address}/sign-in/")
    context.close()


@pytest.mark.parametrize(("size", "light"), [("phone", "light"), ("desk", "dark")])
def test_a_checker_of_accessibility_finds_nothing(
    browser: Browser, address: str, size: str, light: str
) -> None:
    """On every page of people: axe-core finds nothing, 7:1 included, and none is too wide."""
    context = _context(browser, size, light)
    page = context.new_page()
    found = {}

    def look(name: str) -> None:
        found[name] = _findings(page)

    page.goto(f"{address}/sign-in/")
    look("sign-in")
    sign_in(page, address)
    page.goto(f"{address}/account/")
    look("account")
    page.goto(f"{address}/devices/")
    look("no second factor yet")
    page.get_by_role("button", name="Set up a second factor").click()
    look("set up")
    set_up_factor(page)
    look("recovery codes")
    for path in ("accounts", "devices", "account/looks"):
        page.goto(f"{address}/{path}/")
        look(path)
    page.goto(f"{address}/devices/")
    page.get_by_label("Name of the device").fill("Tablet")
    page.get_by_label("Where it stands").fill("Wash room")
    page.get_by_role("button", name="Enrol this device").click()
    look("device")
    page.goto(f"{address}/wash/")
    page.get_by_role("button", name="Plan it").click()
    look("names")
    page.get_by_role("button", name="219").click()
    look("PIN")
    sign_in(page, address)
    page.goto(f"{address}/accounts/")
    look("step up")
    context.close()

    assert {name: one for name, one in found.items() if one} == {}
