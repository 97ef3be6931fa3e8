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
# What `serve` does before it begins its processes.
_PREPARE = (
    "from sootline.wiring.framework import start; start();"
    "from sootline.wiring.own_record import open_record; open_record()"
)


def chromium() -> str | None:
    """Return where Chromium is on this machine, if it is."""
    return shutil.which("chromium") or shutil.which("chromium-browser")


@contextmanager
def served(folder: Path, *, demo: bool = True) -> Iterator[str]:
    """Serve from a process of its own until the block ends; yield its address.

    Args:
        folder: the data directory.
        demo: the demonstration, behind its door: the process alone that answers browsers, so that
            many may look at it; otherwise the record in the folder.
    """
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    record = ["-m", "sootline", "serve", "--port", str(port)]
    behind = ["-m", "sootline.wiring.server", "--host", "127.0.0.1", "--port", str(port)]
    command = [sys.executable, *(behind if demo else record)]
    environment = {**os.environ, "SOOTLINE_DATA": str(folder)}
    environment |= {"SOOTLINE_DEMO": "1"} if demo else {}
    environment.pop("SOOTLINE_DEMO_DOOR", None)
    environment.pop("DATABASE_URL", None)
    environment.pop("DJANGO_SETTINGS_MODULE", None)
    if demo:
        subprocess.run([sys.executable, "-c", _PREPARE], env=environment, check=True)
    # It ends its own group once the other end of its input is gone.
    process = subprocess.Popen(
        command,
        env=environment,
        stdin=subprocess.PIPE,
        stdout=subprocess.DEVNULL,
        start_new_session=True,
    )
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
    """Wait until a server answers."""
    end = time.monotonic() + _WAIT_S
    while True:
        try:
            with urllib.request.urlopen(address, timeout=2):  # noqa: S310  # our own server
                return
        except OSError:
            if time.monotonic() > end:
                raise
            time.sleep(0.2)
