"""How does a list of days look as a calendar feed?

Source: RFC 5545 (iCalendar): lines end in CRLF and are folded after 75 octets, whole-day events
carry DATE values, and a comma, a semicolon, a backslash and a line break in a text are escaped.
"""

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

_LONGEST = 75
_ESCAPES = str.maketrans({"\\": "\\\\", ";": "\\;", ",": "\\,", "\n": "\\n", "\r": None})


@dataclass(frozen=True, kw_only=True)
class CalendarEntry:
    """One whole day.

    Args:
        uid: the same in every feed for the same entry, so that a moved day replaces the old one.
    """

    uid: str
    day: dt.date
    summary: str
    description: str = ""


def calendar_text(entries: Iterable[CalendarEntry], *, name: str, stamp: dt.datetime) -> str:
    """Write a feed.

    Args:
        name: what a calendar calls it.
        stamp: when it was made, with its offset.
    """
    made = stamp.astimezone(dt.UTC).strftime("%Y%m%dT%H%M%SZ")
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Sootline//due//EN"]
    lines.append(f"X-WR-CALNAME:{_escaped(name)}")
    for entry in entries:
        lines.extend(_event(entry, made))
    lines.append("END:VCALENDAR")
    return "".join(f"{folded}\r\n" for line in lines for folded in _folded(line))


def _event(entry: CalendarEntry, made: str) -> Iterator[str]:
    yield "BEGIN:VEVENT"
    yield f"UID:{_escaped(entry.uid)}"
    yield f"DTSTAMP:{made}"
    yield f"DTSTART;VALUE=DATE:{entry.day:%Y%m%d}"
    yield f"SUMMARY:{_escaped(entry.summary)}"
    if entry.description:
        yield f"DESCRIPTION:{_escaped(entry.description)}"
    yield "TRANSP:TRANSPARENT"
    yield "END:VEVENT"


def _escaped(text: str) -> str:
    return text.translate(_ESCAPES)


def _folded(line: str) -> Iterator[str]:
    """Break a line so that no part is longer than allowed and no letter is cut in two."""
    part, size = "", 0
    for sign in line:
        width = len(sign.encode())
        if size + width > _LONGEST:
            yield part
            part, size = " ", 1
        part, size = part + sign, size + width
    yield part
