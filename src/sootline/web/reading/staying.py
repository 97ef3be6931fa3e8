"""How long does a contractor keep gear, as a picture: how many of the pieces are still away?"""

from collections.abc import Iterator

from sootline.core.upkeep.contractor import Turnaround
from sootline.paper.plots import Plot, Point, draw_plot
from sootline.words import say

_WHOLE = 100.0


def draw_turnaround(turnaround: Turnaround, provider: str, lang: str) -> str:
    """Draw the share of pieces still away, day by day, as steps; no point stands for all."""
    return draw_plot(
        Plot(
            title=say("year.contractor.plot", {"provider": provider}, lang=lang),
            across=say("year.contractor.plot_across", lang=lang),
            up=say("year.contractor.plot_up", lang=lang),
            line=list(_steps(turnaround)),
        )
    )


def _steps(turnaround: Turnaround) -> Iterator[Point]:
    height = _WHOLE
    yield (0.0, height)
    for days, left in turnaround.curve:
        yield (float(days), height)
        height = left * _WHOLE
        yield (float(days), height)
