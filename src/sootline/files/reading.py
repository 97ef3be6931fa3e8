"""Can this file be read at all, and what JSON does it hold?

A file from outside may be missing, huge, damaged or hostile. It is read whole or refused whole;
memory stays bounded by the size of the file and by the number of values that are admitted.
"""

import json
import math
import re
from collections import Counter
from collections.abc import Iterator
from itertools import islice
from pathlib import Path

from sootline.core.basis import BadInputError, Fault, MessageId

MAX_BYTES = 20 * 1024 * 1024
MAX_DEPTH = 40
MAX_VALUES = 500_000
MAX_DIGITS = 300

MAX_FAULTS = 1000

_SHOWN = 40
_HALF_CHARACTER = re.compile("[\ud800-\udfff]")
_Keys = tuple[str | int, ...]


class _Refused(str):
    """A number as it stood in the text, which no sum may be done with."""

    __slots__ = ()


class _DoubledNames(dict[str, object]):
    """An object in which a name stood more than once."""

    doubled: tuple[str, ...] = ()


def read_text(path: Path, *, max_bytes: int = MAX_BYTES) -> str:
    """Return a file's text, without its byte order mark.

    Args:
        max_bytes: the most that is read [byte].

    Raises:
        BadInputError: as read_bytes does, or the file is no UTF-8.
    """
    return _decoded(read_bytes(path, max_bytes=max_bytes), path)


def read_bytes(path: Path, *, max_bytes: int = MAX_BYTES) -> bytes:
    """Return a file's content.

    Args:
        max_bytes: the most that is read [byte].

    Raises:
        BadInputError: the file is missing, closed to this user, a folder, or too large.
    """
    try:
        with path.open("rb") as file:
            content = file.read(max_bytes + 1)
    except FileNotFoundError:
        raise _refusal(str(path), "files.read.missing", file=str(path)) from None
    except PermissionError:
        raise _refusal(str(path), "files.read.denied", file=str(path)) from None
    except IsADirectoryError:
        raise _refusal(str(path), "files.read.folder", file=str(path)) from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise _refusal(str(path), "files.read.failed", file=str(path), reason=reason) from None
    if len(content) > max_bytes:
        limit = f"{max_bytes / 1024 / 1024:g} MiB"
        raise _refusal(str(path), "files.read.too_large", file=str(path), limit=limit)
    return content


def read_json(path: Path) -> object:
    """Return what a JSON file holds.

    Raises:
        BadInputError: as read_text and parse_json do.
    """
    return parse_json(read_text(path), name=path.name)


def parse_json(text: str, *, name: str) -> object:
    """Return what a JSON text holds, in plain dicts, lists, texts and finite numbers.

    Args:
        name: what faults call the text (a file's name).

    Raises:
        BadInputError: no JSON, or JSON with doubled names, numbers without end, half characters,
            too many values or too deep a nesting. Faults of values are listed together, up to
            MAX_FAULTS of them.
    """
    if not text.strip():
        raise _refusal(name, "files.json.empty")
    # Signs are counted before anything is built, because each value that does not fit costs more
    # than a kilobyte to report. A comma inside a text counts too; a real job is far from the limit.
    count = sum(map(text.count, ",{["))
    if count > MAX_VALUES:
        limit = str(MAX_VALUES)
        raise _refusal(name, "files.json.too_many", count=str(count), limit=limit)
    value = _loaded(text, name)
    faults = tuple(islice(_faults_in(value, name), MAX_FAULTS))
    if faults:
        raise BadInputError(faults)
    return value


def _refusal(place: str, message: str, **values: str) -> BadInputError:
    return BadInputError([_fault(place, message, **values)])


def _fault(place: str, message: str, **values: str) -> Fault:
    return Fault(place=place, message=MessageId(message), values=tuple(values.items()))


def _decoded(content: bytes, path: Path) -> str:
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = str(content.count(b"\n", 0, error.start) + 1)
        byte = f"0x{content[error.start]:02X}"
        raise _refusal(
            f"{path.name}:{line}", "files.read.not_utf8", file=str(path), line=line, byte=byte
        ) from None


def _loaded(text: str, name: str) -> object:
    try:
        return json.loads(
            text,
            object_pairs_hook=_object,
            parse_constant=_Refused,
            parse_int=_whole,
            parse_float=_decimal,
        )
    except json.JSONDecodeError as error:
        near = ascii(text[max(0, error.pos - 12) : error.pos + 12])
        place = f"{name}:{error.lineno}:{error.colno}"
        raise _refusal(place, "files.json.syntax", near=near) from None
    except RecursionError:
        raise _refusal(name, "files.json.depth", limit=str(MAX_DEPTH)) from None


def _object(pairs: list[tuple[str, object]]) -> dict[str, object]:
    plain = dict(pairs)
    if len(plain) == len(pairs):
        return plain
    marked = _DoubledNames(plain)
    counts = Counter(key for key, _ in pairs)
    marked.doubled = tuple(key for key, count in counts.items() if count > 1)
    return marked


def _whole(digits: str) -> object:
    return int(digits) if len(digits) <= MAX_DIGITS else _Refused(digits)


def _decimal(digits: str) -> object:
    number = float(digits)
    return number if math.isfinite(number) and len(digits) <= MAX_DIGITS else _Refused(digits)


def _faults_in(root: object, name: str) -> Iterator[Fault]:
    """Walk every value without recursion; a place is spelled out only for a fault."""
    waiting: list[tuple[object, _Keys]] = [(root, ())]
    while waiting:
        value, keys = waiting.pop()
        for message, values in _wrong_with(value, len(keys)):
            yield _fault(_place(name, keys), message, **values)
        if len(keys) < MAX_DEPTH:
            waiting.extend(_inside(value, keys))


def _wrong_with(value: object, depth: int) -> Iterator[tuple[str, dict[str, str]]]:
    """Say what is wrong with one value itself, apart from what it holds."""
    if isinstance(value, _Refused):
        yield "files.json.number", {"value": _shortened(value), "limit": str(MAX_DIGITS)}
    elif isinstance(value, str) and _HALF_CHARACTER.search(value):
        yield "files.json.half_character", {}
    elif isinstance(value, dict | list) and depth >= MAX_DEPTH:
        yield "files.json.depth", {"limit": str(MAX_DEPTH)}
    if isinstance(value, _DoubledNames):
        for key in value.doubled:
            yield "files.json.duplicate", {"key": _shortened(key)}
    if isinstance(value, dict) and any(_HALF_CHARACTER.search(key) for key in value):
        yield "files.json.half_character", {}


def _inside(value: object, keys: _Keys) -> list[tuple[object, _Keys]]:
    """Return the values one level further in, the first of them last: the walk takes from there."""
    if isinstance(value, dict):
        return [(inner, (*keys, key)) for key, inner in reversed(value.items())]
    if isinstance(value, list):
        return [(inner, (*keys, at)) for at, inner in reversed(tuple(enumerate(value)))]
    return []


def _place(name: str, keys: _Keys) -> str:
    path = "".join(f"[{key}]" if isinstance(key, int) else f".{_shortened(key)}" for key in keys)
    return f"{name}: {path.removeprefix('.')}" if path else name


def _shortened(text: str) -> str:
    return text if len(text) <= _SHOWN else f"{text[:_SHOWN]}..."
