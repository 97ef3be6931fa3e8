"""Is a recall done with: has everything possible been seen, everything affected been dealt with?

A notice stays open until a named person has read every possible component by eye and could tell,
and until something was recorded as done with every affected one. What could not be read stays
possible; what is disposed of is recorded only.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from sootline.core.basis import Bearing, ComponentId, Finding, finding
from sootline.core.exposure.calls import Answer
from sootline.core.upkeep.recalls.matching import Affected, Match
from sootline.core.upkeep.recalls.notices import Action, Notice, Sighting


@dataclass(frozen=True, kw_only=True)
class Closure:
    """How far a notice has come.

    Args:
        unseen: possible components nobody has read by eye, or nobody could tell by eye.
        waiting: affected components, by match or by eye, with nothing recorded as done.
        found: possible components that a person found to be affected.
        cleared: possible components that a person found not to be meant.
        reasons: who saw what, and what is still to do.
    """

    unseen: tuple[ComponentId, ...]
    waiting: tuple[ComponentId, ...]
    found: tuple[ComponentId, ...]
    cleared: tuple[ComponentId, ...]
    reasons: tuple[Finding, ...]

    @property
    def closed(self) -> bool:
        """Whether nothing is left to see or to do."""
        return not self.unseen and not self.waiting


def close_notice(
    notice: Notice,
    matches: Iterable[Match],
    sightings: Sequence[Sighting],
    actions: Sequence[Action],
) -> Closure:
    """Say what is left of a notice; sightings and actions of other notices are passed over."""
    seen = _latest(notice, sightings)
    done = {one.component for one in actions if one.notice == notice.id}
    affected: list[ComponentId] = []
    groups: dict[Answer, list[ComponentId]] = {answer: [] for answer in Answer}
    for match in matches:
        if match.affected is Affected.AFFECTED:
            affected.append(match.component)
        elif match.affected is Affected.POSSIBLE:
            groups[_answer(seen, match.component)].append(match.component)
    waiting = tuple(one for one in (*affected, *groups[Answer.YES]) if one not in done)
    return Closure(
        unseen=tuple(groups[Answer.UNKNOWN]),
        waiting=waiting,
        found=tuple(groups[Answer.YES]),
        cleared=tuple(groups[Answer.NO]),
        reasons=_reasons(notice, seen, len(groups[Answer.UNKNOWN]), len(waiting)),
    )


def _latest(notice: Notice, sightings: Sequence[Sighting]) -> dict[ComponentId, Sighting]:
    """Keep the last sighting of each component; at one moment the one that holds it counts."""
    order = [Answer.NO, Answer.UNKNOWN, Answer.YES]
    mine = (one for one in sightings if one.notice == notice.id)
    in_turn = sorted(mine, key=lambda one: (one.at, order.index(one.affected)))
    return {one.component: one for one in in_turn}


def _answer(seen: Mapping[ComponentId, Sighting], component: ComponentId) -> Answer:
    sighting = seen.get(component)
    return sighting.affected if sighting else Answer.UNKNOWN


def _reasons(
    notice: Notice, seen: Mapping[ComponentId, Sighting], unseen: int, waiting: int
) -> tuple[Finding, ...]:
    said = [
        finding(
            Bearing.NOTES,
            f"recall.seen.{one.affected}",
            notice.ground,
            component=component,
            by=one.by,
            at=one.at.isoformat(timespec="minutes"),
            read=one.read or "-",
        )
        for component, one in seen.items()
    ]
    if unseen:
        said.append(finding(Bearing.REQUIRES, "recall.open.unseen", notice.ground, n=unseen))
    if waiting:
        said.append(finding(Bearing.REQUIRES, "recall.open.waiting", notice.ground, n=waiting))
    if not unseen and not waiting:
        said.append(finding(Bearing.NOTES, "recall.closed", notice.ground))
    return tuple(said)
