"""The commands as a person types them, from files to text, JSON and exit code."""

import json
from pathlib import Path
from typing import Any

import pytest

from sootline.cli.main import main

Capture = pytest.CaptureFixture[str]

ROOM: dict[str, Any] = {
    "washers": [
        {
            "id": "drum",
            "limit": "42 lb",
            "programmes": [
                {"id": "1", "bath_temp": "104 °F", "extraction": "90 G", "minutes": "60 min"}
            ],
        }
    ],
    "sinks": [{"id": "sink", "use": "gear"}],
    "drying": [{"id": "rack", "method": "rack", "places": 6}],
    "drying_times": [{"place": "rack", "minutes": "150-180-300 min", "measured": True}],
}


def job(**changes: object) -> dict[str, Any]:
    """Return a small job: one coat that was in smoke."""
    kinds = ("coat-shell", "coat-liner", "drag-device")
    whole: dict[str, Any] = {
        "version": 1,
        "title": "a night in Sallowby",
        "now": "2026-03-01T04:00:00-07:00",
        "department": {"name": "Sallowby", "edition": "nfpa-1851/2020"},
        "members": [{"id": "211"}],
        "components": [
            {
                "id": kind,
                "kind": kind,
                "owner": "211",
                "set": "S1",
                "made": "2022-01",
                "in_service": "2025-11-01",
                "mass": "3 lb",
            }
            for kind in kinds
        ],
        "calls": [
            {
                "id": "c",
                "at": "2026-03-01T02:00:00-07:00",
                "people": [{"member": "211", "zones": ["inside"], "smoke": "yes"}],
            }
        ],
        "wash_room": ROOM,
    }
    return whole | changes


@pytest.fixture
def night(tmp_path: Path) -> Path:
    """Return the small job as a file."""
    path = tmp_path / "night.json"
    path.write_text(json.dumps(job()), encoding="utf-8")
    return path


def run(capture: Capture, *words: object) -> tuple[int, str, str]:
    """Run a command and return exit code, output and errors."""
    code = main([str(word) for word in words])
    printed = capture.readouterr()
    return code, printed.out, printed.err


def test_decide_says_what_each_component_needs(night: Path, capsys: Capture) -> None:
    """A coat that was inside needs advanced cleaning; nothing waits, so all is done."""
    code, out, _ = run(capsys, "decide", night)

    assert code == 0
    assert "needs wash, advanced cleaning, in the washer" in out


def test_decide_explains_one_component(night: Path, capsys: Capture) -> None:
    """Reasons, limits and steps of one shell, each with its source."""
    _, out, _ = run(capsys, "decide", night, "--why", "coat-shell")

    assert "at most 105 °F / 40 °C" in out
    assert "NFPA 1851, 2020 edition" in out
    assert "  1. " in out


def test_decide_refuses_an_unknown_component(night: Path, capsys: Capture) -> None:
    """A slip in a number is named, not passed over."""
    code, _, err = run(capsys, "decide", night, "--why", "0999")

    assert code == 2
    assert "0999" in err


def test_decide_as_data_carries_reasons_and_sentences(night: Path, capsys: Capture) -> None:
    """JSON holds message ids, values, grounds and the sentence."""
    _, out, _ = run(capsys, "decide", night, "--json")

    reason = json.loads(out)["decisions"][0]["reasons"][0]
    assert reason.keys() == {"bearing", "message", "ground", "values", "text"}


def test_decide_lists_what_was_at_no_call(tmp_path: Path, capsys: Capture) -> None:
    """Without a call nothing needs anything; --all names it."""
    quiet = tmp_path / "quiet.json"
    quiet.write_text(json.dumps(job(calls=[])), encoding="utf-8")

    _, short, _ = run(capsys, "decide", quiet)
    _, full, _ = run(capsys, "decide", quiet, "--all")

    assert "3 more components" in short
    assert "coat shell coat-shell" in full


def test_a_hold_is_a_problem_found(tmp_path: Path, capsys: Capture) -> None:
    """Somebody must decide: exit code 1, the decider named."""
    powder = {"contaminant": "drug-powder", "knowledge": "suspected", "said_by": "211"}
    held = job()
    held["calls"][0]["hazards"] = [powder]
    path = tmp_path / "held.json"
    path.write_text(json.dumps(held), encoding="utf-8")

    code, out, _ = run(capsys, "decide", path)

    assert code == 1
    assert "WAITING FOR A DECISION" in out
    assert "safety officer" in out


def test_loads_keep_shell_and_liner_apart(night: Path, capsys: Capture) -> None:
    """Two sorts, the drag device in a mesh bag with one of them."""
    code, out, _ = run(capsys, "loads", night, "--why")

    assert code == 0
    assert "2 groups" in out
    assert "in a closed mesh bag" in out


def test_plan_says_when_the_member_is_back(night: Path, capsys: Capture) -> None:
    """Loads in order, an interval for the return, and how much better any plan could be."""
    code, out, _ = run(capsys, "plan", night, "--seconds", "0.2")

    assert code == 0
    assert "LOADS, in order" in out
    assert "211: " in out
    assert "no plan brings gear back" in out


@pytest.mark.parametrize("goal", ["all-done", "deadline"])
def test_plan_takes_the_other_goals(night: Path, capsys: Capture, goal: str) -> None:
    """A deadline is given in minutes or as a moment of the department."""
    for by in ("600", "2026-03-01T18:00"):
        code, out, _ = run(capsys, "plan", night, "--seconds", "0.1", "--goal", goal, "--by", by)

        assert code == 0
        assert "No plan can" in out


@pytest.mark.parametrize(
    ("words", "place"),
    [
        (("--seconds", "-1"), "--seconds"),
        (("--seconds", "nan"), "--seconds"),
        (("--by", "soon"), "--by"),
        (("--goal", "deadline"), "by"),
    ],
)
def test_plan_refuses_what_it_cannot_do(
    night: Path, capsys: Capture, words: tuple[str, ...], place: str
) -> None:
    """A negative search, an unreadable deadline, a deadline goal without one."""
    code, _, err = run(capsys, "plan", night, *words)

    assert code == 2
    assert place in err


def test_plan_reads_and_writes_the_neutral_form(tmp_path: Path, capsys: Capture) -> None:
    """A neutral instance in, a neutral plan out, with objective, bound and gap."""
    instance = {
        "name": "one",
        "units": {"time": "min", "weight": "0.1 lb"},
        "members": [{"id": "m", "crew": "c", "priority": 2, "release": 0}],
        "pieces": [
            {
                "id": "p",
                "member": "m",
                "type": "coat shell",
                "size": "M",
                "weight": 37,
                "family": "S",
                "max_temp": 40,
                "prep": 3,
                "inspect": 3,
                "hand_station": None,
                "hand_min": 0,
                "units": 2,
                "dry_rack": 180,
                "dry_cab": None,
            }
        ],
        "washers": [{"id": "w", "programmes": {"S": {"cap": 300, "min": 60, "temp": 40}}}],
        "load_min": 5,
        "unload_min": 5,
        "stations": {"sink": 1, "bench": 1},
        "rack_units": 10,
        "cabinets": [],
        "helpers": [[0, 1000000, 1]],
        "spares": [],
    }
    path, plan = tmp_path / "instance.json", tmp_path / "plan.json"
    path.write_text(json.dumps(instance), encoding="utf-8")

    code, out, _ = run(capsys, "plan", path, "--seconds", "0.1", "--out", plan)

    written = json.loads(plan.read_text(encoding="utf-8"))
    assert code == 0
    # Worked by hand: 3 prepare, 5 load, 60 wash, 5 unload, 180 dry, 3 check; priority 2.
    assert written["ready"] == {"m": 256}
    assert written["objective"] == 512
    assert "gap 0.0 %" in out


def test_due_lists_what_is_overdue(night: Path, capsys: Capture) -> None:
    """A year later the inspection is overdue: a problem found, with its reasons."""
    code, out, _ = run(capsys, "due", night, "--today", "2027-03-01", "--why")

    assert code == 1
    assert "OVERDUE" in out
    assert "advanced inspection, 2026-11-01, 120 days over" in out


def test_due_refuses_a_day_it_cannot_read(night: Path, capsys: Capture) -> None:
    """A day in another form is refused with the right one."""
    code, _, err = run(capsys, "due", night, "--today", "1/3/2026")

    assert code == 2
    assert "2026-03-01" in err


def test_rebuild_without_checks_says_so(night: Path, capsys: Capture) -> None:
    """Nothing recorded is said, not passed over."""
    code, out, _ = run(capsys, "rebuild", night)

    assert code == 0
    assert '"checks" and "builds"' in out


def test_rebuild_names_what_keeps_a_coat_off_the_hook(tmp_path: Path, capsys: Capture) -> None:
    """A shell fitted alone lacks its liner and drag device, and nobody felt it."""
    path = tmp_path / "built.json"
    built = job(builds=[{"element": "coat", "parts": ["coat-shell"]}])
    path.write_text(json.dumps(built), encoding="utf-8")

    code, out, _ = run(capsys, "rebuild", path)

    assert code == 1
    assert "no drag rescue device" in out
    assert "Nobody has felt it yet" in out


def test_demo_copies_its_files(tmp_path: Path, capsys: Capture) -> None:
    """The files a department has: lists, how they were read, labels, members, a call."""
    code, _, _ = run(capsys, "demo", "--files", tmp_path / "sallowby")

    assert code == 0
    assert {path.name for path in (tmp_path / "sallowby").iterdir()} >= {
        "gear-list.csv",
        "last-night.json",
    }


@pytest.mark.parametrize("command", ["decide", "loads", "plan", "due", "rebuild"])
@pytest.mark.parametrize(
    "text",
    ["", "{", "[]", "null", '{"version": 1}', '{"department": 5}', '{"a": 1, "a": 2}', "\x00"],
)
def test_bad_input_is_refused_without_a_traceback(
    tmp_path: Path, capsys: Capture, command: str, text: str
) -> None:
    """Unreadable, contradictory and empty documents: exit code 2 and a plain list of faults."""
    path = tmp_path / "bad.json"
    path.write_text(text, encoding="utf-8")

    code, out, err = run(capsys, command, path)

    assert code == 2
    assert out == ""
    assert "put right first" in err
    assert "Traceback" not in err


def test_decide_tells_whoever_handles_it_next(tmp_path: Path, capsys: Capture) -> None:
    """Sharps, wet bags with their hours, heat; battery smoke: fragments, outdoors, skin."""
    person = {"member": "M", "smoke": "yes", "bags": ["12"],
              "decon": {"done": "done", "method": "water"}}  # fmt: skip
    smoke = {"contaminant": "battery-smoke", "knowledge": "known"}
    call = {"id": "C", "at": "2026-03-01T10:00:00Z", "hazards": [smoke], "people": [person]}
    path = tmp_path / "battery.json"
    worn = [
        {"id": "coat", "kind": "coat-shell", "owner": "M", "made": "2022-01"},
    ]
    night = job(now="2026-03-01T12:00:00Z", members=[{"id": "M"}], components=worn, calls=[call])
    path.write_text(json.dumps(night), encoding="utf-8")

    _, out, _ = run(capsys, "decide", path)

    said = " ".join(out.split())
    for part in (
        "Mind sharps in pockets",
        "Bagged wet: M (bag 12) 0-2 h.",
        "Never dry on a heater, an exhaust or in the sun.",
        "Look for fragments in cuffs, pockets and boots.",
        "Store it outdoors",
        "Burning skin is a medical matter",
    ):
        assert part in said
