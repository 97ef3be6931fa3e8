"""Typed rows of a ticked sheet: one piece a row, and no row for all."""

import datetime as dt

import pytest

from sootline.core.basis import BadInputError, ComponentId, MessageId, Quantity
from sootline.core.exposure import Answer
from sootline.core.rebuild import Flaw
from sootline.core.rebuild.sheet_rows import SheetRow
from sootline.core.upkeep.inspections import InspectionKind, LinerTest
from sootline.core.upkeep.inspections.rows import TypedDay, read_inspections

AT = dt.datetime(2026, 4, 11, 10, tzinfo=dt.UTC)
POINTS = tuple(MessageId(f"inspection.point.{one}") for one in ("soil", "tears", "seams"))
ROWS = tuple(
    SheetRow(number=n, component=ComponentId(name), points=POINTS)
    for n, name in enumerate(("0412", "0512", "0612"), 1)
)


def read(text: str) -> TypedDay:
    """Read typed rows."""
    return read_inspections(text, ROWS, InspectionKind.ADVANCED, by="118", at=AT, on=AT.date())


def test_a_row_is_one_piece() -> None:
    """By its row or its number: points, flaws, tests, the words for giving it up."""
    typed = read("# 11 April\n1 abc\n\n0512 AC 5B 9 T1- T2+6,3 T3+7kPa,2 ! burnt at both cuffs\n")
    first, second = typed.inspections

    assert (first.component, first.looked, first.flaws) == ("0412", POINTS, ())
    assert second.looked == (POINTS[0], POINTS[2])
    assert [(one.flaw, one.place) for one in second.flaws] == [
        (Flaw.TORN, POINTS[1]),
        (Flaw.TRIM_LIFTED, ""),
    ]
    assert second.retire == "burnt at both cuffs"
    assert typed.day.planned == ("0412", "0512", "0612")


def test_a_test_says_how_it_was_carried_out() -> None:
    """Light failed; leakage 6 parts for 3 minutes; water pressure; one without how."""
    (one,) = read("1 ABC T1- T2+6,3 T3+7kPa,2").inspections
    (bare,) = read("1 ABC T2+").inspections
    light, leakage, pressed = one.tests

    assert (light.test, light.passed) == (LinerTest.LIGHT, Answer.NO)
    assert (leakage.water_parts, leakage.waited) == (6, Quantity.parse("3 min"))
    assert (pressed.pressure, pressed.water_parts) == (Quantity.parse("7kPa"), None)
    assert (bare.tests[0].waited, bare.tests[0].water_parts) == (None, None)


def test_what_was_not_there_stays_due() -> None:
    """Absent with its reason; a row with nothing ticked was not looked at."""
    typed = read("1 absent on leave\n2\n3 -")

    assert [(one.component, one.why) for one in typed.day.absent] == [("0412", "on leave")]
    assert [one.looked for one in typed.inspections] == [(), ()]


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("9 ABC", "rebuild.rows.unknown"),
        ("all ABC", "rebuild.rows.unknown"),
        ("1-3 ABC", "rebuild.rows.unknown"),
        ("1 ABC\n0412 ABC", "rebuild.rows.twice"),
        ("1 ABX", "rebuild.rows.letter"),
        ("1 ABC 99", "rebuild.rows.flaw"),
        ("1 ABC ok", "rebuild.rows.flaw"),
        ("1 ABC 5X", "rebuild.rows.letter"),
        ("1 ABC T3+7,2", "basis.quantity.unreadable"),
    ],
)
def test_a_row_that_cannot_be_read_refuses_the_sheet(line: str, message: str) -> None:
    """Whole, with every fault by its line; there is no row for many."""
    with pytest.raises(BadInputError) as caught:
        read(line)

    assert [one.message for one in caught.value.faults] == [message]
