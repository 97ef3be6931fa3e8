"""The command that prints: every sheet, the same bytes, and what it refuses."""

from pathlib import Path

import pytest
from tests.paper_night import night, piece

from sootline.cli.main import main
from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job

Capture = pytest.CaptureFixture[str]


@pytest.mark.parametrize("which", ["load-cards", "hold-labels", "handover", "check-sheets",
                                   "radio", "tags"])  # fmt: skip
def test_the_command_prints_every_sheet(which: str, tmp_path: Path, capsys: Capture) -> None:
    """From a job file to a PDF, with a second language, on US Letter."""
    target = tmp_path / "sheet.pdf"
    typed = ["paper", str(_job_file(tmp_path)), "--sheet", which, "--out", str(target)]

    code = main([*typed, "--second-lang", "es", "--size", "letter", "--seconds", "0"])

    assert code == 0
    assert target.read_bytes().startswith(b"%PDF")
    assert str(target) in capsys.readouterr().out


def test_the_command_prints_the_same_bytes_at_the_same_moment(tmp_path: Path) -> None:
    """A moment can be given; without one it is the machine's clock."""
    job = str(_job_file(tmp_path))
    at = ["--printed-at", "2026-03-11T04:20-06:00"]
    for number in ("1", "2"):
        typed = ["paper", job, "--sheet", "hold-labels", "--out", str(tmp_path / number), *at]
        assert main([*typed, "--json"]) == 0

    assert (tmp_path / "1").read_bytes() == (tmp_path / "2").read_bytes()


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ([], "--out"),
        (["--out", "x.pdf", "--second-lang", "xx"], "xx"),
        (["--out", "x.pdf", "--printed-at", "yesterday"], "yesterday"),
        (["--out", "x.pdf", "--printed-at", "2026-03-11T04:20"], "2026-03-11T04:20"),
    ],
)
def test_the_command_refuses_what_it_cannot_print(
    typed: list[str], told: str, tmp_path: Path, capsys: Capture
) -> None:
    """No file, no such language, no moment: refused with the value."""
    code = main(["paper", str(_job_file(tmp_path)), "--sheet", "tags", *typed])

    assert code == 2
    assert told in capsys.readouterr().err


def _job_file(folder: Path) -> Path:
    """Write the invented night to a file."""
    path = folder / "job.json"
    path.write_text(encode(Job, night()), encoding="utf-8")
    return path


def test_pieces_that_make_no_tag_are_named_by_the_command(tmp_path: Path, capsys: Capture) -> None:
    """Their numbers are said, so that somebody can give them others."""
    path = tmp_path / "job.json"
    path.write_text(
        encode(Job, night(gear=(piece("no tag!", "hood"),), calls=())), encoding="utf-8"
    )

    assert main(["paper", str(path), "--sheet", "tags", "--out", str(tmp_path / "t.pdf")]) == 0
    assert "no tag!" in capsys.readouterr().out
