"""What is a line for a reader? A message with its values, said in the reader's language."""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Said:
    """One line.

    Args:
        values: what its sentence names.
    """

    message: str
    values: tuple[tuple[str, str], ...] = ()


def said(message: str, **values: object) -> Said:
    """Make a line from plain values, each kept as text."""
    return Said(message=message, values=tuple((key, str(value)) for key, value in values.items()))
