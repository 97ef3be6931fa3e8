"""Are these parts one element: all there, of one set, and the drag device led as it must be?

Shell, liner and drag device have identities of their own. That a liner has the right size says
nothing of whether it may go into another shell: only the maker can allow that, and a guide that is
silent allows nothing.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    Bearing,
    ComponentId,
    Confidence,
    DateSpan,
    EditionId,
    Finding,
    Ground,
    GuideId,
    KindId,
    MessageId,
    RuleId,
    finding,
)
from sootline.core.exposure.calls import Answer
from sootline.core.gear import Component, Element, Guide, Hold, find_kind
from sootline.core.gear.sets import NEEDED
from sootline.core.intervals import set_first_day_out
from sootline.core.intervals.dues import Due, register_ground
from sootline.core.rebuild.checks import PRACTICE
from sootline.core.rulebook import Decider

DRAG_DEVICE = KindId("drag-device")
_ESCALATE_AFTER_H = 24


class Match(StrEnum):
    """How the parts stand to one another."""

    OWN = "own"
    ALLOWED = "allowed"
    FORBIDDEN = "forbidden"
    UNKNOWN = "unknown"


@dataclass(frozen=True, kw_only=True)
class Build:
    """One element as somebody put it together.

    Args:
        parts: what is fitted together now.
        routed_by: who checked by name how the drag device is led; None is nobody.
        routed_right: whether that person found it led as the maker shows.
    """

    element: Element
    parts: tuple[Component, ...]
    routed_by: str | None = None
    routed_right: Answer = Answer.YES


@dataclass(frozen=True, kw_only=True)
class Built:
    """One element as it is recorded: which components somebody fitted together.

    Args:
        routed_by: who checked by name how the drag device is led; None is nobody.
        routed_right: whether that person found it led as the maker shows.
    """

    element: Element
    parts: tuple[ComponentId, ...]
    routed_by: str | None = None
    routed_right: Answer = Answer.YES


@dataclass(frozen=True, kw_only=True)
class BuildVerdict:
    """What is right and what is missing in one element.

    Args:
        lacking: kinds it needs and does not have.
        doubled: kinds it has more than once, where one belongs.
        first_day_out: by the earliest part that governs.
        holds: opened by what does not match; a person ends them.
    """

    match: Match
    lacking: tuple[KindId, ...]
    doubled: tuple[KindId, ...]
    routed: bool
    first_day_out: DateSpan
    holds: tuple[Hold, ...]
    reasons: tuple[Finding, ...]

    @property
    def complete(self) -> bool:
        """Whether all parts are there, matched, and the drag device was checked by name."""
        fits = self.match in (Match.OWN, Match.ALLOWED)
        return fits and not self.lacking and not self.doubled and self.routed


def judge_build(
    build: Build, guides: Mapping[GuideId, Guide], dues: Iterable[Due] = ()
) -> BuildVerdict:
    """Judge an element after rebuilding.

    Args:
        guides: makers' guides by id.
        dues: retirement dues of its parts.

    Raises:
        BadInputError: a part's kind is unknown.
    """
    fitted = Counter(part.kind for part in build.parts)
    needed = NEEDED.get(build.element, ())
    lacking = tuple(kind for kind in needed if not fitted[kind])
    doubled = tuple(kind for kind in needed if fitted[kind] > 1)
    match, matched = _match(build, guides)
    routing = tuple(_routing(build)) if fitted[DRAG_DEVICE] else ()
    routed = all(reason.bearing is Bearing.NOTES for reason in routing)
    reasons = [matched, *(_lacks(kind) for kind in lacking), *map(_doubled, doubled), *routing]
    kinds = {part.id: find_kind(part.kind) for part in build.parts}
    governed = [(kinds[due.component], due) for due in dues if due.component in kinds]
    return BuildVerdict(
        match=match,
        lacking=lacking,
        doubled=doubled,
        routed=routed,
        first_day_out=set_first_day_out(governed),
        holds=_holds(match, matched),
        reasons=tuple(reasons),
    )


def _match(build: Build, guides: Mapping[GuideId, Guide]) -> tuple[Match, Finding]:
    """Compare the sets of shell, liner and drag device; where they differ, ask the maker.

    What carries no identity of its own (suspenders, knee pads) may come from any set.
    """
    parts = [part for part in build.parts if find_kind(part.kind).governs_set]
    sets = {part.set for part in parts}
    named = ", ".join(f"{part.id} ({part.set or '?'})" for part in parts)
    ground = register_ground(parts[0].id, "set") if parts else PRACTICE
    if len(sets) <= 1 and None not in sets:
        return Match.OWN, finding(Bearing.NOTES, "rebuild.match.own", ground, parts=named)
    said = {_guide(part, guides) for part in parts}
    spoken = {guide.exchange for guide in said if guide is not None}
    titles = ", ".join(sorted(guide.title for guide in said if guide is not None)) or "-"
    cited = _cite(titles)
    if False in spoken:
        return Match.FORBIDDEN, finding(
            Bearing.FORBIDS, "rebuild.match.forbidden", cited, parts=named, guide=titles
        )
    if spoken == {True} and None not in said and _alike(parts):
        return Match.ALLOWED, finding(
            Bearing.NOTES, "rebuild.match.allowed", cited, parts=named, guide=titles
        )
    return Match.UNKNOWN, finding(
        Bearing.HOLDS, "rebuild.match.unknown", cited, parts=named, guide=titles
    )


def _guide(part: Component, guides: Mapping[GuideId, Guide]) -> Guide | None:
    return guides.get(part.guide) if part.guide is not None else None


def _alike(parts: Iterable[Component]) -> bool:
    """Whether shell and liner carry the same known style and size on their labels."""
    layers = [part for part in parts if part.kind != DRAG_DEVICE and part.size]
    styles = {part.label.style for part in layers}
    return len(styles) == 1 and None not in styles and len({part.size for part in layers}) == 1


def _holds(match: Match, reason: Finding) -> tuple[Hold, ...]:
    if match in (Match.OWN, Match.ALLOWED):
        return ()
    return (
        Hold(
            cause="liner-match",
            question=MessageId("rebuild.ask.match"),
            decider=Decider.GEAR_OFFICER,
            deputy=Decider.SAFETY_OFFICER,
            escalate_after_h=_ESCALATE_AFTER_H,
            reason=reason,
        ),
    )


def _lacks(kind: KindId) -> Finding:
    return finding(Bearing.REQUIRES, "rebuild.lacks", PRACTICE, kind=kind)


def _doubled(kind: KindId) -> Finding:
    return finding(Bearing.REQUIRES, "rebuild.doubled", PRACTICE, kind=kind)


def _routing(build: Build) -> Iterator[Finding]:
    """Say who found the drag device led how; a check of its own, apart from feeling it dry."""
    by = (build.routed_by or "").strip()
    if not by or build.routed_right is Answer.UNKNOWN:
        yield finding(Bearing.REQUIRES, "rebuild.routing", PRACTICE)
    elif build.routed_right is Answer.NO:
        yield finding(Bearing.REQUIRES, "rebuild.routed_wrong", PRACTICE, by=by)
    else:
        yield finding(Bearing.NOTES, "rebuild.routed_by", PRACTICE, by=by)


def _cite(titles: str) -> Ground:
    return Ground(
        rule=RuleId("guide.exchange"),
        edition=EditionId("guide"),
        source=titles,
        confidence=Confidence.STATED,
    )
