"""What does a job say about riding: fit limits, duties, masks, loans, try-ons?

Limits of fit and crew minimums are the department's own; nothing here has a usual value.
"""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from sootline.core.basis import (
    ComponentId,
    DateSpan,
    KindId,
    MemberId,
    MinuteSpan,
    Moment,
    UnreadableValueError,
    require_offset,
)
from sootline.core.exposure.calls import Answer
from sootline.core.gear import Element

ENSEMBLE = (
    Element.COAT,
    Element.TROUSERS,
    Element.HOOD,
    Element.GLOVES,
    Element.BOOTS,
    Element.HELMET,
    Element.MASK,
)


@dataclass(frozen=True, kw_only=True)
class SizesWorn:
    """Which sizes a person of a size may also wear, where sizes are words."""

    measure: str
    sizes: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class FitRule:
    """How far may a spare differ from a person, in one dimension of one element?

    Args:
        dimension: as in the sizes of pieces and the measures of people ("chest").
        least: the piece less the measure, at the least; -1 is one smaller.
        most: the same at the most; 2 is two larger.
        unit: of the dimension, as people say it ("in").
        also: sizes in words that fit besides the very same word.
    """

    element: Element
    dimension: str
    least: Decimal = Decimal(0)
    most: Decimal = Decimal(0)
    unit: str = ""
    also: tuple[SizesWorn, ...] = ()

    def __post_init__(self) -> None:
        if self.least > self.most:
            text = f"{self.dimension} {self.least}..{self.most}"
            raise UnreadableValueError("riding.fit.reversed", text=text)


@dataclass(frozen=True, kw_only=True)
class CrewMinimum:
    """How many interior-qualified people a crew needs; crew "" is a department of one crew."""

    crew: str = ""
    interior: int


@dataclass(frozen=True, kw_only=True)
class Duty:
    """What a member may do tonight, and whether the member is here."""

    member: MemberId
    interior: Answer = Answer.UNKNOWN
    away: bool = False


class MaskState(StrEnum):
    """Where a breathing-apparatus mask stands; its own records are kept elsewhere."""

    USABLE = "usable"
    WITH_TECHNICIAN = "with-technician"
    UNKNOWN = "unknown"


@dataclass(frozen=True, kw_only=True)
class Mask:
    """A mask as cross-referenced here.

    Args:
        owner: whose it is; None is a spare.
        holder: to whom it is handed out.
        back: when the technician said it is back; None is no time given.
    """

    id: ComponentId
    owner: MemberId | None = None
    holder: MemberId | None = None
    size: str | None = None
    state: MaskState = MaskState.UNKNOWN
    back: Moment | None = None

    def __post_init__(self) -> None:
        require_offset(self.back)


@dataclass(frozen=True, kw_only=True)
class Loan:
    """Pieces of another department on their way.

    Args:
        arrives: when they are promised.
        latest: when they are here at the latest; None is as promised.
    """

    components: tuple[ComponentId, ...]
    lender: str = ""
    arrives: Moment
    latest: Moment | None = None

    def __post_init__(self) -> None:
        require_offset(self.arrives, self.latest)
        if self.latest is not None and self.latest < self.arrives:
            raise UnreadableValueError("riding.loan.reversed", text=self.latest.isoformat())


@dataclass(frozen=True, kw_only=True)
class TryOn:
    """Whether a newly issued piece was tried on; unsigned, it is not for interior work.

    Args:
        signed_by: who watched and signed; None is nobody yet.
    """

    component: ComponentId
    member: MemberId
    signed_by: str | None = None


@dataclass(frozen=True, kw_only=True)
class ExchangeFacts:
    """A member brings one piece back and takes another, in one step.

    Args:
        worn: when the returned piece was last worn; unknown where nobody wrote it down.
        washed: when it had its last advanced cleaning.
    """

    member: MemberId
    returns: ComponentId
    takes: ComponentId
    worn: DateSpan = DateSpan()
    washed: DateSpan = DateSpan()


@dataclass(frozen=True, kw_only=True)
class Back:
    """When a component is back on the hook, counted from now, if all goes as planned."""

    component: ComponentId
    when: MinuteSpan


@dataclass(frozen=True, kw_only=True)
class RidingFacts:
    """Everything a job says about riding beyond gear and members.

    Args:
        needs: the elements without which nobody rides.
        outside_needs: the same for those who stay outside; None is the same elements.
        fit: the department's limits; an element without any fits nobody for certain.
        one_size: elements that fit everybody.
        mixed_sets: whether coat and trousers of different spare sets may be worn together.
        also_needed: component kinds without which an element is not whole (ear-neck-cover).
        warn_months_left: warn when a piece taken has fewer months left; None warns of none.
    """

    needs: tuple[Element, ...] = ENSEMBLE
    outside_needs: tuple[Element, ...] | None = None
    fit: tuple[FitRule, ...] = ()
    one_size: tuple[Element, ...] = ()
    mixed_sets: bool = False
    also_needed: tuple[KindId, ...] = ()
    crews: tuple[CrewMinimum, ...] = ()
    duties: tuple[Duty, ...] = ()
    masks: tuple[Mask, ...] = ()
    loans: tuple[Loan, ...] = ()
    try_ons: tuple[TryOn, ...] = ()
    exchanges: tuple[ExchangeFacts, ...] = ()
    warn_months_left: int | None = None
