"""What is running out, and what may no longer be used?"""

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from sootline.core.basis import (
    Bearing,
    Confidence,
    DateSpan,
    EditionId,
    Finding,
    Ground,
    Reading,
    RuleId,
    UnreadableValueError,
    add_months,
    finding,
)

_SOON_MONTHS = 1


@dataclass(frozen=True, kw_only=True)
class Supply:
    """One thing in store, one row for each expiry.

    Args:
        count, minimum: in the unit; the minimum is the department's own for all of the name
            together.
        expires: the first day it may no longer be used; unknown is none on it.
        counted_by, counted: who counted it, and when.
    """

    id: str
    name: str
    count: int
    minimum: int = 0
    unit: str = ""
    expires: DateSpan = DateSpan()
    counted_by: str = ""
    counted: DateSpan = DateSpan()

    def __post_init__(self) -> None:
        if self.count < 0 or self.minimum < 0:
            raise UnreadableValueError("stores.count", name=self.name)


def judge_supplies(supplies: Iterable[Supply], today: dt.date) -> tuple[Finding, ...]:
    """Say what to order and what to take off the shelf, in the order of the store.

    What has expired under its earliest reading counts for nothing towards the minimum.
    """
    every = tuple(supplies)
    said: list[Finding] = []
    names: dict[str, None] = {}
    for one in every:
        said.extend(_expiry(one, today))
        names[one.name] = None
    for name in names:
        mine = [one for one in every if one.name == name]
        usable = sum(one.count for one in mine if not _expired(one, today))
        least = max(one.minimum for one in mine)
        if usable < least:
            named = {"name": name, "count": usable, "minimum": least, "unit": mine[0].unit or "-"}
            said.append(finding(Bearing.REQUIRES, "stores.below", _ground(mine[0]), **named))
    return tuple(said)


def _expiry(supply: Supply, today: dt.date) -> Iterator[Finding]:
    named = {"name": supply.name, "id": supply.id, "expires": supply.expires}
    if _expired(supply, today):
        yield finding(Bearing.FORBIDS, "stores.expired", _ground(supply), **named)
    elif supply.expires.reached(add_months(today, _SOON_MONTHS)) in (Reading.YES, Reading.POSSIBLY):
        yield finding(Bearing.WARNS, "stores.expires_soon", _ground(supply), **named)


def _expired(supply: Supply, today: dt.date) -> bool:
    return supply.expires.reached(today) in (Reading.YES, Reading.POSSIBLY)


def _ground(supply: Supply) -> Ground:
    return Ground(
        rule=RuleId("stores.count"),
        edition=EditionId("statement"),
        source=f"{supply.counted_by or '?'}, {supply.counted}",
        confidence=Confidence.STATED,
    )
