"""The timeline reads without colour, and hostile names cannot break it."""

import datetime as dt
import re
from xml.etree import ElementTree as ET

from sootline.paper.timeline import Bar, Row, draw_timeline

START = dt.datetime(2026, 3, 11, 4, 20, tzinfo=dt.timezone(dt.timedelta(hours=-6)))
SVG = "{http://www.w3.org/2000/svg}"


def bar(start: int, likely: int, late: int, label: str = "") -> Bar:
    """Return a bar."""
    return Bar(label=label, short="1", start=start, likely=likely, late=late)


def drawn(*bars: Bar, now: int | None = None, name: str = "drum 1") -> ET.Element:
    """Return the timeline of one row."""
    moment = None if now is None else START + dt.timedelta(minutes=now)
    text = draw_timeline([Row(name=name, bars=bars)], START, now=moment, title='the "plan" & all')
    return ET.fromstring(text)  # noqa: S314 - our own drawing


def boxes(svg: ET.Element, fill: str) -> list[float]:
    """Return the widths of the boxes filled in one way."""
    return [float(box.get("width", 0)) for box in svg.iter(f"{SVG}rect") if box.get("fill") == fill]


def texts(svg: ET.Element) -> list[str]:
    """Return everything written in it."""
    return [one.text or "" for one in svg.iter(f"{SVG}text")]


def test_a_bar_is_outlined_until_likely_and_hatched_until_latest() -> None:
    """Sixty minutes likely, thirty more perhaps: the hatched part is half as wide."""
    svg = drawn(bar(0, 60, 90))

    assert round(boxes(svg, "none")[0] / boxes(svg, "url(#late)")[0], 1) == 2.0


def test_a_certain_bar_has_no_hatching() -> None:
    """Likely and latest are one."""
    assert boxes(drawn(bar(0, 60, 60)), "url(#late)") == []


def test_what_has_begun_is_filled_and_now_is_a_line() -> None:
    """At minute 30 the first of two has begun."""
    svg = drawn(bar(0, 60, 60, "load 1"), bar(60, 120, 120), now=30)

    assert len(boxes(svg, "currentColor")) == 1
    assert sum(path.get("stroke-width") == "4" for path in svg.iter(f"{SVG}path")) == 1


def test_now_outside_the_plan_is_not_drawn() -> None:
    """A plan looked at a day later shows no line at its edge."""
    svg = drawn(bar(0, 60, 60), now=1440)

    assert not any(path.get("stroke-width") == "4" for path in svg.iter(f"{SVG}path"))


def test_bars_that_overlap_get_lanes_of_their_own() -> None:
    """Three at once are three lanes; one that follows shares the first."""
    svg = drawn(bar(0, 60, 90), bar(10, 60, 90), bar(20, 60, 90), bar(90, 120, 120))

    assert len({box.get("y") for box in svg.iter(f"{SVG}rect")}) == 3


def test_a_label_is_whole_or_short_or_left_out() -> None:
    """It is never cut in the middle of a word."""
    svg = drawn(
        bar(0, 600, 600, "load 1: 8"), bar(600, 620, 620, "load 2: 4"), bar(620, 621, 621, "x")
    )

    assert [text for text in texts(svg) if text in ("load 1: 8", "load 2: 4", "1", "x")] == [
        "load 1: 8",
        "1",
    ]


def test_midnight_bears_the_day_and_long_plans_have_few_hours() -> None:
    """Three days have at most a dozen marks, midnights among them by name."""
    svg = drawn(bar(0, 4000, 4300))
    marks = [text for text in texts(svg) if re.fullmatch(r"\d\d:\d\d|2026-\d\d-\d\d", text)]

    assert "2026-03-12" in marks
    assert len(marks) <= 12


def test_hours_fall_on_full_hours_of_the_departments_clock() -> None:
    """A plan from 04:20 has its first mark at 05:00."""
    assert "05:00" in texts(drawn(bar(0, 120, 120)))


def test_an_empty_plan_is_drawn_too() -> None:
    """No rows, and a row without bars."""
    assert ET.fromstring(draw_timeline([], START)) is not None  # noqa: S314 - our own drawing
    assert texts(drawn(name="drum 1"))[-1] == "drum 1"


def test_a_hostile_name_stays_a_name() -> None:
    """Markup in a name or title is text."""
    svg = drawn(bar(0, 900, 900, "<script>"), name='"><script>alert(1)</script>')

    assert svg.get("aria-label") == 'the "plan" & all'
    assert '"><script>alert(1)</script>' in texts(svg)
    assert not list(svg.iter(f"{SVG}script"))


def test_it_needs_no_colour() -> None:
    """Only the colour of what is around it, and white on what is filled."""
    source = draw_timeline([Row(name="x", bars=(bar(0, 900, 990, "y"),))], START, now=START)

    assert set(re.findall(r'(?:fill|stroke)="([^"]+)"', source)) <= {
        "none", "currentColor", "#fff", "url(#late)"
    }  # fmt: skip
