"""What is a result as plain JSON?

- A dataclass becomes an object of its fields, by their names; an interval of minutes too.
- A finding becomes bearing, message id, values as an object, ground, and `text`: the sentence in
  the reader's language. A fault becomes place, message id, values and `text`.
- A quantity and a span of dates become their text, as entered; a limit its side and its text
  ("at most 105 °F / 40 °C").
- An enum becomes its value, a date or time its ISO text, an exact decimal or fraction its text.
- A mapping becomes an object, any other collection a list; a set is sorted first.
"""

import datetime as dt
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from decimal import Decimal
from enum import Enum
from fractions import Fraction
from pathlib import PurePath
from typing import TypeAlias

from sootline.core.basis import DateSpan, Fault, Finding, Limit, Quantity
from sootline.words import say

Json: TypeAlias = "bool | int | float | str | list[Json] | dict[str, Json] | None"
_AS_TEXT = (Quantity, Limit, DateSpan, Decimal, Fraction, PurePath)


def plain(value: object, *, lang: str = "en") -> Json:
    """Return a value as JSON knows it.

    Args:
        lang: the language of the sentences beside findings and faults.

    Raises:
        TypeError: a kind of value that has no plain form (a mistake of ours).
    """
    if isinstance(value, Finding | Fault):
        return _said(value, lang)
    if isinstance(value, Mapping):
        return {str(plain(key)): plain(inner, lang=lang) for key, inner in value.items()}
    if isinstance(value, tuple | list):
        return [plain(inner, lang=lang) for inner in value]
    if isinstance(value, set | frozenset):
        return sorted((plain(inner, lang=lang) for inner in value), key=str)
    return _single(value, lang)


def _single(value: object, lang: str) -> Json:
    """Return the plain form of one value that is no collection."""
    if isinstance(value, Enum):
        return plain(value.value)
    if value is None or isinstance(value, bool | int | float | str):
        return value
    if isinstance(value, dt.date | dt.time):
        return value.isoformat()
    return str(value) if isinstance(value, _AS_TEXT) else _fields(value, lang)


def _said(value: Finding | Fault, lang: str) -> Json:
    """Return a finding or a fault with its sentence beside it."""
    given: Json = dict(value.values)
    return _fields(value, lang) | {
        "values": given,
        "text": say(value.message, value.values, lang=lang),
    }


def _fields(value: object, lang: str) -> dict[str, Json]:
    if not is_dataclass(value) or isinstance(value, type):
        raise TypeError(f"no plain form for {type(value).__name__}")
    return {part.name: plain(getattr(value, part.name), lang=lang) for part in fields(value)}
