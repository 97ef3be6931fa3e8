"""Between which days does a date lie that somebody typed into a list?

Read as they stand: 2016-03-05, 2016/3/5, 20160305, 2016-03, 2016, 03/2016, 5 Mar 2016,
March 5, 2016, marzo 2016, and spans ("2014..2016"). A date that two people would read differently
is refused until the order of day and month is said; nothing is guessed.
"""

import datetime as dt
import re
from enum import StrEnum

from sootline.core.basis import DateSpan, UnreadableValueError
from sootline.core.roster.text import folded, is_unknown
from sootline.core.roster.unreadable import UnreadableCellError


class DateOrder(StrEnum):
    """In which order a list writes day and month."""

    DAY_FIRST = "dmy"
    MONTH_FIRST = "mdy"


_MONTHS = {
    name: number
    for number, names in enumerate(
        (
            "january jan enero ene", "february feb febrero", "march mar marzo",
            "april apr abril abr", "may mayo", "june jun junio", "july jul julio",
            "august aug agosto ago", "september sep sept septiembre setiembre set",
            "october oct octubre", "november nov noviembre", "december dec diciembre dic",
        ),
        start=1,
    )
    for name in names.split()
}  # fmt: skip
_TIME = r"[T ](?:[01]\d|2[0-3]):[0-5]\d(?::[0-5]\d(?:\.\d{1,6})?)?(?:Z|[+-]\d\d:\d\d)?"
_ONE_READING = tuple(
    re.compile(form, re.ASCII)
    for form in (
        rf"(?P<y>\d{{4}})-(?P<m>\d\d)-(?P<d>\d\d){_TIME}",
        r"(?P<y>\d{4})(?P<mark>[-/.])(?P<m>\d{1,2})(?P=mark)(?P<d>\d{1,2})",
        r"(?P<y>(?:19|20)\d\d)(?P<m>\d\d)(?P<d>\d\d)",
        r"(?P<m>\d{1,2})[-/.](?P<y>\d{4})",
    )
)
_THREE = re.compile(r"(\d{1,2})([-/.])(\d{1,2})\2(\d{2}|\d{4})", re.ASCII)
_SERIAL = re.compile(r"\d{5}(?:\.\d+)?", re.ASCII)
_SERIAL_DAYS = range(10_000, 80_000)
_DAY_ZERO = dt.date(1899, 12, 30)
_FIRST_YEAR = 1950
_JOINING = frozenset(("de", "del", "of"))
_ORDINAL = re.compile(r"(?<=\d)(st|nd|rd|th)$")
# What a spreadsheet or a database shows for an empty date.
_EMPTY_DATES = frozenset(
    dt.date(*day) for day in ((1900, 1, 1), (1904, 1, 1), (1970, 1, 1), (1901, 1, 1))
)


def read_date(text: str, *, today: dt.date, order: DateOrder | None = None) -> DateSpan:
    """Read a typed date; a cell that says nothing is an unknown date.

    Args:
        today: decides which century a year of two digits means; nothing else.
        order: what the list is known to write; None is not known.

    Raises:
        UnreadableCellError: no date, no real day, two readings, or a bare spreadsheet number.
    """
    if is_unknown(text):
        return DateSpan(text="unknown")
    span = _read(text, today, order)
    if span.known and span.earliest in _EMPTY_DATES:
        raise UnreadableCellError("roster.date.empty_cell")
    return span


def _read(text: str, today: dt.date, order: DateOrder | None) -> DateSpan:
    if _SERIAL.fullmatch(text) and int(float(text)) in _SERIAL_DAYS:
        reading = _DAY_ZERO + dt.timedelta(days=int(float(text)))
        raise UnreadableCellError("roster.date.sheet_number", reading=reading.isoformat())
    for form in _ONE_READING:
        if match := form.fullmatch(text):
            parts = match.groupdict()
            return _day(int(parts["y"]), int(parts["m"]), int(parts["d"]) if "d" in parts else None)
    if match := _THREE.fullmatch(text):
        return _two_numbers(int(match[1]), int(match[3]), _year(match[4], today), order)
    words = [word for word in folded(text).split() if word not in _JOINING]
    if _MONTHS.keys() & set(words):
        return _with_name(words, today)
    return _iso(text)


def _iso(text: str) -> DateSpan:
    """Read a text of the forms that basis knows."""
    try:
        return DateSpan.parse(text)
    except UnreadableValueError as error:
        known = {"basis.span.no_such_day": "no_such_day", "basis.span.reversed": "reversed"}
        what = known.get(error.message, "unreadable")
        raise UnreadableCellError(f"roster.date.{what}") from None


def _day(year: int, month: int, day: int | None) -> DateSpan:
    """Return the span of a day, or of a month where the day is not given."""
    return _iso(f"{year:04}-{month:02}" + (f"-{day:02}" if day is not None else ""))


def _year(digits: str, today: dt.date) -> int:
    """Return the only year two digits can mean: not to come, and not before there was such gear."""
    if len(digits) == 4:
        return int(digits)
    century = today.year // 100 * 100
    for year in (century + int(digits), century - 100 + int(digits)):
        if _FIRST_YEAR <= year <= today.year:
            return year
    raise UnreadableCellError("roster.date.short_year")


def _two_numbers(first: int, second: int, year: int, order: DateOrder | None) -> DateSpan:
    """Read day and month in the only order that is possible, or in the one that was said."""
    may_be_day_first, may_be_month_first = 1 <= second <= 12, 1 <= first <= 12
    if not may_be_day_first and not may_be_month_first:
        raise UnreadableCellError("roster.date.no_such_day")
    if order is None and may_be_day_first and may_be_month_first and first != second:
        raise UnreadableCellError(
            "roster.date.ambiguous",
            day_first=f"{year}-{second:02}-{first:02}",
            month_first=f"{year}-{first:02}-{second:02}",
        )
    order = order or (DateOrder.DAY_FIRST if may_be_day_first else DateOrder.MONTH_FIRST)
    if not (may_be_day_first if order is DateOrder.DAY_FIRST else may_be_month_first):
        raise UnreadableCellError("roster.date.other_order", order=order.value)
    return _day(year, second, first) if order is DateOrder.DAY_FIRST else _day(year, first, second)


def _with_name(words: list[str], today: dt.date) -> DateSpan:
    """Read a date that names its month."""
    months = [_MONTHS[word] for word in words if word in _MONTHS]
    numbers = [_ORDINAL.sub("", word) for word in words if word not in _MONTHS]
    if len(months) != 1 or not all(re.fullmatch(r"\d+", word, re.ASCII) for word in numbers):
        raise UnreadableCellError("roster.date.unreadable")
    match [len(number) for number in numbers]:
        case [4]:
            return _iso(f"{numbers[0]}-{months[0]:02}")
        case [1 | 2]:
            raise UnreadableCellError("roster.date.month_and_number")
        case [4, 1 | 2]:
            return _day(int(numbers[0]), months[0], int(numbers[1]))
        case [1 | 2, 2 | 4]:
            return _day(_year(numbers[1], today), months[0], int(numbers[0]))
    raise UnreadableCellError("roster.date.unreadable")
