"""What does a list of events do to recorded gear?"""

import pytest
from tests.unit.roster.lists import TODAY, read, table

from sootline.core.basis import BadInputError
from sootline.core.gear.components import Component
from sootline.core.gear.records import Deed
from sootline.core.gear.state import Life
from sootline.core.roster import Mapping, read_list

KNOWN = read(
    "id|serial|kind|made|in service",
    "C1|SN-1|coat|2021-03-01|2021-04-01",
    "H1|77|hood|2020|2020",
    "H2|77|hood|2020|2020",
).components


def told(*lines: str) -> tuple[Component, ...]:
    """Read a list of events on the gear above."""
    rows = table("serial|event|date", *lines)
    return read_list(rows, Mapping(), today=TODAY, known=KNOWN).components


def refused(*lines: str) -> list[tuple[str, str]]:
    """Return why such a list is refused."""
    with pytest.raises(BadInputError) as error:
        told(*lines)
    return [(fault.place, fault.message) for fault in error.value.faults]


def test_events_are_recorded_on_the_whole_coat() -> None:
    """Shell and unlabelled liner were both there; a bare cleaning is not recorded as advanced."""
    shell, liner, hood, _ = told(
        "SN-1|exposure|2024-05-01", "C1|advanced cleaning|2024-05-02", "SN-1|cleaning|2024"
    )

    deeds = [record.deed for record in shell.records]
    assert deeds == [Deed.WORN, Deed.ADVANCED_CLEANING]
    assert liner.records == shell.records
    assert hood.records == ()


def test_a_retirement_ends_the_life_in_use() -> None:
    """Piece and parts are retired."""
    shell, liner, *_ = told("SN-1|retirement|2024-01-01")

    assert shell.state.life is liner.state.life is Life.RETIRED


def test_events_out_of_order_are_refused() -> None:
    """After retirement, before first service, before it was made, ahead of today."""
    assert refused(
        "C1|retirement|2024-01-01",
        "C1|advanced cleaning|2024-06-01",
        "C1|exposure|2021-03-15",
        "C1|inspection|2020-01-01",
        "H1|inspection|2031-01-01",
    ) == [
        ("list.csv:3:date", "roster.order.after_retirement"),
        ("list.csv:4:date", "roster.order.before_in_service"),
        ("list.csv:5:date", "roster.order.before_made"),
        ("list.csv:6:date", "roster.order.future"),
    ]


def test_events_of_pieces_nobody_knows_are_refused() -> None:
    """Unknown pieces, unnamed ones, and a serial that is on two."""
    assert refused("SN-9|exposure|2024", "|exposure|2024", "77|exposure|2024", "C1||2024") == [
        ("list.csv:2:serial", "roster.event.no_such_piece"),
        ("list.csv:3:serial", "roster.event.no_piece"),
        ("list.csv:4:serial", "roster.event.several"),
        ("list.csv:5:event", "roster.event.missing"),
    ]


def test_an_issue_is_the_first_service() -> None:
    """An exposure before the issue that the list itself tells is refused."""
    assert refused("C1|issued|2022-01-01", "C1|exposure|2021-12-01") == [
        ("list.csv:3:date", "roster.order.before_in_service")
    ]
