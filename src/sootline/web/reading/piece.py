"""How does one piece read: where it stands, what it needs, on what terms, and its life so far?"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from sootline.core.basis import ComponentId, Ground
from sootline.core.care import Decision, Fate
from sootline.core.gear import Component
from sootline.core.intervals import Due
from sootline.tasks.desk import Desk, Report
from sootline.tasks.list_due import DueItem, civil_day, in_order_of_pressing
from sootline.web.reading.clock import clock_of
from sootline.web.reading.marks import Mark, mark_of
from sootline.web.reading.needs import what_of
from sootline.web.reading.questions import piece_of, read_question
from sootline.web.reading.saying import Resting, Said, resting


@dataclass(frozen=True, kw_only=True)
class LimitLine:
    """One limit as one source states it; the first of a topic counts."""

    topic: str
    value: str
    ground: Ground
    counts: bool


@dataclass(frozen=True, kw_only=True)
class PieceShown:
    """The whole screen.

    Args:
        same_set: the other pieces of its set.
        typed: words of a label without a number.
        questions: what was written down of it and does not fit together.
    """

    component: Component
    mark: Mark
    what: tuple[Said, ...]
    decision: Decision
    limits: tuple[LimitLine, ...]
    typed: tuple[tuple[str, str], ...]
    due: tuple[DueItem, ...]
    same_set: tuple[Component, ...]
    reports: tuple[Report, ...]
    reasons: tuple[Resting, ...]
    unknowns: tuple[Resting, ...]
    cautions: tuple[Resting, ...]
    questions: tuple[Said, ...]


def read_piece(
    desk: Desk,
    piece: str,
    decisions: Mapping[ComponentId, Decision],
    dues: Iterable[Due],
    *,
    lang: str,
) -> PieceShown | None:
    """Lay one piece out; None where there is no such piece."""
    component = next((one for one in desk.job.components if one.id == piece), None)
    if component is None:
        return None
    decision = decisions[component.id]
    return PieceShown(
        component=component,
        mark=mark_of(component, decision),
        what=() if decision.fate is Fate.HOOK else what_of(decision),
        decision=decision,
        limits=tuple(
            LimitLine(topic=limit.topic, value=str(stated), ground=ground, counts=place == 0)
            for limit in decision.terms.limits
            for place, (stated, ground) in enumerate(limit.limits)
        ),
        typed=tuple(
            (limit.topic, voice.text) for limit in decision.terms.limits for voice in limit.as_typed
        ),
        due=in_order_of_pressing([(component, dues)], civil_day(desk.job), ()).items,
        same_set=tuple(
            one
            for one in desk.job.components
            if one.set is not None and one.set == component.set and one.id != component.id
        ),
        reasons=resting(decision.reasons),
        unknowns=resting(decision.unknowns),
        cautions=resting(decision.cautions),
        questions=tuple(
            read_question(one, clock_of(desk.job, lang))
            for one in desk.questions
            if piece_of(one) == piece
        ),
        reports=tuple(one for one in reversed(desk.reports) if piece in one.about),
    )
