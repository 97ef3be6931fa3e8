"""How many pages a second, beside a bare answer and the framework's own list of the same rows?

`python -m benchmarks.web_bench PIECES ENTRIES` makes a record of that size, serves it by one
process as shipped, and asks with eight clients on the same machine. The framework's administration
is part of this bench alone.
"""

import http.client
import os
import re
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlencode

CLIENTS = 8
REQUESTS, WRITES = 160, 48
PORT = 8947
_TICKS = os.sysconf("SC_CLK_TCK") if hasattr(os, "sysconf") else 100
Ask = Callable[[http.client.HTTPConnection, int], int]


@dataclass(frozen=True, kw_only=True)
class Measured:
    """What came of many requests.

    Args:
        cpu_ms: of the server, for each.
        refused: how many were not answered as they should be.
    """

    name: str
    per_s: float
    p95_ms: float
    cpu_ms: float
    refused: int


def main(pieces: int = 5000, entries: int = 100_000) -> None:
    """Print requests a second, p95 and processor time, and the ratios."""
    with tempfile.TemporaryDirectory() as folder:
        os.environ["SOOTLINE_DATA"] = folder
        cookie, written, rows, members = _record(pieces, entries)
        print(f"web: {pieces} components, {written} entries, {CLIENTS} clients, one process")
        server = _serve(rows)
        try:
            _print(_measure(server, cookie, members))
        finally:
            server.terminate()
            server.wait(20)


def _record(pieces: int, entries: int) -> tuple[str, int, int, list[str]]:
    """Make the record and an account; return its cookie, the entries, a leaf's rows, and people."""
    from sootline.wiring.framework import start  # noqa: PLC0415

    start()
    from django.core.management import call_command  # noqa: PLC0415
    from django.test import Client  # noqa: PLC0415

    call_command("migrate", verbosity=0)
    from tests.large_record import fill  # noqa: PLC0415

    from sootline.storage.models import ComponentRow, User  # noqa: PLC0415

    written = fill(pieces, entries)
    user = User.objects.make("118", None, ("gear-officer", "safety-officer"), member="118")
    client = Client(SERVER_NAME="localhost")
    client.force_login(user, backend="django.contrib.auth.backends.ModelBackend")
    page = client.get("/").content.decode()
    shown = set(re.findall(r'href="/people/([^/"]+)/"', page))
    rows = ComponentRow.objects.filter(owner__in=shown).count()
    members = sorted({one for one in ComponentRow.objects.values_list("owner", flat=True) if one})
    return client.cookies["session"].value, written, rows, members[1:]


def _serve(rows: int) -> "subprocess.Popen[bytes]":
    program = (
        "from granian.server import Server; from granian.constants import Interfaces; "
        f"Server('benchmarks.web_app:application', port={PORT}, interface=Interfaces.WSGI, "
        "workers=1, blocking_threads=1, log_enabled=False, workers_kill_timeout=5).serve()"
    )
    server = subprocess.Popen(
        [sys.executable, "-c", program], env={**os.environ, "BENCH_ROWS": str(rows)}
    )
    for _ in range(240):
        try:
            connection = _open()
            connection.request("GET", "/hello")
            connection.getresponse().read()
        except OSError:
            time.sleep(0.25)
        else:
            return server
    raise TimeoutError


def _measure(
    server: "subprocess.Popen[bytes]", cookie: str, members: Sequence[str]
) -> list[Measured]:
    headers = {"Cookie": f"session={cookie}", "Accept-Encoding": "gzip"}
    form = _Form(headers)
    form.send("/call/", title="first", began="00:01", rode="218-1")
    form.send("/wash/plan/", goal="soonest")
    looks = [("hello", "/hello"), ("grid", "/"), ("piece", "/pieces/0473-1/"), ("plan", "/wash/"),
             ("admin list", "/admin/storage/componentrow/")]  # fmt: skip

    def looking(where: str) -> Ask:
        return lambda connection, _turn: _get(connection, where, headers)

    found = [_run(server, name, looking(where), REQUESTS) for name, where in looks]

    def writing(connection: http.client.HTTPConnection, turn: int) -> int:
        who, began = members[turn % len(members)], f"00:{turn % 60:02}"
        return form.post(connection, "/call/", title=f"call {turn}", began=began, rode=who)

    def writing_then_looking(connection: http.client.HTTPConnection, turn: int) -> int:
        # The hour is another: a call is numbered by its minute.
        who, began = members[-1 - turn % len(members)], f"01:{turn % 60:02}"
        form.post(connection, "/call/", title=f"again {turn}", began=began, rode=who)
        return _get(connection, "/", headers)

    return [
        *found,
        _run(server, "write", writing, WRITES),
        _run(server, "write+grid", writing_then_looking, WRITES),
    ]


class _Form:
    """Sends forms of an account, with the mark that the app asks back."""

    def __init__(self, headers: dict[str, str]) -> None:
        connection = _open()
        connection.request("GET", "/call/", headers=headers | {"Accept-Encoding": ""})
        answer = connection.getresponse()
        page = answer.read().decode()
        mark = re.search(r'name="csrfmiddlewaretoken" value="([^"]+)"', page)
        cookies = re.findall(r"csrf=([^;]+)", answer.headers.get("Set-Cookie", ""))
        assert mark, "the page has no form"
        self._mark = mark[1]
        together = f"{headers['Cookie']}; csrf={cookies[0]}"
        form = "application/x-www-form-urlencoded"
        self._headers = headers | {"Cookie": together, "Content-Type": form}

    def post(self, connection: http.client.HTTPConnection, path: str, **said: str) -> int:
        """Send a form over an open connection; return its status."""
        body = urlencode({"csrfmiddlewaretoken": self._mark, **said})
        connection.request("POST", path, body, self._headers)
        answer = connection.getresponse()
        answer.read()
        return answer.status

    def send(self, path: str, **said: str) -> None:
        """Send a form that must be taken."""
        status = self.post(_open(), path, **said)
        assert status == 302, (path, status)


def _open() -> http.client.HTTPConnection:
    return http.client.HTTPConnection("127.0.0.1", PORT, timeout=60)


def _get(connection: http.client.HTTPConnection, path: str, headers: dict[str, str]) -> int:
    connection.request("GET", path, headers=headers)
    answer = connection.getresponse()
    answer.read()
    return answer.status


def _run(server: "subprocess.Popen[bytes]", name: str, ask: Ask, count: int) -> Measured:
    """Ask so often with all clients at once."""
    ask(_open(), count)
    took: list[float] = []
    refused: list[int] = []

    def client(first: int) -> None:
        connection = _open()
        for turn in range(first, count, CLIENTS):
            began = time.perf_counter()
            status = ask(connection, turn)
            took.append(time.perf_counter() - began)
            if status not in (200, 302):
                refused.append(status)

    before, began = _cpu_s(server.pid), time.perf_counter()
    threads = [threading.Thread(target=client, args=(n,)) for n in range(CLIENTS)]
    for one in threads:
        one.start()
    for one in threads:
        one.join()
    seconds = time.perf_counter() - began
    return Measured(
        name=name,
        per_s=count / seconds,
        p95_ms=1000 * statistics.quantiles(took, n=20)[-1],
        cpu_ms=1000 * (_cpu_s(server.pid) - before) / count,
        refused=len(refused),
    )


def _cpu_s(pid: int) -> float:
    """Return the processor time of a process and its children [s]."""
    total = 0.0
    for name in (pid, *_children(pid)):
        fields = Path(f"/proc/{name}/stat").read_text(encoding="ascii").rpartition(")")[2].split()
        total += (int(fields[11]) + int(fields[12])) / _TICKS
    return total


def _children(pid: int) -> Sequence[int]:
    text = Path(f"/proc/{pid}/task/{pid}/children").read_text(encoding="ascii")
    return [int(one) for one in text.split()]


def _print(found: Sequence[Measured]) -> None:
    hello, admin = found[0], next(one for one in found if one.name == "admin list")
    print("             req/s    p95 [ms]  CPU [ms]   CPU/hello  CPU/admin list")
    for one in found:
        print(
            f"  {one.name:10} {one.per_s:7.0f} {one.p95_ms:9.0f} {one.cpu_ms:10.2f}"
            f" {one.cpu_ms / max(hello.cpu_ms, 0.01):10.0f} {one.cpu_ms / admin.cpu_ms:12.2f}"
            + (f"   {one.refused} refused" if one.refused else "")
        )


if __name__ == "__main__":
    main(*map(int, sys.argv[1:3]))
