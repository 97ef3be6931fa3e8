"""What did a named person feel and see on a component after drying?"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    ComponentId,
    Confidence,
    EditionId,
    Ground,
    MessageId,
    Moment,
    RuleId,
    UnreadableValueError,
    require_offset,
)
from sootline.core.exposure.calls import Answer


class Next(StrEnum):
    """What happens to a component after its check, the least work first."""

    BACK = "back"
    CHECK = "check"
    DRY_ON = "dry-on"
    REPAIR = "repair"
    WASH_AGAIN = "wash-again"
    HOLD = "hold"
    OUT = "out"


class Flaw(StrEnum):
    """Something seen or felt that keeps a component off the hook."""

    DAMP = "damp"
    SOILED = "soiled"
    MOULD = "mould"
    HOOK_SNAG = "hook-snag"
    TORN = "torn"
    CHARRED = "charred"
    DYE_CHANGE = "dye-change"
    SEAM_OPEN = "seam-open"
    TRIM_LIFTED = "trim-lifted"
    CLOSURE = "closure"
    HARDWARE = "hardware"
    CUFF = "cuff"
    LIGHT_THROUGH = "light-through"
    LEAK = "leak"
    LINER_PULLED = "liner-pulled"
    STIFF = "stiff"
    CRACKED = "cracked"
    SOLE_WORN = "sole-worn"
    LABEL_UNREADABLE = "label-unreadable"


# Common practice, no published source: what a flaw leads to until a person decides otherwise.
# Soil is washed before it is mended; what may have lost strength or tightness is held.
LEADS_TO: dict[Flaw, Next] = {
    Flaw.DAMP: Next.DRY_ON,
    Flaw.SOILED: Next.WASH_AGAIN,
    Flaw.MOULD: Next.WASH_AGAIN,
    Flaw.HOOK_SNAG: Next.REPAIR,
    Flaw.TORN: Next.REPAIR,
    Flaw.CHARRED: Next.HOLD,
    Flaw.DYE_CHANGE: Next.HOLD,
    Flaw.SEAM_OPEN: Next.REPAIR,
    Flaw.TRIM_LIFTED: Next.REPAIR,
    Flaw.CLOSURE: Next.REPAIR,
    Flaw.HARDWARE: Next.REPAIR,
    Flaw.CUFF: Next.REPAIR,
    Flaw.LIGHT_THROUGH: Next.HOLD,
    Flaw.LEAK: Next.HOLD,
    Flaw.LINER_PULLED: Next.HOLD,
    Flaw.STIFF: Next.HOLD,
    Flaw.CRACKED: Next.HOLD,
    Flaw.SOLE_WORN: Next.REPAIR,
    Flaw.LABEL_UNREADABLE: Next.HOLD,
}

PRACTICE = Ground(
    rule=RuleId("rebuild.after_wash"),
    edition=EditionId("practice"),
    source="common practice, no published source",
    confidence=Confidence.PRACTICE,
)


@dataclass(frozen=True, kw_only=True)
class Felt:
    """One touch point and whether it felt dry."""

    point: MessageId
    dry: Answer


@dataclass(frozen=True, kw_only=True)
class FlawFound:
    """One flaw and where it is.

    Args:
        place: on an outline ("coat-front/left-cuff"), a touch point, or in somebody's words.
        photo: the name of a kept photo of it: the hash of its bytes.
    """

    flaw: Flaw
    place: str = ""
    note: str = ""
    photo: str = ""


@dataclass(frozen=True, kw_only=True)
class AfterWashCheck:
    """One component as one named person found it.

    Args:
        by: who felt it; a check by nobody is no check.
        felt: touch points answered; those of the kind that are missing are still to be felt.
    """

    component: ComponentId
    by: str
    at: Moment
    felt: tuple[Felt, ...] = ()
    flaws: tuple[FlawFound, ...] = ()

    def __post_init__(self) -> None:
        require_offset(self.at)
        if not self.by.strip():
            raise UnreadableValueError("rebuild.check.nobody", component=self.component)

    @property
    def ground(self) -> Ground:
        """What rests on this check."""
        return Ground(
            rule=RuleId("rebuild.check"),
            edition=EditionId("statement"),
            source=f"{self.by}, {self.at.isoformat(timespec='minutes')}",
            confidence=Confidence.STATED,
        )
