"""Swapped liners, Ostrey, Larkmoor and the due dates once more, from job files by command.

Every place, person and piece is invented. What an officer expects is worked out by hand beside the
same cases without a file; here the document, the command and what it prints are held to it.
"""

import json
from pathlib import Path
from typing import Any

import pytest

from sootline.cli.main import main
from sootline.core.basis import KindId
from sootline.core.gear import find_kind

Capture = pytest.CaptureFixture[str]
Document = dict[str, Any]


def answer(tmp_path: Path, capsys: Capture, document: Document, *words: str) -> str:
    """Run a command on a document and return what it prints, on one line."""
    path = tmp_path / "job.json"
    path.write_text(json.dumps(document), encoding="utf-8")
    main([words[0], str(path), *words[1:]])
    return " ".join(capsys.readouterr().out.split())


def document(now: str, edition: str = "nfpa-1851/2014", **more: object) -> Document:
    """Return a job document for a moment."""
    return {"version": 1, "now": now, "department": {"name": "D", "edition": edition}, **more}


def felt_dry(name: str, kind: str) -> Document:
    """Return 114's check: dry at every touch point of the kind."""
    felt = [{"point": point, "dry": "yes"} for point in find_kind(KindId(kind)).touch_points]
    return {"component": name, "by": "114", "at": "2026-03-01T11:00:00Z", "felt": felt}


def port_vessick() -> Document:
    """Return the coats as they were fitted together after washing, and the car fire since."""
    made = {"A": "2019-05", "B": "2021-03", "C": "2021-03"}
    owner = {"A": "101", "B": "102", "C": "103"}
    parts, checks = [], []
    for coat, kinds in {
        "A": ("coat-shell", "coat-liner"),
        "B": ("coat-shell", "coat-liner", "drag-device"),
        "C": ("coat-shell", "coat-liner", "drag-device"),
    }.items():
        for kind in kinds:
            part = {"coat-shell": coat, "coat-liner": coat.lower()}.get(kind, f"drag {coat}")
            parts.append(
                {"id": part, "kind": kind, "owner": owner[coat], "set": f"set {owner[coat]}",
                 "size": {"chest": "44L" if coat == "C" else "44R"}, "made": made[coat],
                 "guide": "g", "state": {"stage": "to-check"}}
            )  # fmt: skip
            checks.append(felt_dry(part, kind))
    builds = [
        {"element": "coat", "parts": ["A", "b"]},
        {"element": "coat", "parts": ["B", "a", "drag B"], "routed_by": "114"},
        {"element": "coat", "parts": ["C", "c", "drag C"], "routed_by": "114"},
    ]
    fire = {"id": "car", "at": "2026-03-01T13:00:00Z", "code": "131", "people": [
        {"member": "102", "zones": ["outside"], "smoke": "yes", "worn": ["B", "a", "drag B"]}
    ]}  # fmt: skip
    return document(
        "2026-03-01T18:00:00Z",
        members=[{"id": one} for one in owner.values()],
        guides=[{"id": "g", "title": "guide of an invented maker"}],
        components=parts,
        checks=checks,
        builds=builds,
        calls=[fire],
    )


def test_swapped_liners_are_held_and_show_their_earliest_part(
    tmp_path: Path, capsys: Capture
) -> None:
    """A with b and B with a: not known to go together, out from 2029-05-01; A lacks its device."""
    said = answer(tmp_path, capsys, port_vessick(), "rebuild")

    first = "not yet back on the hook. First day out: 2029-05-01; could be as late as 2029-05-31."
    assert f"coat (A, b): {first}" in said
    assert f"coat (B, a, drag B): {first}" in said
    assert said.count("the same size is no permission") == 2
    assert said.count("Waiting for a decision: gear officer, or safety officer.") == 2
    assert said.count("Incomplete: no drag rescue device.") == 1


def test_the_right_coat_goes_back(tmp_path: Path, capsys: Capture) -> None:
    """C with c: felt dry and its drag device checked by name."""
    said = answer(tmp_path, capsys, port_vessick(), "rebuild")

    assert "coat (C, c, drag C): all parts checked by name" in said
    assert "First day out: 2031-03-01; could be as late as 2031-03-31." in said
    assert "114 checked how the drag rescue device is led." in said


def test_what_was_at_the_car_fire_must_be_decided_on_anew(tmp_path: Path, capsys: Capture) -> None:
    """Shell B and liner a were felt dry before the fire: that check is overtaken, b's is not."""
    said = answer(tmp_path, capsys, port_vessick(), "rebuild")

    assert said.count("Worn again after this check (call car).") == 3
    assert "a: needs check" in said
    assert "B: needs check" in said
    assert "b: nothing against it, but its element is not whole yet" in said


def test_the_car_fire_asks_for_a_wash_of_shell_b_and_liner_a(
    tmp_path: Path, capsys: Capture
) -> None:
    """The exposure goes with what was worn, whatever set it belongs to; only 102 was exposed."""
    path = tmp_path / "decided.json"

    answer(tmp_path, capsys, port_vessick(), "decide", "--out", str(path))

    decided = json.loads(path.read_text(encoding="utf-8"))["decisions"]
    assert {one["component"] for one in decided if one["fate"] == "wash"} == {"B", "a", "drag B"}


def ostrey(*, helmet: bool = False, mask_back: str | None = None) -> Document:
    """Return K03's gear at 14:10: soft parts drying, small mask with the technician."""
    kinds = {
        "coat-shell": {"chest": "40"}, "coat-liner": {"chest": "40"}, "drag-device": {},
        "trouser-shell": {"waist": "34"}, "trouser-liner": {"waist": "34"}, "hood": {},
        "gloves": {"hand": "M"}, "boots-leather": {"foot": "9"}, "helmet-shell": {},
        "ear-neck-cover": {},
    }  # fmt: skip
    pieces = [
        {"id": kind, "kind": kind, "owner": "K03", "set": "K03", "size": size, "made": "2022-01",
         "in_service": "2025-12-01",
         "state": {"stage": "drying", "custody": "wash-room"}
         if kind == "ear-neck-cover" else {"stage": "checked"}}
        for kind, size in kinds.items()
    ]  # fmt: skip
    if helmet:
        pieces += [
            {"id": "H9", "kind": "helmet-shell", "made": "2022-01", "in_service": "2025-12-01",
             "state": {"custody": "member", "holder": "K03"}}
        ]  # fmt: skip
    mask = {"id": "F7", "owner": "K03", "size": "S", "state": "with-technician"}
    if mask_back:
        mask["back"] = mask_back
    fit = {"coat": "chest", "trousers": "waist", "gloves": "hand", "boots": "foot", "mask": "mask"}
    riding = {
        "fit": [{"element": element, "dimension": name} for element, name in fit.items()],
        "one_size": ["hood", "helmet"],
        "duties": [{"member": "K03", "interior": "yes"}],
        "masks": [mask],
    }
    measures = {"chest": "40", "waist": "34", "hand": "M", "foot": "9", "mask": "S"}
    members = [{"id": "K03", "measures": measures}]
    return document("2026-03-02T14:10:00Z", members=members, components=pieces, riding=riding)


def test_k03_cannot_ride_both_reasons_named_and_no_time(tmp_path: Path, capsys: Capture) -> None:
    """The soft parts dry, the mask is with the technician without a time."""
    said = answer(tmp_path, capsys, ostrey(), "ride")

    assert "None can ride now. K03 cannot ride now." in said
    assert "Ear and neck cover ear-neck-cover: drying." in said
    assert "Mask F7, size S: with the technician, no time given. No time known." in said


def test_k03_with_a_spare_helmet_still_cannot(tmp_path: Path, capsys: Capture) -> None:
    """The helmet is there, the mask is not."""
    said = answer(tmp_path, capsys, ostrey(helmet=True), "ride")

    assert "K03 cannot ride now. Own not ready and no spare: mask." in said
    assert "drying" not in said


def test_k03_rides_in_the_spare_helmet_when_the_mask_is_back(
    tmp_path: Path, capsys: Capture
) -> None:
    """The technician says 15:05."""
    night = ostrey(helmet=True, mask_back="2026-03-02T15:05:00Z")

    said = answer(tmp_path, capsys, night, "ride")

    assert "with the technician, promised for 15:05. Earliest 15:05." in said
    assert "15:05: one can ride, now also K03." in said


def larkmoor(**x2: object) -> Document:
    """Return P5's exchange of X1 for X2 on 2026-09-01."""
    swap = {
        "member": "P5", "returns": "X1", "takes": "X2",
        "worn": "2026-08-05", "washed": "2026-08-02",
    }  # fmt: skip
    return document(
        "2026-09-01T09:00:00Z",
        "nfpa-1851/2020",
        members=[{"id": "P5"}],
        components=[
            {"id": "X1", "kind": "coat-shell", "owner": "P5", "made": "2020-01"},
            {"id": "X2", "kind": "coat-shell", "made": "2017-08",
             "state": {"custody": "spare-rack"}} | x2,
        ],
        riding={"exchanges": [swap], "try_ons": [{"component": "X2", "member": "P5"}],
                "warn_months_left": 12},
    )  # fmt: skip


def test_the_exchange_is_both_moves_with_what_follows(tmp_path: Path, capsys: Capture) -> None:
    """X1 to wash before anybody else gets it; X2 eleven months left, not for interior work yet."""
    said = answer(tmp_path, capsys, larkmoor(), "ride")

    assert "P5 returns X1 and takes X2: both moves, one step." in said
    assert "X1 needs a wash before anybody else gets it: worn 2026-08-05" in said
    assert "X2 has eleven months left: first day out 2027-08-01, at the latest 2027-08-31." in said
    assert "X2 is not for interior work until P5's try-on is signed." in said


def test_the_exchange_is_neither_move_when_x2_is_out(tmp_path: Path, capsys: Capture) -> None:
    """Made ten years ago to the day: P5 keeps X1."""
    said = answer(tmp_path, capsys, larkmoor(made="2016-09-01"), "ride")

    assert "P5 keeps X1; X2 stays: neither move is made." in said


@pytest.mark.parametrize(
    ("facts", "line"),
    [
        ({"made": "2016-02-29"}, "no owner, first day out, 2026-02-28"),
        (
            {"made": "2016-03"},
            "no owner, first day out, 2026-03-01; could be as late as 2026-03-31",
        ),
        (
            {"made": "2012-09..2015-07-10"},
            "no owner, first day out, past under every reading, between 2022-09-01 and 2025-07-10",
        ),
        ({"made": "2017"}, "first day out, 2027-01-01; could be as late as 2027-12-31"),
        ({"made": "2017-06-05", "in_service": "2019-01-01"}, "first day out, 2027-06-05"),
        ({}, "no owner, first day out: coat liner X"),
    ],
)
def test_due_days_known_in_part_are_shown_with_their_latest(
    tmp_path: Path, capsys: Capture, facts: Document, line: str
) -> None:
    """On 2026-03-01, ten years: acted on at the earliest, shown to the latest, never guessed."""
    piece = {"id": "X", "kind": "coat-liner", **facts}

    said = answer(
        tmp_path, capsys, document("2026-03-01T12:00:00Z", components=[piece]), "due", "--all"
    )

    assert line in said
