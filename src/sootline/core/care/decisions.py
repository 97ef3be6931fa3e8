"""What must a component undergo, what does it bear, who must decide, and why?"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import ComponentId, ContaminantId, Finding, MessageId
from sootline.core.gear.kinds import WashMethod
from sootline.core.gear.state import Hold
from sootline.core.gear.terms import CareTerms
from sootline.core.rulebook.contaminants import Level


class Disinfection(StrEnum):
    """What an edition calls the reduction of microbes on this kind of surface."""

    SANITISE = "sanitise"
    DISINFECT = "disinfect"


class Fate(StrEnum):
    """What happens to the component next."""

    HOOK = "hook"
    LOOK = "look"
    WASH = "wash"
    HOLD = "hold"
    EVIDENCE = "evidence"
    OUT = "out"


@dataclass(frozen=True, kw_only=True)
class Due:
    """A cleaning that is due whatever happened at a call.

    Args:
        level: what is due.
        finding: why, with the rule, the date and its source.
    """

    component: ComponentId
    finding: Finding
    level: Level = Level.ADVANCED


@dataclass(frozen=True, kw_only=True)
class Step:
    """One step of preparation.

    Args:
        act: what to do.
        skipped: what goes wrong if it is skipped.
    """

    act: MessageId
    skipped: MessageId
    reason: Finding


@dataclass(frozen=True, kw_only=True)
class Separation:
    """With what a component may not share a drum, a sink or a cabinet.

    Args:
        hazards: the contaminants that set it apart; it shares only with the very same ones.
        alone: whether it shares with nothing at all.
    """

    hazards: tuple[ContaminantId, ...] = ()
    alone: bool = False


@dataclass(frozen=True, kw_only=True)
class Decision:
    """The decision on one component, with every reason.

    Args:
        level: the least it must undergo (floor).
        disinfection: asked for on top, in the adopted edition's word; None is not asked for.
        product: the product at hand whose label names its materials; None is no such product.
        contact_min: the contact time of that product [min]; None is not known.
        wash: the method it bears (ceiling), the hand instead of a machine for a routine cleaning;
            NONE when nothing may be done here.
        terms: limits, prohibitions and methods, value by value.
        sealed: bagged, labelled and not opened until its hold is ended.
        holds: open and ended ones, recorded and new, one for each cause.
        first: calls to make before anybody touches it.
        unknowns: what is not known and was not guessed.
    """

    component: ComponentId
    fate: Fate
    level: Level
    disinfection: Disinfection | None = None
    product: str | None = None
    contact_min: int | None = None
    wash: WashMethod
    terms: CareTerms
    separation: Separation = Separation()
    sealed: bool = False
    holds: tuple[Hold, ...] = ()
    preparation: tuple[Step, ...] = ()
    first: tuple[Finding, ...] = ()
    reasons: tuple[Finding, ...]
    unknowns: tuple[Finding, ...] = ()
    cautions: tuple[Finding, ...] = ()

    @property
    def open_holds(self) -> tuple[Hold, ...]:
        """The holds that nobody entitled has ended."""
        return tuple(hold for hold in self.holds if hold.open)
