"""Which plots show an outlook on drying, and how are they labelled?"""

from collections.abc import Iterator

from sootline.core.basis import Assumptions
from sootline.core.drying import RoomAir
from sootline.core.drying.curves import drying_curve, limit_by_humidity
from sootline.core.drying.for_plans import DryingOutlook, PlaceEstimate
from sootline.paper.plots import Plot, Point, draw_plot
from sootline.words import name, say

_HUMIDITIES = range(20, 100, 5)


def outlook_plots(
    outlook: DryingOutlook, air: RoomAir, assumptions: Assumptions, *, lang: str
) -> Iterator[tuple[str, str]]:
    """Yield each plot's name and its SVG: the room, then every estimate."""
    limits = limit_by_humidity(air, _HUMIDITIES, assumptions)
    if limits:
        plot = Plot(
            title=say("drying.plot.room", lang=lang),
            across=say("drying.plot.humidity", lang=lang),
            up=say("drying.plot.limit", lang=lang),
            line=[(point.humidity_percent, point.limit_kg_h) for point in limits],
            mark=(outlook.room.free_kg_h, say("drying.plot.free", lang=lang)),
            here=_tonight(outlook, air, lang),
        )
        yield "room", draw_plot(plot)
    for number, one in enumerate(outlook.places, 1):
        if one.estimate is not None:
            yield f"{number}-{one.cloth.value}", _curve(one, lang)


def _tonight(outlook: DryingOutlook, air: RoomAir, lang: str) -> tuple[Point, str]:
    limit = outlook.room.limit_kg_h
    assert limit is not None  # the curve would be empty too
    return (float(air.humidity.to("%")), limit), say("drying.plot.tonight", lang=lang)


def _curve(one: PlaceEstimate, lang: str) -> str:
    assert one.estimate is not None  # the caller asked
    points = drying_curve(one.estimate)
    called = {"place": one.place, "cloth": name("cloth", one.cloth.value, lang=lang)}
    return draw_plot(
        Plot(
            title=say("drying.plot.curve", called, lang=lang),
            across=say("drying.plot.hours", lang=lang),
            up=say("drying.plot.moisture", lang=lang),
            line=[(point.likely_h, point.percent) for point in points],
            band=(
                [(point.earliest_h, point.percent) for point in points],
                [(point.late_h, point.percent) for point in points],
            ),
        )
    )
