"""Which question holds a piece because of what somebody did or found, beyond what rules hold?

Source: common practice, no published source; that home and public laundries are no place for this
gear is what trade articles report of an early edition of the care standard.
"""

import datetime as dt
from dataclasses import replace

from sootline.core.basis import Bearing, Confidence, EditionId, Ground, MessageId, RuleId, finding
from sootline.core.gear import Hold
from sootline.core.rulebook import Decider

_ESCALATE_H = 24


def washed_elsewhere(*, by: str, said: str, at: dt.datetime) -> Hold:
    """Return the hold that asks how a piece was washed, and what it needs now."""
    return _hold("washed-elsewhere", by=by, said=said, at=at)


def found_at_check(*, by: str, said: str, at: dt.datetime) -> Hold:
    """Return the hold that asks what becomes of a piece after what was found at its check."""
    return _hold("check", by=by, said=said, at=at)


def said_by_hand(*, by: str, said: str, at: dt.datetime, decider: Decider) -> Hold:
    """Return the hold that somebody puts on a piece, in that person's words."""
    hold = _hold("by-hand", by=by, said=said, at=at)
    deputy = Decider.CHIEF if decider is Decider.SAFETY_OFFICER else Decider.SAFETY_OFFICER
    return replace(hold, decider=decider, deputy=deputy)


def _hold(topic: str, *, by: str, said: str, at: dt.datetime) -> Hold:
    words = topic.replace("-", "_")
    ground = Ground(
        rule=RuleId(f"asked.{words}"),
        edition=EditionId("practice"),
        source="common practice, no published source",
        confidence=Confidence.PRACTICE,
    )
    reason = finding(Bearing.HOLDS, f"care.held.{words}", ground, by=by, said=said or "-")
    return Hold(
        cause=f"{topic}/{at:%y%m%d-%H%M}",
        question=MessageId(f"care.hold.{words}"),
        decider=Decider.GEAR_OFFICER,
        deputy=Decider.SAFETY_OFFICER,
        escalate_after_h=_ESCALATE_H,
        reason=reason,
    )
