"""Words after a command that ask for what cannot be: refused with the place and the next step."""

import json
from pathlib import Path

import pytest
from tests.integration.test_commands import job

from sootline.cli.main import main

Capture = pytest.CaptureFixture[str]


@pytest.fixture
def night(tmp_path: Path) -> str:
    """Write a job to disk."""
    path = tmp_path / "night.json"
    path.write_text(json.dumps(job()), encoding="utf-8")
    return str(path)


@pytest.mark.parametrize("by", ["0", "1999-01-01T00:00"])
def test_a_deadline_before_the_start_is_refused(night: str, capsys: Capture, by: str) -> None:
    """Nobody can be back before the work begins; the start stands beside the refusal."""
    code = main(["plan", night, "--goal", "deadline", "--by", by])

    assert code == 2
    assert f"--by: The deadline {by} is not after the start" in capsys.readouterr().err


@pytest.mark.parametrize("what", ["check", "assemble"])
def test_a_job_command_without_a_file_says_so(capsys: Capture, what: str) -> None:
    """Nothing checked is not reported as nothing wrong."""
    assert main(["job", what]) == 2
    assert "Name at least one job file" in capsys.readouterr().err


def test_demo_files_go_into_a_folder_only(night: str, capsys: Capture) -> None:
    """A file in the way is named, and nothing is written."""
    assert main(["demo", "--files", night]) == 2
    assert "--files: The files cannot be put into" in capsys.readouterr().err
