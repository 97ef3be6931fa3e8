"""How the terminal treats what is typed and what a command does."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from sootline import __version__
from sootline.cli.main import main
from sootline.cli.registry import COMMANDS, Command

FRAME = Command(name="frame", help="cli.help.demo", module="tests.unit.frame_command")
ABSENT = Command(name="absent", help="cli.help.plan", module="sootline.cli.commands.not_there")
ROOT = Path(__file__).parents[2]

Capture = pytest.CaptureFixture[str]


def frame(*typed: str) -> int:
    """Run the frame with the test's own commands."""
    return main(["frame", *typed], (FRAME, ABSENT))


def test_version_is_printed(capsys: Capture) -> None:
    """The version is one line."""
    assert main(["--version"]) == 0
    assert capsys.readouterr().out == f"sootline {__version__}\n"


@pytest.mark.parametrize("typed", [[], ["--help"], ["-h"], ["--lang", "es", "-h"]])
def test_help_lists_every_command(typed: list[str], capsys: Capture) -> None:
    """Help names every command, also one whose module is missing."""
    assert main(typed, (*COMMANDS, ABSENT)) == 0

    out = capsys.readouterr().out
    assert all(f"\n  {command.name} " in out for command in (*COMMANDS, ABSENT))


def test_help_is_said_in_the_readers_language(capsys: Capture) -> None:
    """The language may stand before the command or after it."""
    main(["--lang", "es", "frame", "--help"], (FRAME,))
    before = capsys.readouterr().out
    main(["frame", "--help", "--lang=es"], (FRAME,))

    assert "imprime la" not in before
    assert "imprime esta ayuda" in before == capsys.readouterr().out


def test_an_unknown_command_is_refused_with_the_known_ones(capsys: Capture) -> None:
    """The refusal gives what was typed and what there is."""
    assert main(["wring"]) == 2

    said = capsys.readouterr().err
    assert '"wring"' in said
    assert "decide, loads, plan" in said


def test_an_absent_command_is_named(capsys: Capture) -> None:
    """A command without its module says so and breaks nothing else."""
    assert main(["absent"], (ABSENT,)) == 1
    assert '"absent"' in capsys.readouterr().err


def test_an_unknown_language_is_refused(capsys: Capture) -> None:
    """The refusal gives the languages there are."""
    assert main(["--lang", "xx", "--help"]) == 2
    assert "en, es" in capsys.readouterr().err


@pytest.mark.parametrize("typed", [("deliver", "--jsn"), (), ("nothing",), ("read",)])
def test_a_wrong_command_line_is_refused_in_a_line(typed: tuple[str, ...], capsys: Capture) -> None:
    """Usage errors are one line with the next step, and exit code 2."""
    assert frame(*typed) == 2

    said = capsys.readouterr().err
    assert said.count("\n") == 1
    assert "--help" in said


def test_the_commands_own_code_is_returned(capsys: Capture) -> None:
    """What the command answers is the exit code, and its text is printed."""
    assert frame("deliver") == 1
    assert capsys.readouterr().out == "plain text\n"


@pytest.mark.parametrize("typed", [("deliver", "--json"), ("--json", "deliver")])
def test_json_replaces_the_text(typed: tuple[str, ...], capsys: Capture) -> None:
    """The option may stand before or after a sub-command."""
    frame(*typed)

    assert json.loads(capsys.readouterr().out) == {"when": "2019-05"}


def test_out_writes_json_beside_the_text(tmp_path: Path, capsys: Capture) -> None:
    """The file holds the result, the terminal the text, and no leavings stay."""
    target = tmp_path / "result.json"
    frame("deliver", "--out", str(target))

    assert json.loads(target.read_text()) == {"when": "2019-05"}
    assert capsys.readouterr().out == "plain text\n"
    assert [path.name for path in tmp_path.iterdir()] == ["result.json"]


def test_a_link_named_by_out_stays_a_link(tmp_path: Path) -> None:
    """Writing through a link changes the file it leads to."""
    (tmp_path / "real.json").write_text("old")
    (tmp_path / "link.json").symlink_to("real.json")
    frame("deliver", "--out", str(tmp_path / "link.json"))

    assert (tmp_path / "link.json").is_symlink()
    assert "2019-05" in (tmp_path / "real.json").read_text()


@pytest.mark.parametrize("place", ["missing/result.json", "."])
def test_an_unwritable_place_is_refused(place: str, tmp_path: Path, capsys: Capture) -> None:
    """A folder, or a file in none, is refused by name."""
    assert frame("deliver", "--out", str(tmp_path / place)) == 2
    assert "written" in capsys.readouterr().err


def test_faults_are_listed_by_place_and_cut(capsys: Capture) -> None:
    """Many faults are cut at forty, long values shortened, control signs made visible."""
    assert frame("faults") == 2

    said = capsys.readouterr().err
    assert "60 things" in said
    assert "row 39:" in said
    assert "row 40:" not in said
    assert "20 more" in said
    assert "\x1b" not in said
    assert max(map(len, said.splitlines())) <= 200


def test_json_lists_every_fault_with_its_sentence(capsys: Capture) -> None:
    """With --json the faults are a document on standard output."""
    assert frame("faults", "--json", "--lang", "es") == 2

    faults = json.loads(capsys.readouterr().out)["faults"]
    assert len(faults) == 60
    assert faults[0]["message"] == "basis.quantity.unreadable"
    assert "no es una cantidad" in faults[0]["text"]


def test_an_unreadable_value_is_a_fault(capsys: Capture) -> None:
    """A value refused without a place is still said in words."""
    assert frame("value") == 2
    assert '"sometime" is not a date' in capsys.readouterr().err


def test_a_failure_of_ours_is_one_line(capsys: Capture) -> None:
    """No traceback, no control signs; what to do next; exit code 1."""
    assert frame("fail") == 1

    said = capsys.readouterr().err
    assert "Traceback" not in said
    assert "SOOTLINE_DEBUG=1" in said
    assert "\x1b" not in said


def test_debugging_shows_the_traceback(capsys: Capture, monkeypatch: pytest.MonkeyPatch) -> None:
    """Whoever asks for it sees where it failed."""
    monkeypatch.setenv("SOOTLINE_DEBUG", "1")
    frame("fail")

    assert "Traceback" in capsys.readouterr().err


def test_stopping_from_the_keyboard_is_no_failure(capsys: Capture) -> None:
    """Ctrl-C ends with 130 and a plain line."""
    assert frame("stop") == 130
    assert "Stopped" in capsys.readouterr().err


def test_a_missing_file_is_refused_by_name(capsys: Capture) -> None:
    """The refusal names the file and the next step."""
    assert frame("read", "no-such-file.json") == 2
    assert 'There is no file "no-such-file.json"' in capsys.readouterr().err


def test_a_reader_that_stops_reading_causes_no_noise() -> None:
    """Output into a closed pipe ends quietly."""
    script = "import sys; from tests.unit.test_cli_frame import frame; sys.exit(frame('flood'))"
    with subprocess.Popen(
        [sys.executable, "-c", script], cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as process:
        assert process.stdout
        assert process.stderr
        process.stdout.readline()
        process.stdout.close()

        assert process.stderr.read() == b""
    assert process.returncode == 1


def test_a_narrow_alphabet_breaks_nothing() -> None:
    """A terminal that cannot show an accent gets its code instead of a traceback."""
    environment = os.environ | {"PYTHONIOENCODING": "ascii"}
    done = subprocess.run(
        [sys.executable, "-c", "from sootline.cli.main import main; main(['--lang', 'es', '-h'])"],
        env=environment, capture_output=True, text=True, check=True,
    )  # fmt: skip

    assert "qu\\xe9 necesita" in done.stdout


def test_the_front_door_loads_no_command_and_no_core() -> None:
    """Asking for the version pays for nothing else."""
    script = (
        "import sys; from sootline.cli.main import main; main(['--version']);"
        "print(*[m for m in sys.modules if m.startswith('sootline.')])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )

    assert "sootline.core" not in done.stdout
    assert "sootline.cli.commands" not in done.stdout
