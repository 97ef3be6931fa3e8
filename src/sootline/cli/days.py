"""How is a day known only in part said? Acted on at its earliest, shown to its latest."""

from datetime import date

from sootline.core.basis import DateSpan
from sootline.words import say


def day_said(span: DateSpan, today: date, lang: str) -> str:
    """Return a day, its earliest reading with its latest, or what little bounds it.

    Where every reading has passed no single day is printed: none of them is known to be the one.
    """
    first, last = span.earliest, span.latest
    values = {"first": str(first), "last": str(last)}
    if first is None:
        return say("due.day.unknown" if last is None else "due.day.by", values, lang=lang)
    if last is None:
        return say("due.day.from", values, lang=lang)
    if first == last:
        return str(first)
    return say("due.day.past" if last <= today else "due.day.span", values, lang=lang)
