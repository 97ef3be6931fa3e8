"""Which bytes stand for a document, whoever writes it down?

The subset of RFC 8785 that needs no ECMAScript numbers: objects with their names in UTF-16 order,
lists, texts, true, false, null and whole numbers below 2^53. Decimals and dates are texts.
"""

import json
import unicodedata
from collections.abc import Iterator, Mapping
from typing import TypeAlias

from sootline.core.basis import BadInputError, Fault, MessageId

Json: TypeAlias = "bool | int | str | list[Json] | dict[str, Json] | None"

LARGEST = 2**53 - 1
MOST_DEEP = 40

_write = json.JSONEncoder(ensure_ascii=False, separators=(",", ":")).encode
_write_sorted = json.JSONEncoder(ensure_ascii=False, separators=(",", ":"), sort_keys=True).encode


def _refuse(number: str) -> object:
    raise ValueError(number)


_read = json.JSONDecoder(parse_float=_refuse, parse_constant=_refuse).decode


def canonical(value: object, *, place: str = "document") -> str:
    """Return a document's one text: no spaces, names in UTF-16 order.

    Texts are written as they are; `entered` composes them first.

    Args:
        place: what faults call the document.

    Raises:
        BadInputError: with everything in it that has no canonical form.
    """
    faults = tuple(_faults(value, place, 0))
    if faults:
        raise BadInputError(faults)
    return _write(_ordered(value))


def entered(value: object) -> Json:
    """Return a document as it enters the record: every text and name in composed form (NFC).

    The same name in two spellings, "é" as one sign and as two, becomes one name.

    Raises:
        BadInputError: with everything in it that has no canonical form; two names of one object
            that become one are such a thing.
    """
    faults = (*_faults(value, "document", 0), *_meeting(value, "document"))
    if faults:
        raise BadInputError(faults)
    return _composed(value)


def read_canonical(text: str, *, place: str = "document") -> Json:
    """Return what a canonical text holds.

    Raises:
        BadInputError: it is no JSON, or not the one text of what it holds: a name that stands
            twice, a space, another order.
    """
    try:
        value: Json = json.loads(text)
    except (json.JSONDecodeError, RecursionError):
        raise BadInputError([_fault(place, "ledger.canonical.no_json")]) from None
    if canonical(value, place=place) != text:
        raise BadInputError([_fault(place, "ledger.canonical.other_form")])
    return value


def read_strictly(text: str) -> dict[str, Json] | None:
    """Return the object of a text whose names are plain, or None where it is not its one text.

    For headers, lines and frames, whose names are ASCII: plain order is that of UTF-16 there, and
    a verifier that reads a million of them cannot walk each by hand.
    """
    try:
        value = _read(text)
        same = isinstance(value, dict) and _write_sorted(value) == text
    except (ValueError, RecursionError):
        return None
    return value if same else None


def _faults(value: object, place: str, depth: int) -> Iterator[Fault]:
    if depth > MOST_DEEP:
        yield _fault(place, "ledger.canonical.depth", limit=str(MOST_DEEP))
    elif isinstance(value, Mapping):
        for key, inner in value.items():
            yield from _name_faults(key, place)
            yield from _faults(inner, f"{place}.{key}", depth + 1)
    elif isinstance(value, list | tuple):
        for at, inner in enumerate(value):
            yield from _faults(inner, f"{place}[{at}]", depth + 1)
    else:
        yield from _single_faults(value, place)


def _single_faults(value: object, place: str) -> Iterator[Fault]:
    if isinstance(value, str):
        if _half(value):
            yield _fault(place, "ledger.canonical.half_character")
    elif isinstance(value, int):
        if abs(value) > LARGEST:
            yield _fault(place, "ledger.canonical.large", value=str(value), limit=str(LARGEST))
    elif isinstance(value, float):
        yield _fault(place, "ledger.canonical.fraction", value=repr(value))
    elif value is not None:
        yield _fault(place, "ledger.canonical.kind", kind=type(value).__name__)


def _name_faults(key: object, place: str) -> Iterator[Fault]:
    if not isinstance(key, str):
        yield _fault(place, "ledger.canonical.name", name=repr(key))
    elif _half(key):
        yield _fault(place, "ledger.canonical.half_character")


def _meeting(value: object, place: str) -> Iterator[Fault]:
    """Find names of one object that differ only in how their signs are composed."""
    if isinstance(value, Mapping):
        names = [unicodedata.normalize("NFC", str(key)) for key in value]
        for name in sorted({name for name in names if names.count(name) > 1}):
            yield _fault(place, "ledger.canonical.one_name", name=name)
        for key, inner in value.items():
            yield from _meeting(inner, f"{place}.{key}")
    elif isinstance(value, list | tuple):
        for at, inner in enumerate(value):
            yield from _meeting(inner, f"{place}[{at}]")


def _composed(value: object) -> Json:
    if isinstance(value, Mapping):
        return {unicodedata.normalize("NFC", key): _composed(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [_composed(inner) for inner in value]
    if isinstance(value, str):
        return unicodedata.normalize("NFC", value)
    assert value is None or isinstance(value, int)  # anything else is a fault
    return value


def _ordered(value: object) -> object:
    if isinstance(value, Mapping):
        names = sorted(value, key=lambda name: str(name).encode("utf-16-be"))
        return {name: _ordered(value[name]) for name in names}
    if isinstance(value, list | tuple):
        return [_ordered(inner) for inner in value]
    return value


def _half(text: str) -> bool:
    return not text.isascii() and any("\ud800" <= sign <= "\udfff" for sign in text)


def _fault(place: str, message: str, **values: str) -> Fault:
    return Fault(place=place, message=MessageId(message), values=tuple(values.items()))
