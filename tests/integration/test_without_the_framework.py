"""A command that is given a file never starts the web framework, whatever else it can do."""

import subprocess
import sys
from pathlib import Path

import pytest

from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job
from sootline.wiring.demo import demo_job

GOLDEN = Path(__file__).parents[1] / "golden" / "ledger-0.1-night.jsonl"
LIST = "Tag No;Type;DOM\nC1;coat;03/04/25\n"
LOOK = (
    "import sys; from sootline.cli.main import main; code = main(sys.argv[1:]); "
    "sys.exit(99 if 'django' in sys.modules else code)"
)


@pytest.fixture
def files(tmp_path: Path) -> dict[str, str]:
    """Write a job and a list."""
    job, gear = tmp_path / "job.json", tmp_path / "gear.csv"
    job.write_text(encode(Job, demo_job()), encoding="utf-8")
    gear.write_text(LIST, encoding="utf-8")
    return {"JOB": str(job), "LIST": str(gear), "RECORD": str(GOLDEN)}


@pytest.mark.parametrize(
    "words",
    [
        ["due", "JOB", "--today", "2026-03-01"],
        ["ledger", "verify", "RECORD"],
        ["ledger", "replay", "RECORD"],
        ["import", "LIST", "--column", "Tag No=serial", "--dates", "mdy", "--preview"],
    ],
    ids=lambda words: " ".join(words[:2]),
)
def test_no_framework_is_started(files: dict[str, str], words: list[str]) -> None:
    """The process ends without it in memory."""
    typed = [files.get(word, word) for word in words]

    ended = subprocess.run(
        [sys.executable, "-c", LOOK, *typed], capture_output=True, text=True, check=False
    )

    assert ended.returncode in (0, 1), ended.stderr
