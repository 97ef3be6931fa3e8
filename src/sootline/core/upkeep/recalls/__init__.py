"""Recalls: whom a notice means, who has it, and what is left to see."""

from sootline.core.upkeep.recalls.closing import Closure, close_notice
from sootline.core.upkeep.recalls.fields import Field, FieldFit
from sootline.core.upkeep.recalls.lots import Fit, LotSpan
from sootline.core.upkeep.recalls.matching import Affected, Match, match_notice
from sootline.core.upkeep.recalls.notices import Action, Notice, NoticeClosed, Sighting, Step
from sootline.core.upkeep.recalls.tracing import Whereabouts, fitted_into, trace_whereabouts

__all__ = [
    "Action",
    "Affected",
    "Closure",
    "Field",
    "FieldFit",
    "Fit",
    "LotSpan",
    "Match",
    "Notice",
    "NoticeClosed",
    "Sighting",
    "Step",
    "Whereabouts",
    "close_notice",
    "fitted_into",
    "match_notice",
    "trace_whereabouts",
]
