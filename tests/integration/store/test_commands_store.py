"""The commands of the store, as somebody types them."""

import json
import os
import socket
import subprocess
import sys
import time
import urllib.request
from pathlib import Path

import pytest
from tests.conftest import COULD_NOT
from tests.integration.store_databases import Databases

from sootline.cli.main import main
from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job
from sootline.files.demo import demo_job
from sootline.files.rules import RuleFiles

GOOD = "brass-kettle-lantern-42x"


def _run(
    folder: Path, *words: str, typed: str = "", url: str = "", **more: str
) -> subprocess.CompletedProcess[str]:
    own = {"SOOTLINE_DATA": str(folder), "DATABASE_URL": url, **more}
    left = {name: value for name, value in os.environ.items() if name != "DJANGO_SETTINGS_MODULE"}
    command = [sys.executable, "-m", "sootline", *words]
    return subprocess.run(
        command, input=typed, capture_output=True, text=True, check=False, env={**left, **own}
    )


def test_from_nothing_to_a_restored_copy(tmp_path: Path) -> None:
    """An administrator, a backup, a look at it, and the same store somewhere else."""
    here, there, file = tmp_path / "here", tmp_path / "there", tmp_path / "b.zip"
    made = _run(here, "admin", "create", "Maren", typed=f"{GOOD}\n")
    assert (made.returncode, made.stdout) == (0, "Account Maren is made.\n")

    written = _run(here, "backup", str(file), "--json")
    restored = _run(there, "restore", str(file))
    looked = _run(there, "doctor", "--deep")

    assert json.loads(written.stdout)["accounts"] == 1
    assert _run(here, "backup", str(file), "--only-verify").returncode == 0
    assert (restored.returncode, restored.stderr) == (0, "")
    assert (looked.returncode, looked.stdout.count("nothing amiss")) == (0, 10)
    assert ((there / "secret-key").stat().st_mode & 0o777) == 0o600


def test_a_job_enters_and_the_record_leaves(tmp_path: Path) -> None:
    """The demo department in, once; the record out, verified by its lines and an anchor."""
    folder, job = tmp_path / "d", tmp_path / "job.json"
    job.write_text(encode(Job, demo_job(RuleFiles())), encoding="utf-8")

    _run(folder, "admin", "create", "Maren", "--member", "211", typed=f"{GOOD}\n")

    entered = _run(folder, "enter", str(job), "--by", "118")
    again = _run(folder, "enter", str(job), "--by", "118", "--json")
    out, anchor = tmp_path / "r.jsonl", tmp_path / "anchor"
    exported = _run(folder, "export", str(out), "--anchor", str(anchor))

    assert (entered.returncode, entered.stderr) == (0, "")
    assert json.loads(again.stdout)["entries"] == 0
    assert exported.returncode == 0
    verified = _run(folder, "ledger", "verify", str(out), "--anchor", str(anchor))
    assert (verified.returncode, verified.stderr) == (0, "")
    piece = json.loads(out.read_text().splitlines()[-1])["header"]
    item = json.loads(piece)["item"]
    _run(folder, "export", str(out), "--item", item)
    assert _run(folder, "ledger", "verify", str(out)).returncode == 0


def test_the_doctor_says_what_is_amiss(tmp_path: Path) -> None:
    """Nobody is an administrator, others can read the key: each with its next step."""
    _run(tmp_path, "admin", "create", "Maren", "--role", "officer", typed=f"{GOOD}\n")
    (tmp_path / "secret-key").chmod(0o644)

    looked = _run(tmp_path, "doctor")

    assert looked.returncode == 1
    assert "chmod 600" in looked.stdout
    assert "sootline admin create" in looked.stdout


def test_accounts_from_the_console(tmp_path: Path) -> None:
    """Another password, other offices, and a closed account; a bad password is refused whole."""
    for words in (["create", "Maren"], ["create", "Second"], ["password", "Second"]):
        assert _run(tmp_path, "admin", *words, typed=f"{GOOD}\n").returncode == 0
    assert _run(tmp_path, "admin", "roles", "Second", "administrator", "officer").returncode == 0

    assert _run(tmp_path, "admin", "close", "Maren").returncode == 0
    offices = [line for line in _exported(tmp_path) if "role-changed" in line]
    assert [json.loads(json.loads(line)["payload"])["role"] for line in offices] == [
        "administrator", "administrator", "administrator, officer", "none",
    ]  # fmt: skip
    bad = _run(tmp_path, "admin", "create", "Third", typed="short\n")
    last = _run(tmp_path, "admin", "close", "Second")

    assert (bad.returncode, last.returncode) == (2, 2)
    assert "15 to 200" in bad.stderr


def _exported(folder: Path) -> list[str]:
    _run(folder, "export", str(folder / "record.jsonl"))
    return (folder / "record.jsonl").read_text(encoding="utf-8").splitlines()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--host", "0.0.0.0"], "--plain-http"),  # noqa: S104
        (["--host", "0.0.0.0", "--plain-http", "--demo"], "demonstration"),  # noqa: S104
        (["--tls-file", "c.pem"], "--key"),
        (["--host", "gear.example"], "--plain-http"),
    ],
)
def test_what_serve_refuses(
    words: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """Plain http for others, half a certificate, a demonstration for others."""
    assert main(["serve", *words]) == 2
    assert said in capsys.readouterr().err


def _free_port() -> int:
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return int(one.getsockname()[1])


@pytest.mark.parametrize("vendor", ["sqlite", "postgresql"])
def test_serving(databases: Databases, tmp_path: Path, vendor: str) -> None:
    """The server comes up by itself on an empty database, and answers that it is well."""
    url = ""
    if vendor == "postgresql":
        if not databases.able(vendor):
            pytest.skip(f"{COULD_NOT}: no PostgreSQL server is installed (make services)")
        url = databases.fresh(vendor, migrated=False).url or ""
    port = _free_port()
    own = {"SOOTLINE_DATA": str(tmp_path), "DATABASE_URL": url}
    left = {name: value for name, value in os.environ.items() if name != "DJANGO_SETTINGS_MODULE"}
    command = [sys.executable, "-m", "sootline", "serve", "--port", str(port)]
    with subprocess.Popen(command, env={**left, **own}, stdout=subprocess.PIPE, text=True) as run:
        try:
            told = _answer(f"http://127.0.0.1:{port}/healthz")
            assert (told["web"], told["amiss"]) == ("ok", [])
        finally:
            run.terminate()
            run.wait(20)


def _answer(address: str) -> dict[str, object]:
    end = time.monotonic() + 30
    while True:
        try:
            with urllib.request.urlopen(address, timeout=5) as answer:  # noqa: S310
                told: dict[str, object] = json.loads(answer.read())
                return told
        except OSError:
            if time.monotonic() > end:
                raise
            time.sleep(0.2)
