"""What do a component's wearers, and those who looked at it, say of it?"""

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from sootline.core.basis import ContaminantId, Ground
from sootline.core.exposure.calls import Remark
from sootline.core.exposure.grades import Exposure, Statement, bearing_of, stated, tell
from sootline.core.exposure.hazards import state_hazards
from sootline.core.exposure.smoke import grade_smoke
from sootline.core.exposure.wearing import Wearing
from sootline.core.exposure.zones import closest_zone
from sootline.core.rulebook.contaminants import Knowledge


@dataclass(frozen=True, kw_only=True)
class Grading:
    """By what a call is graded.

    Args:
        wet: contaminants that soak through cloth.
        firm: contaminants that only a decider can rule on, whatever a look shows.
        inside: the rule by which entering counts as exposure, where a text has one.
        now: surveys signed later are not known yet; None knows all of them.
        said: what each person of a call met, graded once for all they wore.
    """

    wet: frozenset[ContaminantId]
    firm: frozenset[ContaminantId]
    inside: Ground | None
    now: dt.datetime | None
    said: dict[int, tuple[Statement, ...]] = field(default_factory=dict)


def from_people(wearing: Wearing, grading: Grading) -> Iterator[Exposure]:
    """Put on a component what its wearers met, less what a named look at it can answer."""
    for presence in wearing.people:
        met = grading.said.get(id(presence))
        if met is None:
            met = (
                grade_smoke(wearing.call, presence, grading.inside),
                *state_hazards(wearing.call, presence, grading.now),
            )
            grading.said[id(presence)] = met
        for statement in met:
            if _stands(statement, grading) or not is_denied(statement.contaminant, wearing.remarks):
                yield _exposure(wearing, statement)


def _stands(statement: Statement, grading: Grading) -> bool:
    """Whether a look at the component leaves it as it is; a "don't know" it always answers."""
    decided = statement.contaminant in grading.firm
    return statement.firm or (decided and statement.knowledge is not Knowledge.UNKNOWN)


def is_denied(contaminant: ContaminantId, remarks: Iterable[Remark]) -> bool:
    """Whether somebody named looked at the component and says that it is not there."""
    return any(
        remark.contaminant == contaminant
        and remark.knowledge is Knowledge.ABSENT
        and remark.said_by is not None
        for remark in remarks
    )


def _exposure(wearing: Wearing, statement: Statement) -> Exposure:
    return Exposure(
        component=wearing.component.id,
        contaminant=statement.contaminant,
        knowledge=statement.knowledge,
        call=wearing.call.id,
        zone=closest_zone(wearing.people),
        finding=statement.finding,
    )


def from_remarks(wearing: Wearing) -> Iterator[Exposure]:
    """Take what somebody noticed on the component itself; an unnamed "absent" is unknown."""
    for remark in wearing.remarks:
        if remark.contaminant is None:
            continue
        unnamed = remark.knowledge is Knowledge.ABSENT and not remark.said_by
        knowledge = Knowledge.UNKNOWN if unnamed else remark.knowledge
        yield Exposure(
            component=wearing.component.id,
            contaminant=remark.contaminant,
            knowledge=knowledge,
            call=wearing.call.id,
            zone=closest_zone(wearing.people),
            reached_skin=remark.reached_skin,
            finding=tell(
                bearing_of(knowledge),
                "exposure.remark.absent_unnamed" if unnamed else f"exposure.remark.{knowledge}",
                stated("remark", remark.said_by),
                wearing.call,
                contaminant=remark.contaminant,
                said_by=remark.said_by,
                detail=remark.detail,
            ),
        )
