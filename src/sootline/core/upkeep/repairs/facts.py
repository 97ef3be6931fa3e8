"""What was quoted, decided and done about a repair?"""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from sootline.core.basis import (
    ComponentId,
    Confidence,
    DateSpan,
    EditionId,
    Ground,
    Moment,
    RuleId,
    UnreadableValueError,
    require_offset,
)
from sootline.core.upkeep.repairs.works import Work


@dataclass(frozen=True, kw_only=True)
class Price:
    """A price, never without its currency, its time and where it was read.

    Args:
        amount: in whole and parts of the currency; never negative.
        currency: its sign of three letters ("USD").
        on: when it was quoted or paid; unknown is said, not guessed.
        source: a quote's number, an invoice, a list.
    """

    amount: Decimal
    currency: str
    on: DateSpan = DateSpan()
    source: str = ""

    def __post_init__(self) -> None:
        letters = len(self.currency) == 3 and self.currency.isascii() and self.currency.isupper()
        if not self.amount.is_finite() or self.amount < 0 or not letters:
            raise UnreadableValueError("mend.price", text=str(self))

    def __str__(self) -> str:
        return f"{self.amount} {self.currency}"

    @property
    def ground(self) -> Ground:
        """What rests on this price."""
        return Ground(
            rule=RuleId("price"),
            edition=EditionId("statement"),
            source=f"{self.source or '?'}, {self.on}",
            confidence=Confidence.STATED,
        )


class Choice(StrEnum):
    """What a person decided."""

    REPAIR = "repair"
    RETIRE = "retire"
    KEEP = "keep"


@dataclass(frozen=True, kw_only=True)
class Decided:
    """A named person's decision."""

    choice: Choice
    by: str
    at: Moment
    why: str = ""

    def __post_init__(self) -> None:
        require_offset(self.at)
        if not self.by.strip():
            raise UnreadableValueError("mend.nobody", choice=self.choice)


@dataclass(frozen=True, kw_only=True)
class Repair:
    """One component's repair, from the finding to its return.

    Args:
        works: what is to be done.
        by: who would do it: a trained person of the station, or a provider.
        quote: what it would cost; None is not quoted.
        new: what the component costs new; None is not known.
        decided: None while nobody has decided.
        sent, due_back, back: as far as they have come; unknown is not yet.
        result: what was done, in the repairer's words.
    """

    component: ComponentId
    works: tuple[Work, ...]
    by: str = ""
    quote: Price | None = None
    new: Price | None = None
    decided: Decided | None = None
    sent: DateSpan = DateSpan()
    due_back: DateSpan = DateSpan()
    back: DateSpan = DateSpan()
    result: str = ""
