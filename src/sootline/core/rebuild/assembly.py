"""Are these parts one element: all there, of one set, and the drag device led as it must be?

Shell, liner and drag device have identities of their own. That a liner has the right size says
nothing of whether it may go into another shell: only the maker can allow that, and a guide that is
silent allows nothing.
"""

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
    """

    element: Element
    parts: tuple[Component, ...]
    routed_by: str | None = None


@dataclass(frozen=True, kw_only=True)
class Built:
    """One element as it is recorded: which components somebody fitted together."""

    element: Element
    parts: tuple[ComponentId, ...]
    routed_by: str | None = None


@dataclass(frozen=True, kw_only=True)
class BuildVerdict:
    """What is right and what is missing in one element.

    Args:
        lacking: kinds it needs and does not have.
        first_day_out: by the earliest part that governs.
        holds: opened by what does not match; a person ends them.
    """

    match: Match
    lacking: tuple[KindId, ...]
    routed: bool
    first_day_out: DateSpan
    holds: tuple[Hold, ...]
    reasons: tuple[Finding, ...]

    @property
    def complete(self) -> bool:
        """Whether all parts are there, matched, and the drag device was checked by name."""
        fits = self.match in (Match.OWN, Match.ALLOWED)
        return fits and not self.lacking and self.routed


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
    fitted = {part.kind for part in build.parts}
    lacking = tuple(kind for kind in NEEDED.get(build.element, ()) if kind not in fitted)
    match, matched = _match(build, guides)
    routed = DRAG_DEVICE not in fitted or bool(build.routed_by and build.routed_by.strip())
    reasons = [matched, *(_lacks(kind) for kind in lacking), *_routing(build, routed)]
    kinds = {part.id: find_kind(part.kind) for part in build.parts}
    governed = [(kinds[due.component], due) for due in dues if due.component in kinds]
    return BuildVerdict(
        match=match,
        lacking=lacking,
        routed=routed,
        first_day_out=set_first_day_out(governed),
        holds=_holds(match, matched),
        reasons=tuple(reasons),
    )


def _match(build: Build, guides: Mapping[GuideId, Guide]) -> tuple[Match, Finding]:
    """Compare the sets its parts belong to, and ask the maker where they differ."""
    sets = {part.set for part in build.parts}
    named = ", ".join(f"{part.id} ({part.set or '?'})" for part in build.parts)
    ground = register_ground(build.parts[0].id, "set") if build.parts else PRACTICE
    if len(sets) <= 1 and None not in sets:
        return Match.OWN, finding(Bearing.NOTES, "rebuild.match.own", ground, parts=named)
    said = {_guide(part, guides) for part in build.parts if find_kind(part.kind).governs_set}
    spoken = {guide.exchange for guide in said if guide is not None}
    titles = ", ".join(sorted(guide.title for guide in said if guide is not None)) or "-"
    cited = _cite(titles)
    if False in spoken:
        return Match.FORBIDDEN, finding(
            Bearing.FORBIDS, "rebuild.match.forbidden", cited, parts=named, guide=titles
        )
    if spoken == {True} and None not in said and _alike(build):
        return Match.ALLOWED, finding(
            Bearing.NOTES, "rebuild.match.allowed", cited, parts=named, guide=titles
        )
    return Match.UNKNOWN, finding(
        Bearing.HOLDS, "rebuild.match.unknown", cited, parts=named, guide=titles
    )


def _guide(part: Component, guides: Mapping[GuideId, Guide]) -> Guide | None:
    return guides.get(part.guide) if part.guide is not None else None


def _alike(build: Build) -> bool:
    """Whether shell and liner carry the same known style and size on their labels."""
    layers = [part for part in build.parts if part.kind != DRAG_DEVICE and part.size]
    styles = {part.label.style for part in layers}
    return len(styles) == 1 and None not in styles and len({part.size for part in layers}) == 1


def _holds(match: Match, reason: Finding) -> tuple[Hold, ...]:
    if match in (Match.OWN, Match.ALLOWED):
        return ()
    return (
        Hold(
            cause="rebuild.match",
            question=MessageId("rebuild.ask.match"),
            decider=Decider.GEAR_OFFICER,
            deputy=Decider.SAFETY_OFFICER,
            escalate_after_h=_ESCALATE_AFTER_H,
            reason=reason,
        ),
    )


def _lacks(kind: KindId) -> Finding:
    return finding(Bearing.REQUIRES, "rebuild.lacks", PRACTICE, kind=kind)


def _routing(build: Build, routed: bool) -> Iterator[Finding]:
    if not routed:
        yield finding(Bearing.REQUIRES, "rebuild.routing", PRACTICE)
    elif build.routed_by:
        yield finding(Bearing.NOTES, "rebuild.routed_by", PRACTICE, by=build.routed_by)


def _cite(titles: str) -> Ground:
    return Ground(
        rule=RuleId("guide.exchange"),
        edition=EditionId("guide"),
        source=titles,
        confidence=Confidence.STATED,
    )
