"""Are dates read as typed, and never guessed?"""

import datetime as dt

import pytest

from sootline.core.basis import DateSpan, UnreadableValueError
from sootline.core.roster import DateOrder
from sootline.core.roster.dates import read_date

TODAY = dt.date(2026, 3, 1)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("2016-03-05", "2016-03-05"),
        ("2016/3/5", "2016-03-05"),
        ("2016.03.05", "2016-03-05"),
        ("20160305", "2016-03-05"),
        ("2016-03-05 00:00:00", "2016-03-05"),
        ("2016-03-05T13:30:00.5Z", "2016-03-05"),
        ("2016-03", "2016-03"),
        ("03/2016", "2016-03"),
        ("2017", "2017"),
        ("2014..2016", "2014..2016"),
        ("..2015-07-10", "..2015-07-10"),
        ("5 Mar 2016", "2016-03-05"),
        ("March 5, 2016", "2016-03-05"),
        ("2016 Mar 5", "2016-03-05"),
        ("Mar 3rd 2020", "2020-03-03"),
        ("03-Mar-16", "2016-03-03"),
        ("03-Mar-95", "1995-03-03"),
        ("marzo de 2016", "2016-03"),
        ("3 de septiembre de 2019", "2019-09-03"),
        ("25/12/2021", "2021-12-25"),
        ("12/25/2021", "2021-12-25"),
        ("03/03/21", "2021-03-03"),
        ("", "unknown"),
        ("?", "unknown"),
        ("Unknown", "unknown"),
        ("ilegible", "unknown"),
    ],
)
def test_a_date_with_one_reading_is_read(typed: str, meant: str) -> None:
    """Whatever two people would read alike is read."""
    assert read_date(typed, today=TODAY) == DateSpan.parse(meant)


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("2021-02-30", "no_such_day"),
        ("13/13/2020", "no_such_day"),
        ("00/05/2020", "no_such_day"),
        ("0000-00-00", "unreadable"),
        ("9999-12-31", "unreadable"),
        ("1899-12-31", "unreadable"),
        ("2021-03-01T25:00", "unreadable"),
        ("２０２１-03-01", "unreadable"),
        ("Q3 2016", "unreadable"),
        ("5 6 Mar 2016", "unreadable"),
        ("Mar Apr 2016", "unreadable"),
        ("2016..2014", "reversed"),
        ("03/04/21", "ambiguous"),
        ("44287", "sheet_number"),
        ("44287.5", "sheet_number"),
        ("Mar-16", "month_and_number"),
        ("16-Mar", "month_and_number"),
        ("1/1/1900", "empty_cell"),
        ("1970-01-01", "empty_cell"),
        ("3/3/40", "short_year"),
    ],
)
def test_any_other_date_is_refused_with_its_reason(typed: str, why: str) -> None:
    """A day that is not, a bare spreadsheet number, a date two people read differently."""
    with pytest.raises(UnreadableValueError) as refused:
        read_date(typed, today=TODAY)

    assert refused.value.message == f"roster.date.{why}"


def test_the_refusal_gives_both_readings() -> None:
    """An ambiguous date says what each reader would take it for."""
    with pytest.raises(UnreadableValueError) as refused:
        read_date("03/04/21", today=TODAY)

    assert dict(refused.value.values) == {"day_first": "2021-04-03", "month_first": "2021-03-04"}


def test_a_sheet_number_says_which_day_it_would_be() -> None:
    """The day serial of 2021-04-01 in the 1900 calendar is 44287.

    Source: ECMA-376 part 1, 18.17.4 (dates as numbers of days, 1900 date base): 2021-04-01 is
    44,287 days after 1899-12-30; checked with a spreadsheet's own display, value from memory.
    """
    with pytest.raises(UnreadableValueError) as refused:
        read_date("44287", today=TODAY)

    assert dict(refused.value.values)["reading"] == "2021-04-01"


@pytest.mark.parametrize(("order", "month"), [(DateOrder.DAY_FIRST, 4), (DateOrder.MONTH_FIRST, 3)])
def test_a_said_order_settles_it(order: DateOrder, month: int) -> None:
    """Once the department says its order, the date is read."""
    span = read_date("03/04/21", today=TODAY, order=order)

    assert span.earliest is not None
    assert span.earliest.month == month


def test_a_date_against_the_said_order_is_refused() -> None:
    """A column that mixes both orders is not read by either."""
    with pytest.raises(UnreadableValueError) as refused:
        read_date("25/12/2021", today=TODAY, order=DateOrder.MONTH_FIRST)

    assert refused.value.message == "roster.date.other_order"
