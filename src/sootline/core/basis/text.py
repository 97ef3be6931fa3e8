"""How does a value look in a document? As one text, or as a mapping, never as its inner fields.

The hooks below have the names and shapes that the document library looks for; they are plain
mappings, so that nothing here imports it.
"""

from collections.abc import Callable, Mapping
from typing import Any, ClassVar, Self

from sootline.core.basis.errors import UnreadableValueError

Schema = dict[str, Any]


def document_form(read: Callable[[Any], Any], write: Callable[[Any], Any]) -> Schema:
    """Say how the document library reads and writes a value."""
    return {
        "type": "function-plain",
        "function": {"type": "no-info", "function": read},
        "serialization": {"type": "function-plain", "function": write},
    }


class TextForm:
    """A value that stands in a document as one text, read by `parse` and written by `str`."""

    text_example: ClassVar[str] = ""

    @classmethod
    def parse(cls, text: str) -> Self:
        """Read the value from its text; each type says how."""
        raise NotImplementedError

    @classmethod
    def read(cls, value: object) -> Self:
        """Read the value from a document.

        Raises:
            UnreadableValueError: the document holds something other than a text.
        """
        if isinstance(value, cls):
            return value
        if not isinstance(value, str):
            raise UnreadableValueError(
                "basis.text.expected", text=repr(value), example=cls.text_example
            )
        return cls.parse(value)

    @classmethod
    def __get_pydantic_core_schema__(cls, _source: object, _handler: object) -> Schema:
        return document_form(cls.read, str)

    @classmethod
    def __get_pydantic_json_schema__(cls, _schema: object, _handler: object) -> Schema:
        return {"type": "string", "examples": [cls.text_example]}


class MappingForm:
    """Marks (name, value) pairs that stand in a document as a mapping of names to values."""

    def __get_pydantic_core_schema__(self, _source: object, _handler: object) -> Schema:
        return document_form(_read_pairs, dict)

    def __get_pydantic_json_schema__(self, _schema: object, _handler: object) -> Schema:
        return {"type": "object", "additionalProperties": {"type": ["string", "number"]}}


def _read_pairs(value: object) -> tuple[tuple[str, str], ...]:
    if not isinstance(value, Mapping) or not all(
        isinstance(entry, str | int | float) and not isinstance(entry, bool)
        for entry in value.values()
    ):
        raise UnreadableValueError("basis.mapping.expected", text=repr(value))
    return tuple((str(name), str(entry)) for name, entry in value.items())
