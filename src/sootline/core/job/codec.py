"""Is this document what it should be, and if not, what is wrong in every place?

The one file that imports the document library. Documents are read strictly: unknown fields,
wrong types and unreadable values are all listed, each with its place; nothing is dropped or
coerced.
"""

from collections.abc import Callable
from functools import cache
from typing import Any, TypeVar

from pydantic import ConfigDict, TypeAdapter, ValidationError
from pydantic_core import ErrorDetails

from sootline.core.basis import BadInputError, Fault, MessageId, UnreadableValueError

T = TypeVar("T")

_STRICT = ConfigDict(extra="forbid", strict=True, allow_inf_nan=False)
_MOST_FAULTS = 200
_MOST_TEXT = 120
_MESSAGES = {
    "missing": "job.missing",
    "unexpected_keyword_argument": "job.unknown_field",
    "enum": "job.not_one_of",
    "literal_error": "job.not_one_of",
    "json_invalid": "job.not_json",
    "recursion_loop": "job.not_json",
}


def _build(form: type[Any]) -> TypeAdapter[Any]:
    # A union takes the configuration, which then reaches every dataclass inside it.
    return TypeAdapter(form | None, config=_STRICT)  # type: ignore[arg-type]


_adapter: Callable[[type[Any]], TypeAdapter[Any]] = cache(_build)  # type: ignore[assignment]


def decode(form: type[T], text: str) -> T:
    """Read a document of this form from its JSON text.

    Args:
        form: the dataclass the document must fill.

    Raises:
        BadInputError: with every fault found, up to 200.
    """
    try:
        document: T | None = _adapter(form).validate_json(text)
    except ValidationError as error:
        details = error.errors(include_url=False)[:_MOST_FAULTS]
        raise BadInputError([fault for detail in details for fault in _faults(detail)]) from error
    if document is None:
        raise BadInputError([Fault(place="document", message=MessageId("job.empty"))])
    return document


def encode(form: type[T], document: T, *, indent: int | None = 2) -> str:
    """Write a document as JSON text, leaving out what is at its default."""
    return _adapter(form).dump_json(document, indent=indent, exclude_defaults=True).decode()


def schema(form: type[Any]) -> dict[str, Any]:
    """Return the JSON Schema (draft 2020-12) of the documents of this form."""
    described = _adapter(form).json_schema()
    document, _nothing = described.pop("anyOf")
    for definition in described["$defs"].values():
        for field in definition.get("properties", {}).values():
            if isinstance(field.get("default"), dict):
                del field["default"]
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **document, **described}


def _faults(detail: ErrorDetails) -> tuple[Fault, ...]:
    place = _place(detail["loc"])
    context = detail.get("ctx", {})
    carried = context.get("error")
    if isinstance(carried, BadInputError):
        return tuple(
            Fault(place=f"{place}.{fault.place}", message=fault.message, values=fault.values)
            for fault in carried.faults
        )
    if isinstance(carried, UnreadableValueError):
        return (Fault(place=place, message=carried.message, values=carried.values),)
    values = (("value", _short(detail["input"])), ("expected", str(context.get("expected", ""))))
    kind = detail["type"]
    if kind not in _MESSAGES:
        values = (("value", _short(detail["input"])), ("expected", kind.replace("_", " ")))
    return (
        Fault(place=place, message=MessageId(_MESSAGES.get(kind, "job.not_fit")), values=values),
    )


def _place(location: tuple[int | str, ...]) -> str:
    """Write a path as a reader would point at it: calls[0].people[2].zones."""
    path = "".join(f"[{step}]" if isinstance(step, int) else f".{step}" for step in location)
    return path.removeprefix(".") or "document"


def _short(value: object) -> str:
    text = value if isinstance(value, str) else repr(value)
    return text if len(text) <= _MOST_TEXT else f"{text[:_MOST_TEXT]}…"
