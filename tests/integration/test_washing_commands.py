"""`sootline machine` and `sootline drying`, as they are typed."""

import json
from pathlib import Path

import pytest
from tests.washing_night import night

from sootline.cli.main import main
from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job
from sootline.words import languages

Capture = pytest.CaptureFixture[str]

SHEET = """{"dated": "2026-02", "currency": "USD", "sets": 4, "yearly": 3000, "contract": 60,
 "sets_a_year": 120, "contract_covers": ["inspection"], "items": [
 {"kind": "labour", "used": "0.75 h", "price": {"amount": 32, "per": "1 h"}},
 {"kind": "water", "used": "75 gal", "price": {"amount": 15, "per": "1000 gal"}}]}"""
LABEL = """{"name": "Invented 5", "rows": [{"up_to": "10 gpg", "per_kg": "5 mL"}]}"""


@pytest.fixture
def job(tmp_path: Path) -> str:
    """Write the night's job."""
    path = tmp_path / "night.json"
    path.write_text(encode(Job, night()), encoding="utf-8")
    return str(path)


def written(tmp_path: Path, text: str) -> str:
    """Write a sheet."""
    path = tmp_path / "sheet.json"
    path.write_text(text, encoding="utf-8")
    return str(path)


def test_the_job_carries_its_readings(job: str, capsys: Capture) -> None:
    """What was read off goes into the document and comes out the same."""
    assert main(["machine", "check", job, "--json"]) == 1

    report = json.loads(capsys.readouterr().out)
    assert report["programmes"][0]["findings"][0]["message"] == "machine.spin.uncertain"


@pytest.mark.parametrize("lang", languages())
@pytest.mark.parametrize(
    "typed", [("machine", "check"), ("machine", "record"), ("drying", "times")]
)
def test_every_sentence_has_its_words(
    typed: tuple[str, ...], lang: str, job: str, capsys: Capture
) -> None:
    """No bare message id and no missing value in any language."""
    main([*typed, job, "--lang", lang])

    said = capsys.readouterr().out
    assert len(said) > 500
    assert "[machine." not in said
    assert "[drying." not in said
    assert "?]" not in said


def test_the_record_says_what_it_does_not_say(job: str, capsys: Capture) -> None:
    """On the same page as the published figures."""
    assert main(["machine", "record", job, "--component", "0401"]) == 0

    said = capsys.readouterr().out
    assert "HIGHER by 43 %" in said
    assert "never multiplied" in said
    assert "Quern Laboratory" in said


def test_an_empty_record_is_an_empty_page(job: str, capsys: Capture) -> None:
    """A component that is not there has no record."""
    assert main(["machine", "record", job, "--component", "none"]) == 0
    assert "never multiplied" not in capsys.readouterr().out


@pytest.mark.parametrize(("speed", "code"), [("424 rpm", 0), ("440 rpm", 1)])
def test_spin_answers_by_exit_code(speed: str, code: int, capsys: Capture) -> None:
    """1 where the speed may go beyond the limit."""
    typed = ["machine", "spin", "--diameter", "36 in", "--limit", "100 G", "--speed", speed]

    assert main(typed) == code
    assert "424 rpm" in capsys.readouterr().out


def test_spin_without_a_speed_gives_the_speed_to_set(capsys: Capture) -> None:
    """With errors of one's own it is higher."""
    typed = ["machine", "spin", "--diameter", "36 in", "--limit", "100 G",
             "--diameter-error", "0.1 %", "--speed-error", "0.5 %"]  # fmt: skip

    assert main([*typed, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["set_rpm"] == 437


def test_bath_says_heat_dose_and_rinses(tmp_path: Path, capsys: Capture) -> None:
    """By the product's own label at this water."""
    typed = ["machine", "bath", "--water", "100 L", "--load", "16 kg", "--inlet", "55 °F",
             "--to", "105 °F", "--hardness", "9 gpg", "--product"]  # fmt: skip
    typed.append(written(tmp_path, LABEL))

    assert main(typed) == 0
    said = capsys.readouterr().out
    assert "80 mL by its own label" in said
    assert "At least 2 rinses" in said
    assert "moderately hard" not in said


def test_a_cold_bath_needs_no_heat(capsys: Capture) -> None:
    """And without a product no dose is said."""
    typed = ["machine", "bath", "--water", "100 L", "--load", "16 kg", "--inlet", "55 °F",
             "--to", "50 °F", "--unspun", "--metered"]  # fmt: skip

    assert main(typed) == 0
    assert "kWh" not in capsys.readouterr().out


def test_cost_says_what_is_in_it_and_what_is_not(tmp_path: Path, capsys: Capture) -> None:
    """Load, set, with the year's cost, break-even, and the lacking items."""
    assert main(["machine", "cost", written(tmp_path, SHEET)]) == 0

    said = capsys.readouterr().out
    assert "A load costs 25.12 USD, a set 6.28 USD" in said
    assert "a set comes to 31.28 USD" in said
    assert "from 56 sets a year" in said
    assert "No inspection in it" in said


def test_cost_without_a_contract_is_short(tmp_path: Path, capsys: Capture) -> None:
    """Nothing to compare, nothing compared."""
    sheet = """{"dated": "2026", "currency": "USD", "sets": 1, "items": []}"""

    assert main(["machine", "cost", written(tmp_path, sheet)]) == 0
    assert "by contract" not in capsys.readouterr().out


@pytest.mark.parametrize(
    ("sheet", "said"),
    [("{", "sheet.json"), ('{"currency": "USD"}', "dated"), ("[]", "document")],
)
def test_a_bad_sheet_is_refused_by_place(
    sheet: str, said: str, tmp_path: Path, capsys: Capture
) -> None:
    """Exit code 2, and what to mend."""
    assert main(["machine", "cost", written(tmp_path, sheet)]) == 2
    assert said in capsys.readouterr().err


def test_drying_reads_the_job_and_what_is_typed(job: str, capsys: Capture) -> None:
    """What is typed stands in for the job's reading: a damper night takes longer."""
    main(["drying", "times", job, "--json"])
    usual = json.loads(capsys.readouterr().out)
    main(["drying", "times", job, "--humidity", "68 %", "--dehumidifier", "0.1", "--json"])
    damp = json.loads(capsys.readouterr().out)

    def late(of: dict[str, list[dict[str, dict[str, dict[str, int]]]]]) -> int:
        return of["places"][0]["estimate"]["minutes"]["late"]

    assert late(damp) > late(usual)


def test_drying_ends_by_weight_or_hand_never_by_the_clock(job: str, capsys: Capture) -> None:
    """It is said every time."""
    main(["drying", "times", job])

    assert "never by the clock" in " ".join(capsys.readouterr().out.split())


def test_without_readings_air_can_be_typed(job: str, tmp_path: Path, capsys: Capture) -> None:
    """Temperature and humidity make a room; with one of them only it is asked for."""
    bare = json.loads(Path(job).read_text(encoding="utf-8"))
    del bare["readings"]
    path = written(tmp_path, json.dumps(bare))

    assert main(["drying", "times", path, "--temp", "70 °F", "--humidity", "50 %"]) in (0, 1)
    assert main(["drying", "times", path, "--temp", "70 °F"]) == 2
    assert "--humidity" in capsys.readouterr().err


def test_a_loads_log_that_says_nothing_is_shown(job: str, tmp_path: Path, capsys: Capture) -> None:
    """Left out, with its reason."""
    given = json.loads(Path(job).read_text(encoding="utf-8"))
    air = {"temp": "20 °C", "humidity": "50 %"}
    given["readings"]["logged"] = [
        {"place": "cabinet", "cloth": "shell", "dry": "10 kg", "start": "15 kg", "end": "10.3 kg",
         "lasted": "95 h", "air": air}
    ]  # fmt: skip

    main(["drying", "times", written(tmp_path, json.dumps(given))])
    assert "Logged loads that were left out" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("place", "value", "said"),
    [
        ("temp", "72 °C", "other unit"), ("humidity", "130 %", "hygrometer"),
        ("temp", "72 kg", "72 kg"),
    ],
)  # fmt: skip
def test_impossible_readings_are_asked_about(
    place: str, value: str, said: str, job: str, capsys: Capture
) -> None:
    """A question, exit code 2, and nothing else."""
    assert main(["drying", "times", job, f"--{place}", value]) == 2

    out, err = capsys.readouterr()
    assert out == ""
    assert said in " ".join(err.split())


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        (("--dry", "5 kg", "--now", "5.05 kg"), 0), (("--dry", "5 kg", "--now", "5.3 kg"), 1),
        ((), 1), (("--dry", "5 kg", "--now", "3 kg"), 2), (("--dry", "-5 kg", "--now", "3 kg"), 2),
    ],
)  # fmt: skip
def test_the_end_is_judged_by_weight(typed: tuple[str, ...], code: int) -> None:
    """Ended, not yet or by hand, or weights that cannot be."""
    assert main(["drying", "end", *typed]) == code
