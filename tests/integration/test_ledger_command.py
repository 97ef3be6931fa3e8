"""`sootline ledger` and the verifier apart, on files."""

import dataclasses
import json
import subprocess
import sys
from pathlib import Path

import pytest
from tests.ledger_cases import SHELL, TARN_HOLLOW, Book, at, draft, load, span

import sootline.ledger_verifier as apart
from sootline.cli.main import main
from sootline.core.basis import MemberId
from sootline.core.ledger import (
    Anchor,
    EntryKind,
    Established,
    Second,
    component,
    take_anchor,
    write_anchor,
)
from sootline.core.ledger.check_words import words_at
from sootline.core.ledger.exports import export_all, export_item

K = EntryKind
STATE = {"custody": "wash-room", "stage": "to-wash", "assembly": "apart"}


def book() -> Book:
    """Return two phones' night, with a correction, an erasure and an odd clock."""
    kept = Book()
    kept.add(
        draft(K.REGISTERED, "04:00", state=STATE),
        draft(K.HOLD_OPENED, "04:20", cause="battery-smoke", question="care.ask.battery",
              decider="safety-officer", deputy="chief"),
        draft(K.HUNG, span("04:25", offset_s=-660), device="phone-b", actor="204"),
        draft(K.NOTED, "05:00", said="smelt of smoke"),
        draft(K.CORRECTED, "05:10", corrects=4, reason="other coat", item="component:0413"),
        draft(K.NOTED, "05:20", said="about somebody"),
        draft(K.ERASED, "06:00", erases=6, reason="court order",
              second=Second(person=MemberId("118"), established=Established.PIN)),
        draft(K.NOTED, "09:00", said="a clock that is fast", device="phone-c"),
        draft(K.LOAD_FAILED, "05:20", thing=load("W-9")),
        draft(K.NOTED, span("05:30", offset_s=300), device="phone-d", said="x"),
    )  # fmt: skip
    kept.erase(6)
    return kept


@pytest.fixture
def files(tmp_path: Path) -> dict[str, Path]:
    """Write the record, one piece's part and anchors to files."""
    kept = book()
    anchor = anchor_of(kept)
    named = {name: tmp_path / f"{name}.jsonl" for name in ("whole", "piece", "anchor", "wrong")}
    named["whole"].write_text("\n".join(export_all(TARN_HOLLOW, kept.entries, anchor)) + "\n")
    named["piece"].write_text("\n".join(export_item(kept.entries, SHELL, anchor)) + "\n")
    named["anchor"].write_text(write_anchor(anchor) + "\n")
    wrong = dataclasses.replace(anchor, root="a" * 64)
    named["wrong"].write_text(write_anchor(wrong) + "\n")
    return named


def anchor_of(kept: Book) -> Anchor:
    """Return the anchor of a record."""
    anchor = take_anchor(TARN_HOLLOW, (entry.hash for entry in kept.entries), at("09:00"))
    assert anchor is not None
    return anchor


def ran(capsys: pytest.CaptureFixture[str], *typed: object) -> tuple[int, str]:
    """Run a command and return its exit code and what it said."""
    code = main(["ledger", *map(str, typed)])
    said = capsys.readouterr()
    return code, said.out + said.err


def test_a_whole_record_verifies(
    files: dict[str, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    """Exit code 0; what was erased is told, and which anchor agrees."""
    code, said = ran(capsys, "verify", files["whole"], "--anchor", files["anchor"])
    assert code == 0
    assert "No damage found" in said
    assert "entry 6 said was erased under entry 7, by 201 and 118" in said
    assert "Agrees with the anchor" in said


def test_without_an_anchor_the_limit_is_told(
    files: dict[str, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    """A tail cut off would not show."""
    code, said = ran(capsys, "verify", files["whole"])
    assert (code, "No anchor was given" in said) == (0, True)


def test_damage_ends_with_1(files: dict[str, Path], capsys: pytest.CaptureFixture[str]) -> None:
    """The first bad entry is named; a wrong anchor and unerased payloads too."""
    lines = files["whole"].read_text().splitlines()
    lines[3] = lines[3].replace("204", "205")
    files["whole"].write_text("\n".join(lines))
    code, said = ran(capsys, "verify", files["whole"], "--anchor", files["wrong"])
    assert (code, "DAMAGE at entry 3" in said, "another root" in said) == (1, True, True)


def test_many_damages_are_counted(
    files: dict[str, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    """A file of another kind under a good first line."""
    first = files["whole"].read_text().splitlines()[0]
    files["whole"].write_text("\n".join([first, *["x"] * 300]))
    assert "And 400 more damages" in ran(capsys, "verify", files["whole"])[1]


def test_an_erasure_that_was_not_carried_out_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The payload is still there."""
    kept = Book()
    second = Second(person=MemberId("118"), established=Established.PIN)
    kept.add(draft(K.NOTED, "05:20", said="about somebody"),
             draft(K.ERASED, "06:00", erases=1, reason="court order", second=second))  # fmt: skip
    path = tmp_path / "r.jsonl"
    path.write_text("\n".join(export_all(TARN_HOLLOW, kept.entries)))
    assert "it is still there" in ran(capsys, "verify", path)[1]


def test_one_pieces_export_verifies_by_its_proofs(
    files: dict[str, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    """Without the rest of the record."""
    assert ran(capsys, "verify", files["piece"], "--anchor", files["anchor"])[0] == 0
    assert ran(capsys, "verify", files["piece"], "--anchor", files["wrong"])[0] == 1


def test_one_pieces_export_needs_its_anchor(
    files: dict[str, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    """Nothing can be proven from it otherwise."""
    first, *rest = files["piece"].read_text().splitlines()
    head = {name: value for name, value in json.loads(first).items() if name != "anchor"}
    lines = [json.dumps(head, sort_keys=True, separators=(",", ":")), *rest]
    files["piece"].write_text("\n".join(lines))
    assert ran(capsys, "verify", files["piece"])[0] == 2


def test_a_life_is_told_with_stated_and_true_times(
    files: dict[str, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    """Every line, what is struck through, what was erased, and the question."""
    code, said = ran(capsys, "show", files["whole"], "--item", "0412")
    assert code == 1
    for words in ("2026-03-01 04:25+01:00", "2026-03-01 04:36+01:00", "taken back",
                  "erased by two people", "ON HOLD (battery-smoke)", "201, 204",
                  "cannot be right", "maker and model: MISSING"):  # fmt: skip
        assert words in said


def test_a_correction_shows_under_the_right_piece(
    files: dict[str, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    """With the entry that moved it there."""
    code, said = ran(capsys, "show", files["whole"], "--item", "component:0413")
    assert (code, "corrected under entry 5" in said) == (0, True)


def test_an_earlier_state_can_be_asked(
    files: dict[str, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    """As of a time, and as known at an entry or a time."""
    early = ran(capsys, "show", files["whole"], "--item", "0412", "--known-at", "1")[1]
    assert "ON HOLD" not in early
    assert "ON HOLD" in ran(capsys, "show", files["whole"], "--item", "0412", "--known-at",
                            "2026-03-01T08:00+01:00")[1]  # fmt: skip
    assert "ON HOLD" not in ran(capsys, "show", files["whole"], "--item", "0412", "--as-of",
                                "2026-03-01T04:10+01:00")[1]  # fmt: skip


@pytest.mark.parametrize("moment", ["yesterday", "2026-03-01T04:10", "9" * 20])
def test_a_time_without_its_offset_is_refused(
    files: dict[str, Path], capsys: pytest.CaptureFixture[str], moment: str
) -> None:
    """02:30 happens twice on the night the clocks go back."""
    typed = ("show", files["whole"], "--item", "0412", "--known-at", moment)
    assert ran(capsys, *typed)[0] == 2


@pytest.mark.parametrize("item", ["9999", "load:W-9", "coat:1"])
def test_what_is_no_piece_on_record_is_bad_input(
    files: dict[str, Path], capsys: pytest.CaptureFixture[str], item: str
) -> None:
    """Look again for its number."""
    assert ran(capsys, "show", files["whole"], "--item", item)[0] == 2


def test_a_replay_tells_every_piece_and_clock(
    files: dict[str, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    """One line a piece; slow, fast and impossible clocks; the question once."""
    code, said = ran(capsys, "replay", files["whole"])
    assert code == 1
    for words in ("0412: ON HOLD", "0413:", "phone-b was 11 min slow", "phone-d was 5 min fast",
                  "Times of phone-c cannot be right", "Pieces: 2. Open questions: 1."):  # fmt: skip
        assert words in said


def test_a_replay_without_a_question_ends_with_0(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """And says so in Spanish, too."""
    path = tmp_path / "r.jsonl"
    kept = Book()
    kept.add(draft(K.REGISTERED, "04:00", state=STATE))
    path.write_text("\n".join(export_all(TARN_HOLLOW, kept.entries)))
    code, said = ran(capsys, "replay", path, "--lang", "es")
    assert (code, "Piezas: 1" in said) == (0, True)
    assert ran(capsys, "show", path, "--item", "0412", "--json")[0] == 0


@pytest.mark.parametrize("text", ["", "{}", "\x00", "x" * 100])
def test_what_is_no_record_is_bad_input(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str
) -> None:
    """Exit code 2, by both verifiers."""
    path = tmp_path / "r.jsonl"
    path.write_text(text)
    assert ran(capsys, "verify", path)[0] == 2
    assert ran(capsys, "verify", tmp_path / "absent.jsonl")[0] == 2
    assert apart.main([str(path)]) == 2
    assert apart.main([str(tmp_path / "absent.jsonl")]) == 2


def test_a_file_that_is_no_anchor_is_bad_input(
    files: dict[str, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    """Its name is told."""
    code, said = ran(capsys, "verify", files["whole"], "--anchor", files["piece"])
    assert (code, "piece.jsonl" in said) == (2, True)
    assert apart.main([str(files["whole"]), "--anchor", str(files["piece"])]) == 2


def test_the_verifier_apart_runs_by_itself(files: dict[str, Path], tmp_path: Path) -> None:
    """Copied elsewhere, with nothing of the program to import; it says the same."""
    copy = tmp_path / "ledger_verifier.py"
    copy.write_bytes(Path(apart.__file__).read_bytes())
    typed = [sys.executable, "-I", str(copy), str(files["whole"]), "--anchor", str(files["anchor"])]
    done = subprocess.run([*typed, "--json"], capture_output=True, text=True, check=False)
    report = json.loads(done.stdout)
    assert (done.returncode, report["erased"]) == (0, [[6, 7, "201", "118"]])
    plain = subprocess.run(typed, capture_output=True, text=True, check=False)
    assert "first_bad: None" in plain.stdout


def test_the_verifier_apart_is_short_and_stands_alone() -> None:
    """Under 300 lines, and only the standard library: somebody can read it in an hour."""
    text = Path(apart.__file__).read_text(encoding="utf-8")
    imported = {line.split()[1].partition(".")[0] for line in text.splitlines()
                if line.startswith(("import ", "from "))}  # fmt: skip
    assert len(text.splitlines()) < 300
    assert imported <= sys.stdlib_module_names
    assert component("0412") == SHELL


def test_a_printed_sheet_is_held_against_the_record(
    files: dict[str, Path], capsys: pytest.CaptureFixture[str]
) -> None:
    """The right words agree, others differ, and one piece's part cannot say."""
    hashes = [json.loads(line)["hash"] for line in files["whole"].read_text().splitlines()[1:]]
    right = f"3:{words_at(hashes, 3)}"

    assert ran(capsys, "verify", files["whole"], "--printed", right)[0] == 0
    code, said = ran(capsys, "verify", files["whole"], "--printed", "3:lusab-babad-gutih-tugad")
    assert (code, "DIFFERS" in said) == (1, True)
    assert ran(capsys, "verify", files["piece"], "--printed", right)[0] == 2
