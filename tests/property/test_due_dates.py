"""What must hold of due days whatever the dates are."""

import datetime as dt

from hypothesis import given
from hypothesis import strategies as st

from sootline.core.basis import DateSpan
from sootline.core.intervals.dues import Standing, earliest_of, stand

DAYS = st.dates(dt.date(1990, 1, 1), dt.date(2060, 12, 31))
MAYBE = st.none() | DAYS


@st.composite
def spans(draw: st.DrawFn) -> DateSpan:
    """Draw a span, open or closed."""
    first, last = draw(MAYBE), draw(MAYBE)
    if first and last and first > last:
        first, last = last, first
    return DateSpan(earliest=first, latest=last)


@given(span=spans(), months=st.integers(0, 240), today=DAYS)
def test_a_later_due_day_is_never_more_pressing(
    span: DateSpan, months: int, today: dt.date
) -> None:
    """Adding months never turns "later" into "overdue"."""
    if stand(span, today) is Standing.LATER:
        assert stand(span.plus_months(months), today) is Standing.LATER


@given(span=spans(), today=DAYS)
def test_knowing_more_never_makes_a_passed_day_later(span: DateSpan, today: dt.date) -> None:
    """What is past under every reading is past under each single day of it."""
    if span.latest is not None and span.latest < today:
        single = DateSpan.day(span.earliest or span.latest)
        assert stand(single, today) is Standing.OVERDUE


@given(events=st.lists(spans(), min_size=1, max_size=6))
def test_the_first_of_several_is_not_after_any(events: list[DateSpan]) -> None:
    """The earliest of several events lies at or before each of them."""
    first = earliest_of(tuple(events))
    for event in events:
        if first.latest and event.latest:
            assert first.latest <= event.latest
        if first.earliest and event.earliest:
            assert first.earliest <= event.earliest


@given(day=DAYS, months=st.integers(0, 240))
def test_month_arithmetic_clamps_and_never_leaves_the_month(day: dt.date, months: int) -> None:
    """Some months on, the day is the same or the month's last."""
    moved = DateSpan.day(day).plus_months(months).earliest
    assert moved is not None
    assert (moved.year * 12 + moved.month) - (day.year * 12 + day.month) == months
    assert moved.day == day.day or (moved + dt.timedelta(days=1)).day == 1
