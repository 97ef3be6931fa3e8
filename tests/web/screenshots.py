"""Takes the pictures of every screen: `python -m tests.web.screenshots docs/pictures`.

The demonstration's night is moved on a little first: a load hangs, one is in the washer, one was
washed by hand, and the driver has looked over what he wore.
"""

import io
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from PIL import Image
from playwright.sync_api import Browser, Page
from tests.web import floor_pages
from tests.web.browser import SIZES, browsing, chromium, served
from tests.web.recorded import make_record, set_up_factor, sign_in

SCREENS = {
    **floor_pages.SCREENS,
    "grid": "/",
    "wall": "/wall/",
    "after-a-call": "/call/",
    "where-was-218": "/call/26-0311/who/218/",
    "what-was-there": "/call/26-0311/hazards/",
    "needs": "/needs/",
    "wash-room": "/wash/",
    "load-card": "/wash/load/3/",
    "drying-room": "/wash/drying/",
    "washers": "/wash/machines/",
    "costs": "/wash/costs/",
    "checks": "/check/",
    "one-check": "/check/piece/0402/",
    "piece": "/pieces/0473/",
    "piece-soil": "/pieces/0473/soil/",
    "person": "/people/219/",
    "people": "/people/",
    "due": "/due/",
    "handover": "/handover/",
    "rules": "/rules/",
    "paper": "/paper/",
    "history": "/history/",
    "without-a-signal": "/pocket/",
    "between-calls": "/between/",
    "inspections": "/inspect/",
    "inspection-day": "/inspect/day/advanced/2026-03-11/",
    "inspect-a-piece": "/inspect/advanced/0534/",
    "repair": "/repairs/0485/",
    "contractor": "/contractor/",
    "shipment": "/contractor/26-01/",
    "invoice": "/contractor/25-07/invoice/",
    "recall": "/recalls/26-02/",
    "what-to-take-today": "/due/today/",
    "overdue-by-cause": "/due/month/",
    "shelf-and-machines": "/stores/",
    "measuring-and-ordering": "/fit/",
}
# Longer pages are cut: a picture is to be looked at.
_LONGEST = 2000
_COLOURS = 32
_DONE = (
    ("/wash/load/1/", "Loaded and started", "Drum has ended", "All hung up"),
    ("/wash/load/2/", "Loaded and started"),
    ("/wash/load/4/", "Washed by hand"),
    ("/people/213/", "Looked over, nothing found"),
)


def main(folder: Path) -> None:
    """Take every picture, and the timeline by itself."""
    program = chromium()
    if program is None:
        raise SystemExit("could not run: Chromium is not installed (make services)")
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(prefix="sootline-pictures-") as place:
        Path(place).chmod(0o700)
        with served(Path(place)) as address, browsing(program) as browser:
            _move_on(browser, address)
            for size in SIZES:
                for light in ("light", "dark"):
                    _take_all(browser, address, folder, size, light)
    with browsing(program) as browser:
        for size in SIZES:
            for light in ("light", "dark"):
                take_people(browser, folder, size, light)


def _move_on(browser: Browser, address: str) -> None:
    # Without scripts a form is sent once its button is pressed, and the next page is there.
    page = browser.new_page(java_script_enabled=False)
    for path, *buttons in _DONE:
        page.goto(address + path)
        for button in buttons:
            page.get_by_role("button", name=button).click()
    page.context.close()


def _take_all(browser: Browser, address: str, folder: Path, size: str, light: Any) -> None:  # noqa: ANN401
    wide, high = SIZES[size]
    context = browser.new_context(viewport={"width": wide, "height": high}, color_scheme=light)
    page = context.new_page()
    for name, path in SCREENS.items():
        page.set_viewport_size({"width": wide, "height": high})
        page.goto(address + path)
        _keep(page, folder / f"{name}-{size}-{light}.png", wide)
    if size == "desk":
        page.goto(f"{address}/wash/")
        _save(page.locator(".timeline").screenshot(), folder / f"timeline-{light}.png")
    context.close()


def take_people(browser: Browser, folder: Path, size: str, light: Any) -> None:  # noqa: ANN401
    """Take the pictures of how people are known, on a record of their own."""
    wide, high = SIZES[size]

    def keep(name: str) -> None:
        _keep(page, folder / f"{name}-{size}-{light}.png", wide)
        page.set_viewport_size({"width": wide, "height": high})

    with tempfile.TemporaryDirectory(prefix="sootline-pictures-") as place:
        Path(place).chmod(0o700)
        make_record(Path(place))
        with served(Path(place), demo=False) as address:
            context = browser.new_context(
                viewport={"width": wide, "height": high}, color_scheme=light
            )
            page = context.new_page()
            for name in _known(page, address):
                keep(name)
            context.close()


def _known(page: Page, address: str) -> Iterator[str]:
    """Go through the screens on which people are known; stop at each that is to be taken."""
    sign_in(page, address)
    page.goto(f"{address}/devices/")
    page.get_by_role("button", name="Set up a second factor").click()
    yield "second-factor"
    set_up_factor(page)
    yield "recovery-codes"
    for name, path in (("account", "account/"), ("accounts", "accounts/"), ("devices", "devices/"),
                       ("looks", "account/looks/")):  # fmt: skip
        page.goto(f"{address}/{path}")
        yield name
    page.goto(f"{address}/devices/")
    page.get_by_label("Name of the device").fill("Tablet")
    page.get_by_label("Where it stands").fill("Wash room")
    page.get_by_role("button", name="Enrol this device").click()
    page.goto(f"{address}/wash/")
    page.get_by_role("button", name="Plan it").click()
    yield "who-does-this"
    page.get_by_role("button", name="219").click()
    yield "pin"
    sign_in(page, address)
    page.goto(f"{address}/accounts/")
    yield "step-up"


def _keep(page: Page, file: Path, wide: int) -> None:
    """Make the screen as high as the page, so that what stands at its foot is at the foot."""
    page.evaluate("document.fonts.ready")
    high = min(_LONGEST, page.evaluate("document.documentElement.scrollHeight"))
    page.set_viewport_size({"width": wide, "height": high})
    _save(page.screenshot(), file)


def _save(data: bytes, file: Path) -> None:
    picture = Image.open(io.BytesIO(data)).convert("RGB")
    picture.quantize(_COLOURS, dither=Image.Dither.NONE).save(file, optimize=True)


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else "docs/pictures"))
