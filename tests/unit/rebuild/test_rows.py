"""A ticked sheet typed in row by row becomes checks, or is refused with every fault by line."""

import datetime as dt

import pytest

from sootline.core.basis import BadInputError, ComponentId, MessageId
from sootline.core.exposure import Answer
from sootline.core.rebuild import AfterWashCheck, Flaw
from sootline.core.rebuild.rows import read_rows
from sootline.core.rebuild.sheet_rows import SheetRow

NOW = dt.datetime(2026, 3, 1, 12, tzinfo=dt.UTC)
CUFFS, COLLAR = MessageId("gear.touch.cuffs"), MessageId("gear.touch.collar")
ROWS = (
    SheetRow(number=1, component=ComponentId("0401"), points=(CUFFS, COLLAR)),
    SheetRow(number=2, component=ComponentId("0402"), points=(CUFFS,)),
)


def typed(text: str) -> tuple[AfterWashCheck, ...]:
    """Return what 118 typed in."""
    return read_rows(text, ROWS, by="118", at=NOW)


@pytest.mark.parametrize(
    ("line", "dry"),
    [
        ("1 AB", [Answer.YES, Answer.YES]),
        ("1 b", [Answer.NO, Answer.YES]),
        ("0401 -", [Answer.NO, Answer.NO]),
        ("1", [Answer.NO, Answer.NO]),
    ],
)
def test_a_box_left_empty_is_not_dry(line: str, dry: list[Answer]) -> None:
    """By the row's number or the piece's own, in capitals or not."""
    (check,) = typed(line)

    assert (check.component, check.by) == ("0401", "118")
    assert [felt.dry for felt in check.felt] == dry


def test_flaws_stand_behind_the_points() -> None:
    """Flaw 5 is the fifth of the printed list; C would be its point."""
    (check,) = typed("1 A 5B 1")

    assert [(found.flaw, found.place) for found in check.flaws] == [
        (list(Flaw)[4], COLLAR),
        (next(iter(Flaw)), ""),
    ]


def test_comments_and_empty_lines_are_passed_over() -> None:
    """A note to oneself is no row."""
    assert len(typed("# first sheet\n\n1 AB\n2 A\n")) == 2


def test_every_fault_is_listed_by_line() -> None:
    """Nothing is typed in until all lines can be read."""
    with pytest.raises(BadInputError) as refused:
        typed("9 A\n1 AZ\n1 A 99\n2 A 5Q\n1 A\n0401 B\n2 A five")

    assert [(fault.place, fault.message) for fault in refused.value.faults] == [
        ("line 1", "rebuild.rows.unknown"),
        ("line 2", "rebuild.rows.letter"),
        ("line 3", "rebuild.rows.flaw"),
        ("line 4", "rebuild.rows.letter"),
        ("line 6", "rebuild.rows.twice"),
        ("line 7", "rebuild.rows.flaw"),
    ]
