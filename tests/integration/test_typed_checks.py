"""From the printed rows to checks that the rebuild command judges."""

import json
from pathlib import Path

import pytest

from sootline.cli.main import main
from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job
from sootline.tasks.type_in_checks import sheet_rows
from sootline.wiring.demo import demo_job
from sootline.wiring.rules import RULES

Capture = pytest.CaptureFixture[str]


@pytest.fixture
def night(tmp_path: Path) -> Path:
    """Return the demo's job as a file."""
    path = tmp_path / "night.json"
    path.write_text(encode(Job, demo_job()), encoding="utf-8")
    return path


def test_a_typed_sheet_becomes_a_part_of_the_job(
    night: Path, tmp_path: Path, capsys: Capture
) -> None:
    """Two rows typed, two checks by 118 in the part that `job assemble` takes."""
    rows = sheet_rows(RULES, demo_job())
    sheet, part = tmp_path / "sheet.txt", tmp_path / "checks.json"
    letters = "ABCDEFGH"[: len(rows[0].points)]
    sheet.write_text(f"1 {letters}\n{rows[1].component} - 1A\n", encoding="utf-8")
    moment = "2026-03-11T11:40:00-06:00"

    code = main(
        ["checks", str(night), str(sheet), "--by", "118", "--at", moment, "--out", str(part)]
    )

    checks = json.loads(part.read_text(encoding="utf-8"))["checks"]
    assert code == 0
    assert "2 checks by 118" in capsys.readouterr().out
    assert [(check["component"], check["at"]) for check in checks] == [
        (rows[0].component, moment),
        (rows[1].component, moment),
    ]


def test_without_a_file_the_checks_are_printed(
    night: Path, tmp_path: Path, capsys: Capture
) -> None:
    """The job's own moment stands where none is given."""
    sheet = tmp_path / "sheet.txt"
    sheet.write_text("1 A\n", encoding="utf-8")

    code = main(["checks", str(night), str(sheet), "--by", "118"])

    (check,) = json.loads(capsys.readouterr().out)["checks"]
    assert (code, check["by"]) == (0, "118")


@pytest.mark.parametrize(
    ("row", "words"),
    [
        ("999 A", []),
        ("1 A", ["--at", "noon"]),
        ("1 A", ["--by", " "]),
        ("1 A", ["--at", "2026-03-11T11:40"]),
    ],
)
def test_what_cannot_be_read_is_refused(
    night: Path, tmp_path: Path, capsys: Capture, row: str, words: list[str]
) -> None:
    """A row that is not there, a moment that is none, nobody's name: exit code 2."""
    sheet = tmp_path / "sheet.txt"
    sheet.write_text(row, encoding="utf-8")

    assert main(["checks", str(night), str(sheet), "--by", "118", *words]) == 2
    assert "put right first" in capsys.readouterr().err
