"""`sootline ride` as a person types it, from a job file to text, JSON and exit code."""

import json
from pathlib import Path
from typing import Any

import pytest

from sootline.cli.main import main

Capture = pytest.CaptureFixture[str]
KINDS = ("coat-shell", "coat-liner", "drag-device", "trouser-shell", "trouser-liner")
FIT = [
    {"element": "coat", "dimension": "chest", "most": 2, "unit": "in"},
    {"element": "trousers", "dimension": "waist", "most": "2", "unit": "in"},
]
ROOM = {
    "washers": [
        {
            "id": "drum",
            "limit": "42 lb",
            "programmes": [
                {"id": "1", "bath_temp": "104 °F", "extraction": "90 G", "minutes": "60 min"}
            ],
        }
    ],
    "drying": [
        {"id": "rack", "method": "rack", "places": 40},
        {"id": "hooks", "method": "hang", "places": 40},
    ],
    "drying_times": [
        {"place": place, "minutes": "60-70-80 min", "measured": True} for place in ("rack", "hooks")
    ],
}


def whole_set(name: str, chest: str, owner: str | None = None) -> list[dict[str, Any]]:
    """Return coat and trousers of a size."""
    waist = str(int(chest) - 8)
    mine = {"owner": owner} if owner else {"state": {"custody": "spare-rack"}}
    return [
        {
            "id": f"{name}-{kind}",
            "kind": kind,
            "set": name,
            "size": {"chest": chest} if kind.startswith("coat") else {"waist": waist},
            "made": "2022-01",
            "in_service": "2025-11-01",
            "mass": "3 lb",
            **mine,
        }
        for kind in KINDS
    ]


def member(name: str, chest: str) -> dict[str, Any]:
    """Return a member of Engine 2 with measures."""
    measures = {"chest": chest, "waist": str(int(chest) - 8)}
    return {"id": name, "crew": "Engine 2", "measures": measures}


def job(**riding: object) -> dict[str, Any]:
    """Return a night on which 307 and 308 were in smoke and 309 was not there."""
    people = [{"member": name, "smoke": "yes"} for name in ("307", "308")]
    facts: dict[str, Any] = {
        "needs": ["coat", "trousers"],
        "fit": FIT,
        "crews": [{"crew": "Engine 2", "interior": 2}],
        "duties": [{"member": name, "interior": "yes"} for name in ("307", "308", "309")],
    }
    return {
        "version": 1,
        "title": "a night in Quarrow",
        "now": "2026-03-01T04:00:00-07:00",
        "department": {"name": "Quarrow", "edition": "nfpa-1851/2020", "zone": "America/Denver"},
        "members": [member("307", "34"), member("308", "44"), member("309", "42")],
        "components": [
            *whole_set("307", "34", "307"),
            *whole_set("308", "44", "308"),
            *whole_set("309", "42", "309"),
            *whole_set("S1", "44"),
        ],
        "calls": [{"id": "C1", "at": "2026-03-01T02:00:00-07:00", "people": people}],
        "wash_room": ROOM,
        "riding": facts | riding,
    }


def ride(tmp_path: Path, document: dict[str, Any], *options: str) -> int:
    """Run the command on a job file."""
    path = tmp_path / "job.json"
    path.write_text(json.dumps(document), encoding="utf-8")
    return main(["ride", str(path), *options])


def test_the_answer_can_be_read_over_the_radio(tmp_path: Path, capsys: Capture) -> None:
    """Who rides, who does not and by which size, who takes which spare; the minimum is met."""
    code = ride(tmp_path, job())

    text = capsys.readouterr().out
    assert code == 0
    assert "Who can ride at 04:00" in text
    assert "Engine 2: two can ride now." in text
    assert "307 cannot ride now. No coat of 34 chest here. No time known." in text
    assert "308 rides in coat and trousers S1." in text
    assert "coat and trousers (chest 34, waist 26): for 307." in text
    assert "for the officer, the label and the maker to say" in text


def test_a_plan_gives_the_time_back(tmp_path: Path, capsys: Capture) -> None:
    """With a plan, own gear has an interval back on the hook, and the day its steps."""
    code = ride(tmp_path, job(), "--plan", "0")

    text = capsys.readouterr().out
    assert code == 0
    assert "307 cannot ride now. No coat of 34 chest here. Earliest " in text
    assert "three can ride, now also 307." in text


def test_a_crew_below_its_minimum_is_a_problem(tmp_path: Path, capsys: Capture) -> None:
    """Three needed, two ride: exit code 1, and it is said."""
    code = ride(tmp_path, job(crews=[{"crew": "Engine 2", "interior": 3}]))

    assert code == 1
    assert "Below the minimum: two for interior work, three needed." in capsys.readouterr().out


def test_a_hand_out_that_does_not_fit_is_a_problem(tmp_path: Path, capsys: Capture) -> None:
    """S1 is ten inches too large for 307."""
    code = ride(tmp_path, job(), "--give", "307=S1")

    assert code == 1
    assert "S1 is too large for 307 in the chest: 44 for 34, 10 in over." in capsys.readouterr().out


def test_a_hand_out_that_costs_nobody_is_said_so(tmp_path: Path, capsys: Capture) -> None:
    """S1 to 308 is the best use of it."""
    code = ride(tmp_path, job(), "--give", "308=S1")

    assert code == 0
    assert "Nothing speaks against this hand-out." in capsys.readouterr().out


@pytest.mark.parametrize("text", ["307", "=S1", "307="])
def test_a_hand_out_is_member_equals_spare(tmp_path: Path, capsys: Capture, text: str) -> None:
    """Anything else is bad input."""
    assert ride(tmp_path, job(), "--give", text) == 2
    assert "MEMBER=SPARE" in capsys.readouterr().err


def test_away_outside_only_and_to_be_looked_over_are_named(tmp_path: Path, capsys: Capture) -> None:
    """309 stood at the pump and is not known to be interior-qualified; 308 is away."""
    document = job(duties=[{"member": "308", "away": True}], outside_needs=["coat", "trousers"])
    pump = {"member": "309", "zones": ["pump"], "smoke": "no", "opened": "no"}
    document["calls"][0]["people"].append(pump)

    ride(tmp_path, document)

    text = capsys.readouterr().out
    assert "Away: 308." in text
    assert "Not for interior work: 309." in text
    assert "looks the gear over before it is worn: 309." in text


def test_an_exchange_is_both_moves_or_neither(tmp_path: Path, capsys: Capture) -> None:
    """A coat shell from the rack may be taken; one in the wash may not."""
    swap = {"member": "309", "returns": "309-coat-shell", "takes": "S1-coat-shell"}
    refused = swap | {"takes": "307-coat-shell"}

    ride(tmp_path, job(exchanges=[swap, refused]))

    text = capsys.readouterr().out
    assert "309 returns 309-coat-shell and takes S1-coat-shell: both moves, one step." in text
    assert "309 keeps 309-coat-shell; 307-coat-shell stays: neither move is made." in text
    assert "is not for interior work until 309's try-on is signed." in text


def test_json_carries_the_whole_answer(tmp_path: Path, capsys: Capture) -> None:
    """The same answer for other programs, with whether it is proven."""
    ride(tmp_path, job(), "--json")

    document = json.loads(capsys.readouterr().out)
    assert [one["member"] for one in document["riding"]["moments"][0]["can"]] == ["308", "309"]
    assert document["riding"]["best_now"] is True
    assert document["riding"]["most_now"] == 2


def test_the_answer_is_said_in_spanish(tmp_path: Path, capsys: Capture) -> None:
    """The same night for a Spanish reader."""
    ride(tmp_path, job(), "--lang", "es")

    assert "Engine 2: en condiciones de salir ahora, dos." in capsys.readouterr().out


def test_a_stranger_in_the_riding_facts_is_refused(tmp_path: Path, capsys: Capture) -> None:
    """Loans, duties, try-ons and exchanges name only what the job holds."""
    document = job(
        duties=[{"member": "999"}],
        loans=[{"components": ["L1"], "arrives": "2026-03-01T05:00:00-07:00"}],
        try_ons=[{"component": "X1", "member": "307"}],
    )

    assert ride(tmp_path, document) == 2
    assert capsys.readouterr().err.count("the job holds no such piece or member") == 3


def test_a_name_never_steers_the_terminal(tmp_path: Path, capsys: Capture) -> None:
    """Whoever writes a file writes names; what a terminal would obey is spelled out instead."""
    night = json.dumps(job()).replace("307", "\\u001b[2J\\u202e7")
    path = tmp_path / "job.json"
    path.write_text(night, encoding="utf-8")

    main(["ride", str(path)])

    text = capsys.readouterr().out
    assert "\x1b" not in text
    assert "\u202e" not in text
    assert "\\x1b[2J\\u202e7 cannot ride now." in text
