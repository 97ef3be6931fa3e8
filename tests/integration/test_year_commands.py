"""The commands of the year as a person types them, from a job file to text, files and exit code."""

import json
from dataclasses import replace
from pathlib import Path

import pytest
from tests.spec.test_dunmarrow import NOTICE
from tests.spec.test_dunmarrow_record import JOB
from tests.unit.tasks.test_year import COAT, HOOD, LINER, NOW
from tests.unit.tasks.test_year import JOB as VENNICK

from sootline.cli.main import main
from sootline.core.job.codec import decode, encode
from sootline.core.job.jobs import Job
from sootline.core.upkeep.facts import UpkeepFacts
from sootline.core.upkeep.inspections import InspectionDay, InspectionKind
from sootline.core.upkeep.recalls import Notice
from sootline.wiring.demo import demo_job

Capture = pytest.CaptureFixture[str]


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> str:
    """Write the demo department's job to a file."""
    return written(tmp_path_factory.mktemp("demo"), demo_job())


def written(folder: Path, job: Job, name: str = "job.json") -> str:
    """Write a job to a file."""
    path = folder / name
    path.write_text(encode(Job, job))
    return str(path)


@pytest.mark.parametrize("lang", ["en", "es"])
@pytest.mark.parametrize(
    "typed",
    [
        ["today", "--overdue"],
        ["inspect", "--all"],
        ["inspect", "--piece", "0498"],
        ["recall", "--all"],
        ["contractor", "--manifest"],
    ],
    ids="-".join,
)
def test_each_command_says_everything_in_words(
    typed: list[str], lang: str, demo: str, capsys: Capture
) -> None:
    """No message id and no empty place is left in what is printed."""
    code = main([typed[0], demo, *typed[1:], "--lang", lang])
    printed = capsys.readouterr().out

    assert code in (0, 1)
    assert "?]" not in printed
    assert ".cli." not in printed
    assert len(printed.splitlines()) > 5


@pytest.mark.parametrize("command", ["today", "inspect", "recall", "contractor"])
def test_a_job_without_a_year_is_answered_too(
    command: str, tmp_path: Path, capsys: Capture
) -> None:
    """Nothing recorded: said so, and nothing is wrong."""
    job = replace(VENNICK, upkeep=UpkeepFacts(), components=())
    code = main([command, written(tmp_path, job)])

    assert code == 0
    assert capsys.readouterr().out.strip()


def test_json_carries_what_the_text_says(demo: str, capsys: Capture) -> None:
    """The answer as one document."""
    main(["recall", demo, "--json"])
    found = json.loads(capsys.readouterr().out)

    assert found["notices"][0]["counts"][0] == ["affected", 1]


def test_a_notice_from_a_file_is_held_against_a_register(tmp_path: Path, capsys: Capture) -> None:
    """The county's recall to the unit: 4, 5, 1, and the rest not meant."""
    job = written(tmp_path, replace(JOB, upkeep=UpkeepFacts()))
    notice = tmp_path / "notice.json"
    notice.write_text(encode(Notice, NOTICE))
    code = main(["recall", job, "--notice-file", str(notice)])
    printed = capsys.readouterr().out

    assert code == 1
    assert "affected 4, possibly affected 5, not meant 5, already gone 1" in printed
    assert "D05" in printed
    assert "D17" in printed


def planned() -> Job:
    """Return the department with a day planned."""
    day = InspectionDay(kind=InspectionKind.ADVANCED, on=NOW.date(), planned=(COAT, LINER, HOOD))
    return replace(VENNICK, upkeep=replace(VENNICK.upkeep, inspection_days=(day,)))


def test_a_typed_sheet_comes_into_the_job_piece_by_piece(tmp_path: Path, capsys: Capture) -> None:
    """Printed, ticked, typed: the answer, and the job with it for the next time."""
    sheet, after = tmp_path / "sheet.txt", tmp_path / "after.json"
    sheet.write_text("0412 ABCDEFGHIJKLMNO\n0612 ABCDEFGH 5C\n0512 absent on leave\n")
    code = main([
        "inspect", written(tmp_path, planned()), "--typed", str(sheet), "--by", "118",
        "--at", "2026-04-11T10:00+00:00", "--job-out", str(after),
    ])  # fmt: skip
    printed = capsys.readouterr().out
    job = decode(Job, after.read_text())

    assert code == 1
    assert "2027-04-11" in printed
    assert "on leave" in printed
    assert len(job.upkeep.inspections) == 2


@pytest.mark.parametrize(
    ("rest", "told"),
    [
        ([], "--by"),
        (["--by", "118", "--at", "noon"], "noon"),
        (["--by", "118"], "line 1"),
    ],
)
def test_a_typed_sheet_is_refused_whole(
    rest: list[str], told: str, tmp_path: Path, capsys: Capture
) -> None:
    """Without a name, without a moment, with a row for many."""
    sheet = tmp_path / "sheet.txt"
    sheet.write_text("1-3 ABCDEFGHIJKLMNO\n")
    code = main(["inspect", written(tmp_path, planned()), "--typed", str(sheet), *rest])

    assert code == 2
    assert told in capsys.readouterr().err


def test_the_calendar_feed_is_written_beside_the_answer(demo: str, tmp_path: Path) -> None:
    """Every known due day of the demo department as a whole-day entry."""
    feed = tmp_path / "due.ics"
    main(["today", demo, "--calendar", str(feed)])
    text = feed.read_bytes().decode()

    assert text.startswith("BEGIN:VCALENDAR\r\n")
    assert text.count("BEGIN:VEVENT") == text.count("END:VEVENT") > 100


@pytest.mark.parametrize(
    "sheet",
    ["inspection-routine", "inspection-advanced", "inspection-liner", "manifests", "month",
     "recall"],
)  # fmt: skip
@pytest.mark.parametrize("empty", [False, True])
def test_the_sheets_of_the_year_are_printed(
    sheet: str, empty: bool, demo: str, tmp_path: Path
) -> None:
    """In two languages on US Letter; of a department without a year as well."""
    job = replace(VENNICK, upkeep=UpkeepFacts(), components=())
    source = written(tmp_path, job) if empty else demo
    target = tmp_path / "sheet.pdf"
    code = main([
        "paper", source, "--sheet", sheet, "--out", str(target), "--second-lang", "es",
        "--size", "letter", "--printed-at", "2026-04-11T10:00+00:00",
    ])  # fmt: skip

    assert code == 0
    assert target.read_bytes().startswith(b"%PDF")
