"""Could the dates a list gives have happened in that order?

Only what no reading of the dates allows is refused: a month may hide a possible order.
"""

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sootline.core.basis import DateSpan
from sootline.core.roster.columns import Field
from sootline.core.roster.events import EventKind, PastEvent

_BEFORE: dict[Field, tuple[Field, ...]] = {
    Field.IN_SERVICE: (Field.MADE,),
    Field.CLEANED: (Field.MADE, Field.IN_SERVICE),
    Field.INSPECTED: (Field.MADE,),
    Field.RETIRED: (Field.MADE, Field.IN_SERVICE, Field.CLEANED, Field.INSPECTED),
}
_MESSAGES = {
    Field.MADE: "roster.order.before_made",
    Field.IN_SERVICE: "roster.order.before_in_service",
    Field.CLEANED: "roster.order.retired_before",
    Field.INSPECTED: "roster.order.retired_before",
}
_NOT_BEFORE_ISSUE = (EventKind.EXPOSURE, EventKind.CLEANING, EventKind.ADVANCED_CLEANING)


@dataclass(frozen=True, kw_only=True)
class Disorder:
    """One date that cannot be.

    Args:
        at: which date of the line.
        row: the line.
        date: the date itself.
        message: message id of what is wrong.
        other: the date it clashes with; unknown for one that lies ahead.
    """

    at: Field
    row: int
    date: DateSpan
    message: str
    other: DateSpan = DateSpan()


def line_disorders(
    row: int, spans: Sequence[tuple[Field, DateSpan]], today: dt.date
) -> Iterator[Disorder]:
    """Return the dates of one line that lie ahead, or before what they must follow."""
    given = dict(spans)
    for at, span in spans:
        if _ahead(span, today):
            yield Disorder(at=at, row=row, date=span, message="roster.order.future")
        for earlier in _BEFORE.get(at, ()):
            other = given.get(earlier, DateSpan())
            if _surely_before(span, other):
                message = _MESSAGES[earlier]
                yield Disorder(at=at, row=row, date=span, message=message, other=other)


def event_disorders(
    events: Sequence[PastEvent], made: DateSpan, in_service: DateSpan, today: dt.date
) -> Iterator[Disorder]:
    """Return the events of one piece that lie ahead, before its beginning or after its end."""
    starts = [in_service, *(event.on for event in events if event.kind is EventKind.ISSUE)]
    ends = [event for event in events if event.kind is EventKind.RETIREMENT]
    for event in events:
        clashes = [("roster.order.before_made", made)] if _surely_before(event.on, made) else []
        if event.kind in _NOT_BEFORE_ISSUE:
            message = "roster.order.before_in_service"
            clashes += [(message, start) for start in starts if _surely_before(event.on, start)]
        message = "roster.order.after_retirement"
        clashes += [(message, end.on) for end in ends if _surely_before(end.on, event.on)]
        if _ahead(event.on, today):
            clashes.append(("roster.order.future", DateSpan()))
        for found, other in clashes:
            yield Disorder(at=Field.DATE, row=event.row, date=event.on, message=found, other=other)


def _ahead(span: DateSpan, today: dt.date) -> bool:
    return span.earliest is not None and span.earliest > today


def _surely_before(span: DateSpan, other: DateSpan) -> bool:
    """Whether a date lies before another under every reading of both."""
    return span.latest is not None and other.earliest is not None and span.latest < other.earliest
