"""What does a notice ask for, and what did people see and do about it?"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    ComponentId,
    Confidence,
    DateSpan,
    EditionId,
    Ground,
    KindId,
    Moment,
    RuleId,
    UnreadableValueError,
    require_offset,
)
from sootline.core.exposure.calls import Answer
from sootline.core.upkeep.recalls.lots import LotSpan


@dataclass(frozen=True, kw_only=True)
class Notice:
    """A recall or safety notice, as typed from its text; a list left empty says nothing.

    Args:
        issuer: who issued it (a maker, a certifier, a federal body).
        title: how it is cited.
        kinds: kinds of component it speaks of; at least one.
        makers: as labels write them.
        styles: as labels write them; a style counts as a whole word, "K4" is not "K4L".
        made: between which days, both included.
        lots, except_lots: which lots, and which of them not.
        stop_use: whether nobody may wear an affected component from now on.
    """

    id: str
    issuer: str
    title: str
    issued: DateSpan = DateSpan()
    kinds: tuple[KindId, ...]
    makers: tuple[str, ...] = ()
    styles: tuple[str, ...] = ()
    made: DateSpan = DateSpan()
    lots: tuple[LotSpan, ...] = ()
    except_lots: tuple[LotSpan, ...] = ()
    stop_use: bool = True

    def __post_init__(self) -> None:
        if not self.kinds:
            raise UnreadableValueError("recall.notice.no_kind", notice=self.id)

    @property
    def ground(self) -> Ground:
        """What a finding cites when it rests on this notice."""
        return Ground(
            rule=RuleId("recall.notice"),
            edition=EditionId("notice"),
            source=f"{self.issuer}: {self.title}",
            confidence=Confidence.STATED,
            in_force=None if self.issued == DateSpan() else self.issued,
        )


@dataclass(frozen=True, kw_only=True)
class Sighting:
    """One component as a named person read it by eye for one notice.

    Args:
        affected: whether the person found it to be one of those the notice means; unknown where
            nothing could be read, which leaves it possible.
        read: what the person read on it, as it stands there.
    """

    notice: str
    component: ComponentId
    by: str
    at: Moment
    affected: Answer
    read: str = ""

    def __post_init__(self) -> None:
        require_offset(self.at)
        if not self.by.strip():
            raise UnreadableValueError("recall.nobody", component=self.component)


@dataclass(frozen=True, kw_only=True)
class NoticeClosed:
    """A named person closed a notice: every possible component seen, every affected dealt with."""

    notice: str
    by: str
    at: Moment

    def __post_init__(self) -> None:
        require_offset(self.at)
        if not self.by.strip():
            raise UnreadableValueError("recall.nobody", component=self.notice)


class Step(StrEnum):
    """What was done with a component for a notice."""

    PULLED = "pulled"
    SENT_BACK = "sent-back"
    CORRECTED = "corrected"
    REPLACED = "replaced"
    GIVEN_UP = "given-up"


@dataclass(frozen=True, kw_only=True)
class Action:
    """What a named person did with one component for one notice."""

    notice: str
    component: ComponentId
    step: Step
    by: str
    at: Moment
    note: str = ""

    def __post_init__(self) -> None:
        require_offset(self.at)
        if not self.by.strip():
            raise UnreadableValueError("recall.nobody", component=self.component)
