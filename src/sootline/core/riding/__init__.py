"""Who can ride, in what, now and later; the only place that gives spares to people."""

from sootline.core.riding.answers import (
    CannotRide,
    CanRide,
    Coverage,
    CrewStatus,
    Gap,
    NearMiss,
    Riding,
    Worn,
)
from sootline.core.riding.arranging import Records, arrange
from sootline.core.riding.coverage import who_rides
from sootline.core.riding.exchange import (
    Exchange,
    ExchangeAnswer,
    Move,
    check_exchange,
    months_left,
)
from sootline.core.riding.facts import (
    Back,
    CrewMinimum,
    Duty,
    ExchangeFacts,
    FitRule,
    Loan,
    Mask,
    MaskState,
    RidingFacts,
    SizesWorn,
    TryOn,
)
from sootline.core.riding.fit import Dimension, Verdict, check_fit, failures
from sootline.core.riding.hand_outs import check_hand_out, give
from sootline.core.riding.outfits import slots_of
from sootline.core.riding.purchases import Purchase, Wanted, list_purchases
from sootline.core.riding.radio import say_coverage
from sootline.core.riding.situation import HandOut, Rider, Situation, Slot, Unit, clock
from sootline.core.riding.timeline import Step, timeline

__all__ = [
    "Back",
    "CanRide",
    "CannotRide",
    "Coverage",
    "CrewMinimum",
    "CrewStatus",
    "Dimension",
    "Duty",
    "Exchange",
    "ExchangeAnswer",
    "ExchangeFacts",
    "FitRule",
    "Gap",
    "HandOut",
    "Loan",
    "Mask",
    "MaskState",
    "Move",
    "NearMiss",
    "Purchase",
    "Records",
    "Rider",
    "Riding",
    "RidingFacts",
    "Situation",
    "SizesWorn",
    "Slot",
    "Step",
    "TryOn",
    "Unit",
    "Verdict",
    "Wanted",
    "Worn",
    "arrange",
    "check_exchange",
    "check_fit",
    "check_hand_out",
    "clock",
    "failures",
    "give",
    "list_purchases",
    "months_left",
    "say_coverage",
    "slots_of",
    "timeline",
    "who_rides",
]
