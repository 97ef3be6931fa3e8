"""When is which drum, sink and drying place busy, drawn so that no colour is needed?

A bar is outlined until its likely end and hatched until its latest. What has begun by the moment
of drawing is filled. The text is SVG for a printed sheet and for a screen alike: it takes its
colour from what is around it.
"""

import datetime as dt
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape

from sootline.paper.signs import visible

_WIDE, _LABELS, _LANE, _GAP, _TOP = 1000.0, 150.0, 30.0, 12.0, 34.0
_STEPS_H = (1, 2, 3, 4, 6, 12, 24, 48)
_MOST_TICKS = 10
_SIGN_WIDE = 8.4
_FONT = "font-family=\"'Atkinson Hyperlegible Next', sans-serif\""


@dataclass(frozen=True, kw_only=True)
class Bar:
    """One stretch in minutes from the start: busy until `likely`, perhaps until `late`.

    Args:
        label: written into the bar where it has room, otherwise `short`, otherwise nothing.
    """

    label: str
    short: str = ""
    start: int
    likely: int
    late: int


@dataclass(frozen=True, kw_only=True)
class Row:
    """One drum, sink, rack or cabinet with what happens there; overlapping bars get lanes."""

    name: str
    bars: tuple[Bar, ...]


@dataclass(frozen=True, kw_only=True)
class _Scale:
    start: dt.datetime
    until: int

    def x(self, minute: float) -> float:
        return _LABELS + (_WIDE - _LABELS - 8) * minute / self.until


def draw_timeline(
    rows: Sequence[Row],
    start: dt.datetime,
    *,
    now: dt.datetime | None = None,
    title: str = "",
    name_day: Callable[[dt.date], str] = str,
) -> str:
    """Return the timeline as SVG.

    Args:
        start: minute 0, in the zone whose clock the hours are.
        now: a line is drawn here, if it falls within.
        title: what a reader who cannot see it is told.
        name_day: what stands at midnight.
    """
    until = max((bar.late for row in rows for bar in row.bars), default=60)
    scale = _Scale(start=start, until=max(until, 1))
    lanes = [_in_lanes(row.bars) for row in rows]
    high = _TOP + sum(len(lane) * _LANE + _GAP for lane in lanes)
    minute_now = (now - start) / dt.timedelta(minutes=1) if now else -1.0
    parts = [*_hours(scale, high, name_day)]
    y = _TOP
    for row, row_lanes in zip(rows, lanes, strict=True):
        parts.append(_text(0, y + 20, row.name, bold=True))
        for lane in row_lanes:
            for bar in lane:
                parts += _bar(bar, y, scale, begun=bar.start <= minute_now)
            y += _LANE
        y += _GAP
    if 0 <= minute_now <= until:
        x = scale.x(minute_now)
        parts.append(f'<path d="M{x:.1f} {_TOP - 8} V{high:.0f}" stroke-width="4"/>')
    return _svg(parts, high, title)


def _in_lanes(bars: Iterable[Bar]) -> list[list[Bar]]:
    """Lay bars that would cover each other into lanes, first come first."""
    lanes: list[list[Bar]] = []
    for bar in sorted(bars, key=lambda one: (one.start, one.late)):
        free = next((lane for lane in lanes if lane[-1].late <= bar.start), None)
        if free is None:
            lanes.append([bar])
        else:
            free.append(bar)
    return lanes or [[]]


def _hours(scale: _Scale, high: float, name_day: Callable[[dt.date], str]) -> Iterator[str]:
    """Draw full hours, as many as can be read; midnight carries the day."""
    hours = scale.until / 60
    step = next((one for one in _STEPS_H if hours / one <= _MOST_TICKS), _STEPS_H[-1])
    moment = scale.start.replace(minute=0, second=0, microsecond=0)
    moment += dt.timedelta(hours=-(moment.hour % min(step, 24)))
    while (minute := (moment - scale.start) / dt.timedelta(minutes=1)) <= scale.until:
        if minute >= 0:
            x = scale.x(minute)
            label = f"{moment:%H:%M}" if moment.hour else name_day(moment.date())
            yield f'<path d="M{x:.1f} {_TOP - 8} V{high:.0f}" stroke-width="1" opacity="0.45"/>'
            yield _text(x - 16, _TOP - 14, label)
        moment += dt.timedelta(hours=step)


def _bar(bar: Bar, y: float, scale: _Scale, *, begun: bool) -> Iterator[str]:
    left, likely, late = (scale.x(minute) for minute in (bar.start, bar.likely, bar.late))
    if late > likely:
        yield _box(likely, late, y, "url(#late)")
    yield _box(left, max(left + 2, likely), y, "currentColor" if begun else "none")
    room = (likely - left - 4) / _SIGN_WIDE
    label = next((one for one in (bar.label, bar.short) if one and len(one) <= room), None)
    if label:
        yield _text(left + 4, y + 20, label, light=begun)


def _box(left: float, right: float, y: float, fill: str) -> str:
    return (
        f'<rect x="{left:.1f}" y="{y + 3:.0f}" width="{right - left:.1f}" height="22" '
        f'stroke-width="2" fill="{fill}"/>'
    )


def _text(x: float, y: float, text: str, *, bold: bool = False, light: bool = False) -> str:
    weight = ' font-weight="bold"' if bold else ""
    fill = "#fff" if light else "currentColor"
    return (
        f'<text x="{x:.1f}" y="{y:.1f}" {_FONT} font-size="15"{weight} fill="{fill}" '
        f'stroke="none">{escape(visible(text))}</text>'
    )


def _svg(parts: Iterable[str], high: float, title: str) -> str:
    hatch = (
        '<defs><pattern id="late" width="7" height="7" patternUnits="userSpaceOnUse" '
        'patternTransform="rotate(45)"><path d="M0 0 V7" stroke="currentColor" stroke-width="2.4"/>'
        "</pattern></defs>"
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDE:.0f} {high:.0f}" '
        f'role="img" aria-label="{escape(visible(title), {chr(34): "&quot;"})}">{hatch}'
        f'<g fill="none" stroke="currentColor">{"".join(parts)}</g></svg>'
    )
