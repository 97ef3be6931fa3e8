"""A curve with its band, drawn so that no colour is needed: for paper and for a screen alike.

The likely line is solid, the band between earliest and late is hatched, a mark is dashed. The text
is SVG and takes its colour from what is around it.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor, log10
from xml.sax.saxutils import escape

from sootline.paper.signs import visible

_WIDE, _HIGH, _LEFT, _RIGHT, _TOP, _BOTTOM = 720.0, 400.0, 84.0, 16.0, 60.0, 64.0
_FONT = "font-family=\"'Atkinson Hyperlegible Next', sans-serif\""
_MOST_TICKS = 8

Point = tuple[float, float]


@dataclass(frozen=True, kw_only=True)
class Plot:
    """What is drawn.

    Args:
        title: above the plot, and what a reader who cannot see it is told.
        across, up: what the axes measure, with the unit.
        line: the likely curve.
        band: the lower and upper curve that the hatching lies between; empty is none.
        mark: a height with its name, drawn as a dashed line; None is none.
        here: a point with its name, drawn as a ring; None is none.
    """

    title: str
    across: str
    up: str
    line: Sequence[Point]
    band: tuple[Sequence[Point], Sequence[Point]] = ((), ())
    mark: tuple[float, str] | None = None
    here: tuple[Point, str] | None = None


@dataclass(frozen=True, kw_only=True)
class _Axes:
    right: float
    top: float

    def x(self, value: float) -> float:
        return _LEFT + (_WIDE - _LEFT - _RIGHT) * value / self.right

    def y(self, value: float) -> float:
        return _HIGH - _BOTTOM - (_HIGH - _TOP - _BOTTOM) * value / self.top

    def path(self, points: Iterable[Point]) -> str:
        return " ".join(f"{self.x(x):.1f},{self.y(y):.1f}" for x, y in points)


def draw_plot(plot: Plot) -> str:
    """Return the plot as SVG; both axes begin at zero."""
    here = [plot.here[0]] if plot.here else []
    every = [*plot.line, *plot.band[0], *plot.band[1], *here]
    heights = [y for _, y in every] + ([plot.mark[0]] if plot.mark else [])
    axes = _Axes(
        right=_round_up(max((x for x, _ in every), default=1.0)),
        top=_round_up(max(heights, default=1.0)),
    )
    parts = [*_frame(plot, axes)]
    if plot.band[0]:
        around = [*plot.band[0], *reversed(plot.band[1])]
        parts.append(f'<polygon points="{axes.path(around)}" fill="url(#band)" stroke="none"/>')
    parts.append(f'<polyline points="{axes.path(plot.line)}" stroke-width="3"/>')
    if plot.mark:
        height, label = plot.mark
        y = axes.y(height)
        parts.append(
            f'<path d="M{_LEFT} {y:.1f} H{_WIDE - _RIGHT}" stroke-width="2" '
            f'stroke-dasharray="9 6"/>'
        )
        parts.append(_text(_LEFT + 8, y - 6, label))
    if plot.here:
        parts.extend(_ring(axes, *plot.here))
    return _svg(parts, plot.title)


def _ring(axes: _Axes, point: Point, label: str) -> Iterator[str]:
    x, y = axes.x(point[0]), axes.y(point[1])
    yield f'<circle cx="{x:.1f}" cy="{y:.1f}" r="8" stroke-width="4"/>'
    yield _text(x - 14, y + 20, label, bold=True, anchor="end")


def _frame(plot: Plot, axes: _Axes) -> Iterator[str]:
    bottom, right = _HIGH - _BOTTOM, _WIDE - _RIGHT
    yield _text(0, 20, plot.title, bold=True)
    yield _text(0, _TOP - 16, plot.up)
    yield _text(right, _HIGH - 8, plot.across, anchor="end")
    yield f'<path d="M{_LEFT} {_TOP} V{bottom} H{right}" stroke-width="2"/>'
    for value in _ticks(axes.right):
        x = axes.x(value)
        yield f'<path d="M{x:.1f} {bottom} v6" stroke-width="2"/>'
        yield _text(x, bottom + 24, f"{value:g}", anchor="middle")
    for value in _ticks(axes.top):
        y = axes.y(value)
        yield f'<path d="M{_LEFT} {y:.1f} H{right}" stroke-width="1" opacity="0.35"/>'
        yield _text(_LEFT - 8, y + 5, f"{value:g}", anchor="end")


def _round_up(value: float) -> float:
    """Return the end of an axis: a whole number of its steps."""
    step = _step(value)
    return max(step, ceil(value / step - 1e-9) * step)


def _step(value: float) -> float:
    """Return steps of 1, 2 or 5 times a power of ten, few enough to be read."""
    rough = max(value, 1e-9) / _MOST_TICKS
    power = 10.0 ** floor(log10(rough))
    return next(power * times for times in (1, 2, 5, 10) if power * times >= rough * (1 - 1e-9))


def _ticks(end: float) -> list[float]:
    step = _step(end)
    return [step * number for number in range(round(end / step) + 1)]


def _text(x: float, y: float, text: str, *, bold: bool = False, anchor: str = "start") -> str:
    weight = ' font-weight="bold"' if bold else ""
    return (
        f'<text x="{x:.1f}" y="{y:.1f}" {_FONT} font-size="15"{weight} text-anchor="{anchor}" '
        f'fill="currentColor" stroke="none">{escape(visible(text))}</text>'
    )


def _svg(parts: Iterable[str], title: str) -> str:
    hatch = (
        '<defs><pattern id="band" width="7" height="7" patternUnits="userSpaceOnUse" '
        'patternTransform="rotate(45)"><path d="M0 0 V7" stroke="currentColor" '
        'stroke-width="1.4" opacity="0.6"/></pattern></defs>'
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDE:.0f} {_HIGH:.0f}" '
        f'role="img" aria-label="{escape(visible(title), {chr(34): "&quot;"})}">{hatch}'
        f'<g fill="none" stroke="currentColor">{"".join(parts)}</g></svg>'
    )
