"""Dates known only in part: reading them, shifting them, comparing them with a day."""

import datetime as dt

import pytest

from sootline.core.basis import DateSpan, Reading, UnreadableValueError, add_months

FORMS = [
    ("2019-05-20", dt.date(2019, 5, 20), dt.date(2019, 5, 20)),
    ("2019-05", dt.date(2019, 5, 1), dt.date(2019, 5, 31)),
    ("2024-02", dt.date(2024, 2, 1), dt.date(2024, 2, 29)),
    ("2019", dt.date(2019, 1, 1), dt.date(2019, 12, 31)),
    ("2012-09..2015-07-10", dt.date(2012, 9, 1), dt.date(2015, 7, 10)),
    ("..2015-07-10", None, dt.date(2015, 7, 10)),
    ("2012-09..", dt.date(2012, 9, 1), None),
    (" Unknown ", None, None),
]
UNREADABLE = [
    ("", "basis.span.unreadable"),
    ("..", "basis.span.unreadable"),
    ("20/05/2019", "basis.span.unreadable"),
    ("2019-5", "basis.span.unreadable"),
    ("19-05-20", "basis.span.unreadable"),
    ("1899", "basis.span.unreadable"),
    ("2201", "basis.span.unreadable"),
    ("２０１９", "basis.span.unreadable"),
    ("2019-05-20T00:00", "basis.span.unreadable"),
    ("2019" * 1000, "basis.span.unreadable"),
    ("2019-05\n-20", "basis.span.unreadable"),
    ("2023-02-29", "basis.span.no_such_day"),
    ("2019-13", "basis.span.no_such_day"),
    ("2019-00", "basis.span.no_such_day"),
    ("2019-05-00", "basis.span.no_such_day"),
    ("2015..2012", "basis.span.reversed"),
]


@pytest.mark.parametrize(("text", "earliest", "latest"), FORMS)
def test_a_date_is_read_as_the_days_it_may_be(
    text: str, earliest: dt.date | None, latest: dt.date | None
) -> None:
    """A month is its first to its last day, a year January to December, an open side nothing."""
    span = DateSpan.parse(text)

    assert (span.earliest, span.latest) == (earliest, latest)


@pytest.mark.parametrize(("text", "message"), UNREADABLE)
def test_what_is_no_date_is_refused_with_its_reason(text: str, message: str) -> None:
    """No text is bent into a date; the reason tells a bad form from a day that never was."""
    with pytest.raises(UnreadableValueError) as refusal:
        DateSpan.parse(text)

    assert refusal.value.message == message


def test_equality_does_not_depend_on_how_a_date_was_written() -> None:
    """Two texts for the same days are the same date."""
    assert DateSpan.parse("2019-05") == DateSpan.parse("2019-05-01..2019-05-31")


@pytest.mark.parametrize(
    ("span", "shown"),
    [
        (DateSpan.parse(" 2019-05 "), "2019-05"),
        (DateSpan(), "unknown"),
        (DateSpan(earliest=dt.date(2020, 1, 2), latest=dt.date(2020, 1, 2)), "2020-01-02"),
        (DateSpan(earliest=dt.date(2020, 1, 2)), "2020-01-02.."),
        (DateSpan(latest=dt.date(2020, 1, 2)), "..2020-01-02"),
        (DateSpan.day(dt.date(2020, 1, 2)), "2020-01-02"),
    ],
)
def test_a_date_is_shown_as_entered_or_by_its_bounds(span: DateSpan, shown: str) -> None:
    """What somebody typed stays; what was computed names its bounds."""
    assert str(span) == shown


@pytest.mark.parametrize(
    ("text", "known"), [("2019-05-20", True), ("2019", False), ("..2019", False)]
)
def test_only_a_single_day_counts_as_known(text: str, known: bool) -> None:
    """A month is not a known day."""
    assert DateSpan.parse(text).known is known


@pytest.mark.parametrize(
    ("start", "months", "end"),
    [
        ("2016-02-29", 120, "2026-02-28"),
        ("2016-02-29", 48, "2020-02-29"),
        ("2025-08-31", 6, "2026-02-28"),
        ("2023-08-31", 6, "2024-02-29"),
        ("2019-12-31", 1, "2020-01-31"),
        ("2019-12-31", 2, "2020-02-29"),
        ("2020-01-15", -1, "2019-12-15"),
        ("2020-03-31", -1, "2020-02-29"),
    ],
)
def test_months_are_clamped_to_the_last_day_of_a_month(start: str, months: int, end: str) -> None:
    """A day the month lacks becomes its last one, leap years included."""
    assert add_months(dt.date.fromisoformat(start), months) == dt.date.fromisoformat(end)


def test_a_span_is_shifted_at_both_ends() -> None:
    """Ten years after an unknown day of a month is the same month, day still unknown."""
    assert DateSpan.parse("2016-02").plus_months(120) == DateSpan.parse("2026-02")


@pytest.mark.parametrize("text", ["..2016-02-29", "2016-02-29..", "unknown"])
def test_an_open_side_stays_open_when_shifted(text: str) -> None:
    """What nothing bounds, no shift bounds."""
    before, after = DateSpan.parse(text), DateSpan.parse(text).plus_months(1)

    assert (after.earliest is None, after.latest is None) == (
        before.earliest is None,
        before.latest is None,
    )


@pytest.mark.parametrize(
    ("text", "reading"),
    [
        ("2026-02-28", Reading.YES),
        ("2026-03-01", Reading.YES),
        ("2026-03-02", Reading.NO),
        ("2026-03", Reading.POSSIBLY),
        ("2026", Reading.POSSIBLY),
        ("2025", Reading.YES),
        ("..2026-03-01", Reading.YES),
        ("..2026-03-02", Reading.UNKNOWN),
        ("2026-01..", Reading.POSSIBLY),
        ("2026-04..", Reading.NO),
        ("unknown", Reading.UNKNOWN),
    ],
)
def test_whether_a_day_has_come_over_its_readings(text: str, reading: Reading) -> None:
    """On 2026-03-01: past under every reading, under some, under none, or nobody can say."""
    assert DateSpan.parse(text).reached(dt.date(2026, 3, 1)) is reading


@pytest.mark.parametrize(
    ("one", "other", "both"),
    [
        ("2012-09..", "..2015-07-10", "2012-09-01..2015-07-10"),
        ("2014", "2014-06", "2014-06"),
        ("unknown", "2014", "2014"),
        ("unknown", "unknown", "unknown"),
    ],
)
def test_two_facts_about_one_date_narrow_it(one: str, other: str, both: str) -> None:
    """A label edition bounds from below, an invoice from above."""
    narrowed = DateSpan.parse(one).intersect(DateSpan.parse(other))

    assert narrowed == DateSpan.parse(both)
    assert str(narrowed) == f"{one} and {other}"


def test_facts_that_contradict_each_other_are_refused() -> None:
    """Nobody picks one of two dates that cannot both be true."""
    with pytest.raises(UnreadableValueError):
        DateSpan.parse("2014").intersect(DateSpan.parse("2015"))
