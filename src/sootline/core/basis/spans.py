"""Between which days does a date lie, when only part of it is known?

Texts: "2019-05-20" (a day), "2019-05" (a month), "2019" (a year),
"2012-09..2015-07-10" (between), "..2015-07-10" (not after), "2012-09.." (not before), "unknown".
Decisions act on the earliest reading and show the latest.
"""

import calendar
import datetime as dt
import re
from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import ClassVar

from sootline.core.basis.errors import UnreadableValueError
from sootline.core.basis.text import TextForm

_PART = re.compile(r"(\d{4})(?:-(\d{2})(?:-(\d{2}))?)?", re.ASCII)
_YEAR_FIRST, _YEAR_LAST = 1900, 2200


class Reading(StrEnum):
    """Is a day reached, under the possible readings of a span?"""

    NO = "no"
    POSSIBLY = "possibly"
    YES = "yes"
    UNKNOWN = "unknown"


@dataclass(frozen=True, kw_only=True)
class DateSpan(TextForm):
    """A civil date known to lie between two days, both included.

    Args:
        earliest: None when nothing bounds it from below.
        latest: None when nothing bounds it from above.
        text: as entered; equality and order do not depend on it.
    """

    earliest: dt.date | None = None
    latest: dt.date | None = None
    text: str = field(default="", compare=False)
    text_example: ClassVar[str] = "2019-05"

    def __post_init__(self) -> None:
        if self.earliest and self.latest and self.earliest > self.latest:
            raise UnreadableValueError("basis.span.reversed", text=self.text or str(self))

    @classmethod
    def parse(cls, text: str) -> "DateSpan":
        """Read a span from its text.

        Raises:
            UnreadableValueError: the text is none of the forms above, or names no real day.
        """
        plain = text.strip()
        if plain.lower() == "unknown":
            return cls(text=text)
        low, mark, high = plain.partition("..")
        if not mark:
            first, last = _bounds(plain, text)
            return cls(earliest=first, latest=last, text=text)
        if not low and not high:
            raise UnreadableValueError("basis.span.unreadable", text=text)
        return cls(
            earliest=_bounds(low, text)[0] if low else None,
            latest=_bounds(high, text)[1] if high else None,
            text=text,
        )

    @classmethod
    def day(cls, day: dt.date) -> "DateSpan":
        """Make the span of one known day."""
        return cls(earliest=day, latest=day, text=day.isoformat())

    @property
    def known(self) -> bool:
        """Whether the span is one single day."""
        return self.earliest is not None and self.earliest == self.latest

    def plus_months(self, months: int) -> "DateSpan":
        """Shift both bounds by calendar months, clamped to the month's last day."""
        low = add_months(self.earliest, months) if self.earliest else None
        high = add_months(self.latest, months) if self.latest else None
        return DateSpan(earliest=low, latest=high)

    def reached(self, today: dt.date) -> Reading:
        """Say whether the day of this span has come by `today`, over its readings."""
        if self.latest is not None and self.latest <= today:
            return Reading.YES
        if self.earliest is None:
            return Reading.UNKNOWN
        return Reading.POSSIBLY if self.earliest <= today else Reading.NO

    def intersect(self, other: "DateSpan") -> "DateSpan":
        """Narrow by another fact about the same date.

        Raises:
            UnreadableValueError: the two contradict each other.
        """
        if other == DateSpan() != self:
            return self
        lows = [day for day in (self.earliest, other.earliest) if day]
        highs = [day for day in (self.latest, other.latest) if day]
        narrowed = replace(self, earliest=None, latest=None, text="")
        return replace(
            narrowed,
            earliest=max(lows) if lows else None,
            latest=min(highs) if highs else None,
            text=f"{self} and {other}",
        )

    def __str__(self) -> str:
        if self.text:
            return self.text.strip()
        if self.earliest is None and self.latest is None:
            return "unknown"
        if self.known:
            return str(self.earliest)
        return f"{self.earliest or ''}..{self.latest or ''}"


def add_months(day: dt.date, months: int) -> dt.date:
    """Return the day some calendar months on; a day the month lacks becomes its last day."""
    index = day.year * 12 + day.month - 1 + months
    year, month = divmod(index, 12)
    last = calendar.monthrange(year, month + 1)[1]
    return dt.date(year, month + 1, min(day.day, last))


def _bounds(part: str, whole: str) -> tuple[dt.date, dt.date]:
    match = _PART.fullmatch(part.strip())
    if not match or not _YEAR_FIRST <= int(match[1]) <= _YEAR_LAST:
        raise UnreadableValueError("basis.span.unreadable", text=whole)
    year, month, day = (int(group) if group else None for group in match.groups())
    assert year is not None  # the pattern demands it
    try:
        first = dt.date(year, 1 if month is None else month, 1 if day is None else day)
    except ValueError as error:
        raise UnreadableValueError("basis.span.no_such_day", text=whole) from error
    if day:
        return first, first
    last_month = month or 12
    return first, dt.date(year, last_month, calendar.monthrange(year, last_month)[1])
