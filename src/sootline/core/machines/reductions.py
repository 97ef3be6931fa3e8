"""What was done against soil, and what do studies report of the same kind of step?

An entry stays an entry: published ranges stand beside it, never multiplied with one another and
never netted to one figure. A wipe of a surface, a whole piece of cloth and a bench test measure
different things. A range may lie above what was there before.
"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import Confidence, DateSpan, MessageId, UnreadableValueError


class Act(StrEnum):
    """What was done."""

    ON_SCENE = "on-scene"
    LAUNDERING = "laundering"


class Method(StrEnum):
    """How it was done."""

    WET_SOAP = "wet-soap"
    WATER = "water"
    DRY_BRUSH = "dry-brush"
    AIR = "air"
    MACHINE_WASH = "machine-wash"
    SOAK = "soak"


class Measured(StrEnum):
    """What a study measured; figures of different kinds are never put together."""

    WIPE = "wipe"
    BULK = "bulk"
    BENCH = "bench"


@dataclass(frozen=True, kw_only=True)
class Published:
    """What one study reports.

    Args:
        substances: what was looked for, in the study's own grouping.
        low, high: how much lower it was afterwards [%]; below zero is an increase.
        remark: message id of what a reader must know beside the figure.
    """

    id: str
    act: Act
    method: Method
    measured: Measured
    substances: str
    low: float
    high: float
    source: str
    confidence: Confidence
    remark: MessageId | None = None

    def __post_init__(self) -> None:
        if not self.low <= self.high <= 100:
            raise UnreadableValueError(
                "machine.reduction.order", value=f"{self.low:g}, {self.high:g}"
            )


@dataclass(frozen=True, kw_only=True)
class Reductions:
    """The table of what studies report, and what nobody can claim whatever was done."""

    published: tuple[Published, ...]
    not_claimed: tuple[MessageId, ...]


@dataclass(frozen=True, kw_only=True)
class ReductionEvent:
    """One step on one component, as recorded.

    Args:
        on: when.
        who: who did it.
    """

    act: Act
    method: Method
    on: DateSpan
    who: str = ""


@dataclass(frozen=True, kw_only=True)
class LabResult:
    """What a laboratory or a verification kit found on a machine, as it was reported to us.

    Args:
        text: the result in the laboratory's words; it is shown and not reckoned with.
    """

    on: DateSpan
    by: str
    text: str

    def __post_init__(self) -> None:
        if self.on == DateSpan() or not self.by.strip() or not self.text.strip():
            raise UnreadableValueError("machine.reduction.lab")


@dataclass(frozen=True, kw_only=True)
class ReductionLine:
    """One recorded step with everything published about that method."""

    event: ReductionEvent
    published: tuple[Published, ...]


@dataclass(frozen=True, kw_only=True)
class ReductionRecord:
    """All steps in the order of the days, and on the same page what cannot be claimed."""

    lines: tuple[ReductionLine, ...]
    results: tuple[LabResult, ...]
    not_claimed: tuple[MessageId, ...]


def lay_out_reductions(
    events: tuple[ReductionEvent, ...], results: tuple[LabResult, ...], table: Reductions
) -> ReductionRecord:
    """Put what was done beside what is published, step by step and never together."""
    lines = (
        ReductionLine(event=event, published=_about(event, table))
        for event in sorted(events, key=lambda event: str(event.on))
    )
    return ReductionRecord(lines=tuple(lines), results=results, not_claimed=table.not_claimed)


def _about(event: ReductionEvent, table: Reductions) -> tuple[Published, ...]:
    return tuple(
        one for one in table.published if one.act is event.act and one.method is event.method
    )
