"""What holds of every amount, limit and date span."""

import datetime as dt
from contextlib import suppress
from decimal import Decimal
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from sootline.core.basis import (
    DateSpan,
    Limit,
    Quantity,
    Reading,
    Side,
    Standing,
    UnreadableValueError,
    add_months,
    parse_limit,
)
from sootline.core.basis.quantities import UNITS

DAYS = st.dates(dt.date(1900, 1, 1), dt.date(2200, 12, 31))
MONTHS = st.integers(0, 1200)
AMOUNTS = st.decimals(0, 999999, places=3)
UNIT_SIGNS = st.sampled_from(sorted(UNITS))
TEMPERATURES = st.builds(
    Quantity,
    amount=st.decimals(Decimal(-200), Decimal(300), places=2),
    unit=st.sampled_from(["°C", "°F"]),
)
LIMITS = st.builds(
    lambda side, value: Limit(side=side, values=(value,)), st.sampled_from(Side), TEMPERATURES
)


@st.composite
def spans(draw: st.DrawFn) -> DateSpan:
    """Draw a span with one, both or no bounds."""
    low, high = sorted((draw(DAYS), draw(DAYS)))
    return DateSpan(
        earliest=low if draw(st.booleans()) else None,
        latest=high if draw(st.booleans()) else None,
    )


@given(AMOUNTS, UNIT_SIGNS)
def test_an_amount_reads_back_from_its_text(amount: Decimal, unit: str) -> None:
    """What is shown can be typed in again and is the same."""
    shown = Quantity(amount=amount, unit=unit)

    assert Quantity.parse(str(shown)) == shown


@given(AMOUNTS, UNIT_SIGNS, UNIT_SIGNS)
def test_conversion_there_and_back_loses_nothing(amount: Decimal, unit: str, other: str) -> None:
    """Conversion is exact in both directions, or refused."""
    given_amount = Quantity(amount=amount, unit=unit)
    if UNITS[other].dimension != given_amount.dimension:
        return
    scale, offset = UNITS[other].factor, UNITS[other].offset

    assert given_amount.to(other) * scale + offset == given_amount.base


@given(st.text(max_size=60))
def test_any_text_is_read_or_refused(text: str) -> None:
    """No text brings anything but a value or a refusal."""
    for kind in (Quantity, DateSpan):
        with suppress(UnreadableValueError):
            kind.parse(text)


@given(LIMITS, TEMPERATURES, st.decimals(Decimal("0.2"), 100, places=1))
def test_further_beyond_a_limit_is_still_beyond(
    limit: Limit, reading: Quantity, more: Decimal
) -> None:
    """No reading comes back within by moving away."""
    step = more if limit.side is Side.AT_MOST else -more
    further = Quantity(amount=reading.amount + step, unit=reading.unit)

    if limit.stand(reading) is Standing.BEYOND:
        assert limit.stand(further) is Standing.BEYOND


@given(LIMITS)
def test_a_limit_permits_its_own_value_and_is_not_stricter_than_itself(limit: Limit) -> None:
    """At the limit passes."""
    assert limit.stand(limit.values[0]) is Standing.WITHIN
    assert not limit.stricter(limit)


@given(LIMITS, LIMITS)
def test_two_limits_are_never_each_stricter_than_the_other(one: Limit, other: Limit) -> None:
    """Of two limits on one side, at most one permits less."""
    if one.side is other.side:
        assert not (one.stricter(other) and other.stricter(one))


@given(TEMPERATURES)
def test_a_single_unit_is_compared_within_a_twentieth_of_a_kelvin(reading: Quantity) -> None:
    """Conversion alone never decides beyond 0.05 K, and never forgives more."""
    limit = parse_limit("40 °C", Side.AT_MOST)
    kelvin_over = reading.base - limit.values[0].base
    slack = Fraction(0) if reading.unit == "°C" else Fraction(1, 20)

    assert (limit.stand(reading) is Standing.BEYOND) == (kelvin_over > slack)


@given(spans())
def test_a_span_reads_back_from_its_text(span: DateSpan) -> None:
    """What is shown can be typed in again and is the same."""
    assert DateSpan.parse(str(span)) == span


@given(DAYS, MONTHS)
def test_months_on_are_the_right_month_and_no_later_day(day: dt.date, months: int) -> None:
    """The month is exact; the day is the same or the month's last."""
    shifted = add_months(day, months)

    assert shifted.year * 12 + shifted.month == day.year * 12 + day.month + months
    assert shifted.day == day.day or (
        shifted.day < day.day and (shifted + dt.timedelta(days=1)).day == 1
    )


@given(spans(), MONTHS)
def test_a_longer_interval_never_ends_earlier(span: DateSpan, months: int) -> None:
    """Shifting keeps the order of days and of spans."""
    shorter, longer = span.plus_months(months), span.plus_months(months + 1)
    for early, late in ((shorter.earliest, longer.earliest), (shorter.latest, longer.latest)):
        assert early is None or late is None or early <= late


@given(spans(), DAYS, DAYS)
def test_a_day_once_reached_stays_reached(span: DateSpan, one: dt.date, other: dt.date) -> None:
    """Time does not make a past day possible again."""
    early, late = sorted((one, other))
    if span.reached(early) is Reading.YES:
        assert span.reached(late) is Reading.YES


@given(spans(), spans())
def test_two_facts_together_admit_no_day_that_either_excludes(
    one: DateSpan, other: DateSpan
) -> None:
    """Narrowing only narrows."""
    try:
        both = one.intersect(other)
    except UnreadableValueError:
        return
    for fact in (one, other):
        assert fact.earliest is None or (both.earliest and both.earliest >= fact.earliest)
        assert fact.latest is None or (both.latest and both.latest <= fact.latest)
