"""What is a line for a reader? A message with its values, said in the reader's language."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby

from sootline.core.basis import Finding, Ground


@dataclass(frozen=True, kw_only=True)
class Said:
    """One line.

    Args:
        values: what its sentence names.
    """

    message: str
    values: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, kw_only=True)
class Resting:
    """Findings in a row that rest on one ground, which is named once."""

    ground: Ground
    findings: tuple[Finding, ...]


def resting(findings: Iterable[Finding]) -> tuple[Resting, ...]:
    """Put findings that follow each other and rest on the same ground together."""
    runs = groupby(findings, key=lambda one: one.ground)
    return tuple(Resting(ground=ground, findings=tuple(run)) for ground, run in runs)


def said(message: str, **values: object) -> Said:
    """Make a line from plain values, each kept as text."""
    return Said(message=message, values=tuple((key, str(value)) for key, value in values.items()))
