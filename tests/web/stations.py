"""A record of the tests' own, served to browsers, and people who sign in to it."""

import os
import socket
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass

from playwright.sync_api import Browser, Page, ViewportSize
from tests.integration.store_databases import Database
from tests.web.browser import wait_for

PASSWORD = "rack and hook and bench 88"  # noqa: S105  # of an invented account
PHONE = {"width": 390, "height": 844}


@dataclass(frozen=True, kw_only=True)
class Station:
    """Where a record is served."""

    address: str

    def visit(self, browser: Browser, name: str, *, scripts: bool = True) -> Page:
        """Sign somebody in on a phone of their own."""
        size: ViewportSize = {"width": PHONE["width"], "height": PHONE["height"]}
        context = browser.new_context(viewport=size, java_script_enabled=scripts)
        page = context.new_page()
        self.sign_in(page, name)
        return page

    def sign_in(self, page: Page, name: str) -> None:
        """Fill in the sign-in."""
        if "/sign-in/" not in page.url:
            page.goto(f"{self.address}/sign-in/")
        page.locator("[name=username]").fill(name)
        page.locator("[name=password]").fill(PASSWORD)
        page.locator("main form button").first.click()
        page.wait_for_url(lambda url: "/sign-in/" not in url)


def people(*names: str) -> None:
    """Make accounts that may do everything on the floor."""
    # Only once the framework is set up.
    from sootline.storage.models import User  # noqa: PLC0415

    for name in names:
        User.objects.make(name, PASSWORD, ("gear-officer", "safety-officer"), member=name)


@contextmanager
def serving(database: Database) -> Iterator[Station]:
    """Serve a record from a process of its own until the block ends."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [sys.executable, "-m", "sootline", "serve", "--port", str(port)]
    environment = {**os.environ, **database.environment}
    environment.pop("DJANGO_SETTINGS_MODULE", None)
    process = subprocess.Popen(command, env=environment, stdout=subprocess.DEVNULL)
    try:
        wait_for(f"http://127.0.0.1:{port}/healthz")
        yield Station(address=f"http://127.0.0.1:{port}")
    finally:
        process.terminate()
        process.wait(timeout=20)
