"""The container recipe says what its how-to promises; what it runs is what the tree holds."""

import json
import re
import threading
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path

import pytest

from sootline.cli.commands import serve
from sootline.cli.parser import CommandParser
from sootline.wiring.health_probe import is_well

ROOT = Path(__file__).parents[2]


def _steps() -> list[tuple[str, str]]:
    """Return the instructions of the recipe, continued lines joined."""
    text = re.sub(r"\\\n\s*", "", (ROOT / "Containerfile").read_text(encoding="utf-8"))
    lines = [line for line in text.splitlines() if line and not line.startswith("#")]
    return [(line.split(None, 1)[0], line.split(None, 1)[1]) for line in lines]


def _said(word: str) -> list[str]:
    return [rest for name, rest in _steps() if name == word]


def test_the_base_is_named_and_pinned_without_a_registry() -> None:
    """Which registry it comes from is the department's choice; which image is not."""
    bases = {rest.split()[0] for rest in _said("FROM")}

    assert bases == {"python:3.11-slim-bookworm"}


def test_everything_is_installed_by_its_hash() -> None:
    """Nothing becomes part of the app that the list of hashes does not name."""
    (install,) = [rest for rest in _said("RUN") if "pip install" in rest]

    assert {"--require-hashes", "--only-binary"} <= set(install.split())
    assert "--hash=sha256:" in (ROOT / "requirements.txt").read_text(encoding="utf-8")


def test_it_runs_as_nobody_in_particular_and_writes_to_its_volume_alone() -> None:
    """Not as root; data and compiled code lie in the volume, and no bytecode elsewhere."""
    given = dict(pair.split("=", 1) for rest in _said("ENV") for pair in rest.split())

    assert _said("USER") == ["10001:10001"]
    assert _said("VOLUME") == ["/data"]
    assert given["SOOTLINE_DATA"] == "/data"
    assert given["SOOTLINE_CACHE"].startswith("/data/")
    assert given["PYTHONDONTWRITEBYTECODE"] == "1"


def test_what_it_copies_is_there_and_not_ignored() -> None:
    """Every file named is in the tree, and the list of what to leave out lets it in."""
    ignored = (ROOT / ".containerignore").read_text(encoding="utf-8").split()
    sources = [rest.split()[0] for rest in _said("COPY") if not rest.startswith("--from")]

    assert sources == ["requirements.txt", "src/sootline"]
    assert all((ROOT / one).exists() and f"!{one}" in ignored for one in sources)


def test_its_command_is_one_that_serve_takes() -> None:
    """TLS is asked for, so that passwords do not go over the air by default."""
    words = json.loads(_said("CMD")[-1])
    parser = CommandParser(prog="sootline serve", lang="en")
    serve.add_arguments(parser)
    options = parser.parse_args(words[1:])

    assert words[0] == "serve"
    assert options.tls_file is not None
    assert not options.plain_http


@pytest.mark.parametrize(("status", "well"), [(200, True), (503, False)])
def test_the_health_check_asks_the_app(status: int, *, well: bool) -> None:
    """It is well when it says so; nobody there is not well."""

    class Answer(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            self.send_response(status if self.headers["Host"] == "localhost" else 400)
            self.end_headers()

        def log_message(self, *_: object) -> None:
            """Say nothing."""

    server = HTTPServer(("127.0.0.1", 0), Answer)
    threading.Thread(target=server.handle_request, daemon=True).start()
    url = f"http://127.0.0.1:{server.server_port}/healthz"

    assert is_well(url) is well
    server.server_close()
    assert not is_well(url)
