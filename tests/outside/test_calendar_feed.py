"""The calendar feed against the standard's own rules and examples.

Source: RFC 5545 (iCalendar), sections 3.1 (content lines, folding at 75 octets), 3.3.4 (DATE),
3.3.11 (TEXT, escapes), 3.6 and 3.6.1 (required properties), and the example of 3.3.11. Where the
library `icalendar` is installed, it must read the same days, names and texts.
"""

import datetime as dt

import pytest

from sootline.files.calendar_out import CalendarEntry, calendar_text

STAMP = dt.datetime(2026, 3, 11, 4, 20, tzinfo=dt.timezone(-dt.timedelta(hours=6)))
# The example of section 3.3.11, as it reads when nothing is escaped.
EXAMPLE = "Project XYZ Final Review\nConference Room - 3B\nCome Prepared."
LONG = "Inspección avanzada: capa exterior del chaquetón 0412 — " * 3
ENTRIES = (
    CalendarEntry(uid="a@x", day=dt.date(1997, 7, 14), summary=EXAMPLE),
    CalendarEntry(uid="b@x", day=dt.date(2026, 2, 28), summary=LONG, description="a;b,c\\d\re"),
)
TEXT = calendar_text(ENTRIES, name="Gear, due", stamp=STAMP)


def unfolded(text: str) -> list[str]:
    """Undo the folding as section 3.1 says: a line break and one blank are nothing."""
    return text.replace("\r\n ", "").split("\r\n")


def unescaped(text: str) -> str:
    """Undo the escapes of section 3.3.11 in one pass."""
    out, signs = "", iter(text)
    for sign in signs:
        after = next(signs) if sign == "\\" else sign
        out += "\n" if sign == "\\" and after in "nN" else after
    return out


def test_no_line_is_longer_than_75_octets_and_each_ends_in_crlf() -> None:
    """Section 3.1; no letter of several octets is cut in two."""
    raw = TEXT.encode()

    assert raw.endswith(b"\r\n")
    assert b"\n" not in raw.replace(b"\r\n", b"")
    lines = raw.split(b"\r\n")
    assert max(map(len, lines)) <= 75
    assert [line.decode() for line in lines]


def test_the_standards_example_of_a_text() -> None:
    """Section 3.3.11 writes it with an escaped line break."""
    line = "SUMMARY:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared."

    assert line in unfolded(TEXT)


def test_texts_come_back_as_they_were() -> None:
    """Comma, semicolon, backslash and line break; a lone carriage return is dropped."""
    lines = unfolded(TEXT)
    said = [unescaped(line.partition(":")[2]) for line in lines if line.startswith("SUMMARY")]
    described = next(line for line in lines if line.startswith("DESCRIPTION"))

    assert said == [EXAMPLE, LONG]
    assert unescaped(described.partition(":")[2]) == "a;b,c\\de"


def test_what_an_event_must_have() -> None:
    """Sections 3.4, 3.6 and 3.6.1: version, product, UID, DTSTAMP in UTC, a DATE as its start."""
    lines = unfolded(TEXT)

    assert lines[:3] == ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Sootline//due//EN"]
    assert lines.count("DTSTAMP:20260311T102000Z") == len(ENTRIES)
    assert "DTSTART;VALUE=DATE:19970714" in lines
    assert "UID:b@x" in lines


def test_the_library_reads_the_same() -> None:
    """An independent reader finds the same days and texts."""
    icalendar = pytest.importorskip("icalendar", reason="the library is not installed")
    read = icalendar.Calendar.from_ical(TEXT)
    events = read.walk("VEVENT")

    assert [event.decoded("DTSTART") for event in events] == [one.day for one in ENTRIES]
    assert [str(event["SUMMARY"]) for event in events] == [EXAMPLE, LONG]
    assert [str(event["UID"]) for event in events] == ["a@x", "b@x"]
