"""What is asked, without blame, where something told later does not fit what was reported before?

The record asks by itself, from its entries; this is for a desk that keeps reports alone.
"""

from collections.abc import Sequence

from sootline.core.basis import Bearing, Confidence, EditionId, Ground, MemberId, RuleId, finding
from sootline.core.gear import Component
from sootline.core.ledger import component
from sootline.core.ledger.lives import Question
from sootline.tasks.desk import Report


def does_not_fit(piece: Component, before: Sequence[Report], told: Report) -> Question:
    """Return the one question about a piece.

    Args:
        before: what was reported so far, the newest last.
        told: what came later and was refused.
    """
    last = next((one for one in reversed(before) if piece.id in one.about), None)
    by = [one.by for one in (last, told) if one is not None and one.by]
    people = tuple(MemberId(one) for one in dict.fromkeys(by))
    held = "_held" if piece.state.open_holds else ""
    times = sorted(_when(one) for one in (last, told) if one is not None)
    ground = Ground(
        rule=RuleId("ledger.fold"),
        edition=EditionId("statement"),
        source=", ".join(people) or "-",
        confidence=Confidence.STATED,
    )
    asked = finding(
        Bearing.ASKS,
        f"ledger.ask.{'disagree' if len(people) > 1 else 'unfitting'}{held}",
        ground,
        item=piece.id,
        people=", ".join(people) or "-",
        kinds="noted",
        first=times[0],
        last=times[-1],
        stage=piece.state.stage,
        causes=", ".join(hold.cause for hold in piece.state.open_holds),
        deciders=", ".join(dict.fromkeys(hold.decider for hold in piece.state.open_holds)),
    )
    return Question(item=component(piece.id), finding=asked, entries=(), people=people)


def _when(report: Report) -> str:
    moment = report.told.made if report.told else report.at
    return moment.isoformat(timespec="minutes")
