"""A server of the demonstration and a browser to look at it with, where there is one."""

import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

AXE = Path(__file__).with_name("axe-4.14.1.min.js")
SIZES = {"phone": (390, 844), "desk": (1280, 900)}
_WAIT_S = 60.0


def chromium() -> str | None:
    """Return where Chromium is on this machine, if it is."""
    return shutil.which("chromium") or shutil.which("chromium-browser")


@contextmanager
def served(folder: Path, *, demo: bool = True) -> Iterator[str]:
    """Serve from a process of its own until the block ends; yield its address.

    Args:
        folder: the data directory.
        demo: the demonstration; otherwise the record in the folder.
    """
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [sys.executable, "-m", "sootline", "serve", "--port", str(port)]
    command += ["--demo"] if demo else []
    environment = {**os.environ, "SOOTLINE_DATA": str(folder)}
    environment.pop("DATABASE_URL", None)
    environment.pop("DJANGO_SETTINGS_MODULE", None)
    process = subprocess.Popen(command, env=environment, stdout=subprocess.DEVNULL)
    address = f"http://127.0.0.1:{port}"
    try:
        wait_for(f"{address}/healthz")
        yield address
    finally:
        process.terminate()
        process.wait(timeout=20)


@contextmanager
def browsing(program: str) -> Iterator[Browser]:
    """Start the browser until the block ends."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=["--no-sandbox"])
        yield browser
        browser.close()


def wait_for(address: str) -> None:
    end = time.monotonic() + _WAIT_S
    while True:
        try:
            with urllib.request.urlopen(address, timeout=2):  # noqa: S310  # our own server
                return
        except OSError:
            if time.monotonic() > end:
                raise
            time.sleep(0.2)
