"""After-wash check and rebuild: by whom felt, of which set, what comes next."""

from sootline.core.rebuild.aftercheck import Verdict, judge_after_wash
from sootline.core.rebuild.assembly import Build, BuildVerdict, Built, Match, judge_build
from sootline.core.rebuild.checks import LEADS_TO, AfterWashCheck, Felt, Flaw, FlawFound, Next

__all__ = [
    "LEADS_TO",
    "AfterWashCheck",
    "Build",
    "BuildVerdict",
    "Built",
    "Felt",
    "Flaw",
    "FlawFound",
    "Match",
    "Next",
    "Verdict",
    "judge_after_wash",
    "judge_build",
]
