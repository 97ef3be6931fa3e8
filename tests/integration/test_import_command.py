"""Does `sootline import` show, write and remember what an officer asks for?"""

import json
from pathlib import Path

import pytest
from tests.integration import bad_tables as bad

from sootline.cli.main import main

Capture = pytest.CaptureFixture[str]
LIST = (
    "Tag No;Type;Assigned To;Shift;DOM;Status;Remarks\n"
    "C1;coat;M01;A;03/04/15;in service;\n"
    "C2;coat;M02;A;;ok;new pocket\n"
    "B1;boots;M01;A;2022;in service;\n"
)
SAID = ("--column", "Tag No=serial", "--kind", "boots=boots-leather", "--status", "ok=in service",
        "--dates", "mdy", "--today", "2026-03-01", "--edition", "nfpa-1851/2020")  # fmt: skip


@pytest.fixture
def gear(tmp_path: Path) -> Path:
    """Write an invented list as departments have them."""
    path = tmp_path / "gear.csv"
    path.write_text(LIST, encoding="utf-8")
    return path


def test_a_preview_shows_and_writes_nothing(gear: Path, tmp_path: Path, capsys: Capture) -> None:
    """Columns, counts, what stands out, the worklist, what is past; and no file."""
    out = tmp_path / "register.json"

    assert main(["import", str(gear), *SAID, "--preview", "--out", str(out)]) == 0

    said = " ".join(capsys.readouterr().out.split())
    for part in ('"DOM" was taken for', "coat liner", "Remarks", "No date of manufacture", "2025"):
        assert part in said
    assert not out.exists()


def test_a_list_comes_in_as_a_part_of_a_job(gear: Path, tmp_path: Path) -> None:
    """Members and components in the form of the job document."""
    out = tmp_path / "register.json"

    assert main(["import", str(gear), *SAID, "--out", str(out)]) == 0

    register = json.loads(out.read_text(encoding="utf-8"))
    assert [member["id"] for member in register["members"]] == ["M01", "M02"]
    assert len(register["components"]) == 5
    assert main(["job", "assemble", str(out)]) == 2  # a part without a department is no job


def test_the_mapping_is_remembered(gear: Path, tmp_path: Path) -> None:
    """The second time nothing need be said again."""
    mapping, first, second = (tmp_path / name for name in ("map.json", "1.json", "2.json"))
    main(["import", str(gear), *SAID, "--mapping", str(mapping), "--out", str(first)])

    again = ["import", str(gear), "--mapping", str(mapping), "--today", "2026-03-01"]
    assert main([*again, "--edition", "nfpa-1851/2020", "--out", str(second)]) == 0

    assert first.read_bytes() == second.read_bytes()


def test_a_bulk_decision_is_said_with_name_and_number(gear: Path, capsys: Capture) -> None:
    """Who decided what for how many."""
    decision = ["--undated", "2014..2015", "--by", "118", "--why", "bought with C1"]

    assert main(["import", str(gear), *SAID, *decision]) == 0

    said = " ".join(capsys.readouterr().out.split())
    assert "118 stands for 2 undated pieces" in said
    assert "past under every reading, between 2024-01-01 and 2025-12-31" in said


def test_known_gear_is_held_against_the_list(gear: Path, tmp_path: Path, capsys: Capture) -> None:
    """Taking the same list in twice suggests every piece as a duplicate."""
    out = tmp_path / "register.json"
    main(["import", str(gear), *SAID, "--out", str(out)])
    capsys.readouterr()

    assert main(["import", str(gear), *SAID, "--known", str(out)]) == 0

    assert "3 groups are likely one piece each" in " ".join(capsys.readouterr().out.split())


def test_faults_name_row_column_and_next_step(gear: Path, capsys: Capture) -> None:
    """Without the order of day and month, the list is refused and says how to give it."""
    said = [word for word in SAID if word not in ("--dates", "mdy")]

    assert main(["import", str(gear), *said]) == 2

    errors = " ".join(capsys.readouterr().err.split())
    assert "gear.csv:2:DOM" in errors
    assert "--dates dmy" in errors


def test_it_speaks_spanish(gear: Path, capsys: Capture) -> None:
    """The preview is said in the reader's language."""
    assert main(["--lang", "es", "import", str(gear), *SAID, "--preview"]) == 0

    assert "Lista de tareas" in capsys.readouterr().out


def test_an_encoding_and_a_sheet_can_be_said(tmp_path: Path) -> None:
    """What the file does not tell, the officer does."""
    old = tmp_path / "old.csv"
    old.write_bytes(bad.listed(f"SN-\xe9,{bad.ROW}", encoding="cp1252"))
    book = tmp_path / "book.xlsx"
    book.write_bytes(bad.workbook(lambda one: one.create_sheet("Empty")))

    assert main(["import", str(old), "--encoding", "cp1252"]) == 0
    assert main(["import", str(book), "--sheet", "Gear", "--header-row", "1"]) == 0
    assert main(["import", str(book), "--sheet", "Empty"]) == 2


@pytest.mark.parametrize(
    "words",
    [
        ["--column", "Type"],
        ["--column", "Type=colour"],
        ["--today", "tomorrow"],
        ["--undated", "perhaps"],
        ["--encoding", "klingon"],
        ["--ignore", "Type"],
        ["--undated", "keep"],
    ],
)
def test_what_cannot_be_meant_is_refused(words: list[str], gear: Path, capsys: Capture) -> None:
    """Half a pair, an unknown field, no day, no decision, an unsigned one."""
    assert main(["import", str(gear), *SAID, *words]) == 2
    assert "Traceback" not in capsys.readouterr().err


def test_pulling_can_be_decided(gear: Path, capsys: Capture) -> None:
    """All undated gear comes in on hold, by name."""
    assert main(["import", str(gear), *SAID, "--undated", "pull", "--by", "118", "--why", "x"]) == 0

    assert "to pull 2 undated pieces" in " ".join(capsys.readouterr().out.split())
