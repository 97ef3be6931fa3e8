"""What was found on a piece at its checks: what, where on its outline, which photo, by whom?"""

from collections.abc import Iterable
from dataclasses import dataclass

from sootline.core.rebuild import AfterWashCheck, Flaw
from sootline.web.reading.clock import Clock
from sootline.web.reading.outlines import FIGURES, Figure, Spot


@dataclass(frozen=True, kw_only=True)
class Found:
    """One check that found something.

    Args:
        flaws: what was found, all of it at one place.
        place: as it is kept; a spot of the figure has a name.
        figure: the outline; None where nobody chose a place on one.
        spot: where on it.
        photo: the name of a kept photo; blank is none.
    """

    by: str
    when: str
    flaws: tuple[Flaw, ...]
    place: str
    note: str
    photo: str
    figure: Figure | None
    spot: Spot | None


def read_findings(checks: Iterable[AfterWashCheck], clock: Clock) -> tuple[Found, ...]:
    """List the checks that found something."""
    return tuple(_found(check, clock) for check in checks if check.flaws)


def _found(check: AfterWashCheck, clock: Clock) -> Found:
    first = check.flaws[0]
    figure = FIGURES.get(first.place.partition("/")[0])
    spots = figure.spots if figure else ()
    return Found(
        by=check.by,
        when=clock.day(check.at),
        flaws=tuple(one.flaw for one in check.flaws),
        place=first.place,
        note=first.note,
        photo=first.photo,
        figure=figure,
        spot=next((one for one in spots if one.id == first.place), None),
    )
