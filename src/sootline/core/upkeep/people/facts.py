"""When was a person measured, what has changed since, and how long does a size take to come?"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated

from sootline.core.basis import DateSpan, MappingForm, MemberId, UnreadableValueError


@dataclass(frozen=True, kw_only=True)
class Measured:
    """When one person was measured, by whom, and what came of it.

    Args:
        measures: by dimension; one not named stays as it was.
    """

    member: MemberId
    on: DateSpan
    by: str = ""
    measures: Annotated[tuple[tuple[str, str], ...], MappingForm()] = ()


class Change(StrEnum):
    """Why measures may no longer hold, as the person or an officer said; no more is asked."""

    BODY = "body"
    LONG_ABSENCE = "long-absence"
    PATTERN = "pattern"
    COMPLAINT = "complaint"


@dataclass(frozen=True, kw_only=True)
class Changed:
    """A change somebody reported."""

    member: MemberId
    change: Change
    on: DateSpan


@dataclass(frozen=True, kw_only=True)
class LeadTime:
    """How long an order takes from the order to the hook, as a supplier or experience says.

    Args:
        what: a place of the outfit ("set", "gloves") or a kind ("hood").
        shortest, longest: in weeks.
        source: who said so, when.
    """

    what: str
    shortest: int
    longest: int
    source: str = ""

    def __post_init__(self) -> None:
        if not 0 <= self.shortest <= self.longest:
            raise UnreadableValueError("fitting.lead_time", what=self.what)
