"""Hexley and Brackenfold (both invented) as job files, answered at the terminal.

The same nights as in test_hexley and test_brackenfold, from the document to what an officer reads.
"""

import json
from pathlib import Path
from typing import Any

import pytest

from sootline.cli.main import main

Capture = pytest.CaptureFixture[str]
EXPOSED = {"zones": ["inside"], "smoke": "yes", "on_air": "yes"}
ROOM = {
    "washers": [
        {
            "id": "drum",
            "limit": "42 lb",
            "programmes": [
                {"id": "gear", "bath_temp": "100 °F", "extraction": "80 G", "minutes": "60 min"}
            ],
        }
    ],
    "sinks": [{"id": "sink", "use": "gear"}],
    "drying": [{"id": "rack", "method": "rack", "places": 12}],
}


def gear(member: str, *kinds: str) -> list[dict[str, Any]]:
    """List a member's components as a file has them."""
    return [{"id": f"{member}-{kind}", "kind": kind, "owner": member} for kind in kinds]


def job(
    call: dict[str, Any], components: list[dict[str, Any]], care: dict[str, Any]
) -> dict[str, Any]:
    """Put a night together as a job document."""
    return {
        "version": 1,
        "title": "an invented night",
        "now": "2026-03-03T10:00:00+00:00",
        "department": {"name": "invented", "edition": "nfpa-1851/2020", "care": care},
        "members": [{"id": one} for one in sorted({piece["owner"] for piece in components})],
        "components": components,
        "calls": [{"id": "c1", "at": "2026-03-03T02:00:00+00:00", **call}],
        "wash_room": ROOM,
    }


def ask(
    folder: Path, capture: Capture, document: dict[str, Any], *words: str
) -> tuple[int, dict[str, Any]]:
    """Write a job to disk, ask a command of it, and return exit code and JSON answer."""
    path = folder / "job.json"
    path.write_text(json.dumps(document), encoding="utf-8")
    code = main([words[0], str(path), *words[1:], "--json"])
    return code, json.loads(capture.readouterr().out)


def fates(answer: dict[str, Any]) -> dict[str, tuple[str, str, int]]:
    """Return fate, level and number of open holds of every component."""
    return {
        one["component"]: (
            one["fate"],
            one["level"],
            len([hold for hold in one["holds"] if hold["released_by"] is None]),
        )
        for one in answer["decisions"]
    }


def hexley(*surveys: dict[str, str]) -> dict[str, Any]:
    """Tell of a house of 1962: A and B pulled ceiling, D left before, C stood at the pump."""
    call = {
        "building": {"built": "1962", "opened": "yes", "surveys": list(surveys)},
        "people": [
            {"member": "A", **EXPOSED, "opened": "yes"},
            {"member": "B", **EXPOSED, "opened": "yes"},
            {"member": "C", "zones": ["pump"], "smoke": "no"},
            {"member": "D", **EXPOSED, "opened": "no"},
        ],
    }
    coats = [piece for member in "ABCD" for piece in gear(member, "coat-shell")]
    held = {"building_holds": [{"contaminant": "asbestos", "built_before": 1980}]}
    return job(call, coats, held)


def test_hexley_holds_two_washes_one_apart_and_looks_at_one(
    tmp_path: Path, capsys: Capture
) -> None:
    """A and B sealed and held, D washed apart with the question open, C a look; exit code 1."""
    code, answer = ask(tmp_path, capsys, hexley(), "decide")
    decisions = {one["component"][0]: one for one in answer["decisions"]}

    assert code == 1
    assert fates(answer) == {
        "A-coat-shell": ("hold", "advanced", 1),
        "B-coat-shell": ("hold", "advanced", 1),
        "C-coat-shell": ("look", "look", 0),
        "D-coat-shell": ("wash", "advanced", 0),
    }
    assert [decisions[who]["sealed"] for who in "ABCD"] == [True, True, False, False]
    assert decisions["D"]["separation"]["hazards"] == ["asbestos"]
    assert "care.building.left_before" in {one["message"] for one in decisions["D"]["unknowns"]}


def test_hexleys_survey_frees_them_and_the_history_stays(tmp_path: Path, capsys: Capture) -> None:
    """Signed 09:20, nothing found: A and B advanced cleaning, the ended hold still shown."""
    survey = {"contaminant": "asbestos", "found": "absent", "signed_by": "surveyor",
              "signed_at": "2026-03-03T09:20:00+00:00"}  # fmt: skip
    code, answer = ask(tmp_path, capsys, hexley(survey), "decide")

    assert code == 0
    assert fates(answer)["A-coat-shell"] == ("wash", "advanced", 0)
    assert fates(answer)["B-coat-shell"] == ("wash", "advanced", 0)
    assert [one["released_by"] for one in answer["decisions"][0]["holds"]] == ["surveyor"]


def test_a_dumpster_fire_of_unknowns_holds_nobody(tmp_path: Path, capsys: Capture) -> None:
    """All four exposed, every hazard "don't know": four advanced cleanings, no hold."""
    known = ("asbestos", "blood", "battery-smoke", "drug-powder", "pesticide")
    call = {
        "hazards": [{"contaminant": one, "knowledge": "unknown"} for one in known],
        "people": [{"member": one, "zones": ["outside"], "smoke": "yes"} for one in "ABCD"],
    }
    document = hexley() | {"calls": [{"id": "c1", "at": "2026-03-03T02:00:00+00:00", **call}]}
    code, answer = ask(tmp_path, capsys, document, "decide")

    assert code == 0
    assert set(fates(answer).values()) == {("wash", "advanced", 0)}


def brackenfold() -> dict[str, Any]:
    """Tell of R07: blood through the cuff onto a cut wrist, boots splashed, a glove torn."""
    blood = {"contaminant": "blood"}
    call = {
        "people": [{"member": "R07", **EXPOSED}, {"member": "R08", **EXPOSED}],
        "remarks": [
            {"component": "R07-coat-shell", **blood, "reached_skin": "yes", "rinsed": "yes"},
            {"component": "R07-gloves", **blood, "torn": True},
            {"component": "R07-boots-leather", **blood},
        ],
    }
    kinds = ("coat-shell", "coat-liner", "trouser-shell", "gloves", "boots-leather")
    product = {"name": "product F", "use": "disinfectant", "materials": ["fabric"],
               "against": ["blood"], "contact_min": 10}  # fmt: skip
    mates = gear("R08", "coat-shell", "coat-liner")
    return job(call, [*gear("R07", *kinds), *mates], {"products": [product]})


def test_brackenfold_calls_first_and_holds_what_has_blood_on_it(
    tmp_path: Path, capsys: Capture
) -> None:
    """Infection control first; shell, liner and boots sealed and held, the torn gloves out."""
    code, answer = ask(tmp_path, capsys, brackenfold(), "decide")
    found = {one["component"].partition("-")[2]: one for one in answer["decisions"][:5]}

    assert code == 1
    soiled = ("coat-shell", "coat-liner", "boots-leather", "gloves")
    for kind in soiled:
        assert found[kind]["first"][0]["message"] == "care.first.infection_control"
        assert found[kind]["sealed"]
    assert [found[kind]["fate"] for kind in soiled] == ["hold", "hold", "hold", "out"]
    assert found["coat-shell"]["disinfection"] == "sanitise"
    assert found["boots-leather"]["holds"][0]["question"] == "care.hold.no_product"


def test_brackenfold_offers_no_rinse_and_keeps_the_past_one(
    tmp_path: Path, capsys: Capture
) -> None:
    """Source: 29 CFR 1910.1030(d)(4)(iv): not rinsed where it was used."""
    path = tmp_path / "job.json"
    path.write_text(json.dumps(brackenfold()), encoding="utf-8")
    main(["decide", str(path), "--why", "R07-coat-shell"])
    lines = capsys.readouterr().out.splitlines()
    printed = " ".join(" ".join(lines).split())
    steps = printed[printed.index(" 1. ") :]

    assert "it was rinsed on scene. That is kept as a fact" in printed
    assert "Do not rinse it on scene" in printed
    assert "Bag it leak-proof" in steps
    assert "rins" not in steps


def test_nothing_at_brackenfold_shares_with_it(tmp_path: Path, capsys: Capture) -> None:
    """Before the record: not in any group, and the mate's coat goes without it."""
    _, answer = ask(tmp_path, capsys, brackenfold(), "loads")
    together = [set(sort["components"]) for sort in answer["sorts"]]

    held = {"R07-coat-shell", "R07-coat-liner", "R07-boots-leather", "R07-gloves"}
    assert all(not held & group for group in together)
    assert any("R08-coat-shell" in group for group in together)
