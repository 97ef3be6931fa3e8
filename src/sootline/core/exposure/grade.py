"""What was every component exposed to, how well is that known, and on what ground?"""

import datetime as dt
from collections import defaultdict
from collections.abc import Iterator, Sequence

from sootline.core.basis import CallId, ContaminantId, Ground
from sootline.core.exposure.calls import Call, Presence, Remark
from sootline.core.exposure.grades import SMOKE, Exposure, Statement, bearing_of, say, stated
from sootline.core.exposure.hazards import state_hazards
from sootline.core.exposure.layers import soak_through
from sootline.core.exposure.smoke import AIR_REQUIRED, grade_smoke, trigger
from sootline.core.exposure.wearing import Wearing, find_wearings
from sootline.core.exposure.zones import closest_zone
from sootline.core.gear.components import Component
from sootline.core.rulebook.contaminants import ContaminantRule, Knowledge
from sootline.core.rulebook.rules import Rulebook

_DENIABLE = (Knowledge.SUSPECTED, Knowledge.UNKNOWN)


def grade_exposure(
    *,
    components: Sequence[Component],
    calls: Sequence[Call],
    rulebook: Rulebook,
    contaminants: Sequence[ContaminantRule],
    now: dt.datetime | None = None,
) -> tuple[Exposure, ...]:
    """List every reason to think that something is, or is not, on a component.

    The order of people and remarks within a call changes no grade. Training burns count as calls,
    guests' gear as gear.

    Args:
        now: surveys signed later are not known yet; None knows all of them.
    """
    wearings = find_wearings(components, calls)
    return grade_wearings(
        wearings=wearings,
        components=components,
        rulebook=rulebook,
        contaminants=contaminants,
        now=now,
    )


def grade_wearings(
    *,
    wearings: Sequence[Wearing],
    components: Sequence[Component],
    rulebook: Rulebook,
    contaminants: Sequence[ContaminantRule],
    now: dt.datetime | None,
) -> tuple[Exposure, ...]:
    """Grade wearings that are already listed; see grade_exposure."""
    wet = frozenset(rule.id for rule in contaminants if rule.disinfect)
    inside = trigger(rulebook, AIR_REQUIRED)
    by_call: dict[CallId, list[Wearing]] = defaultdict(list)
    for wearing in wearings:
        by_call[wearing.call.id].append(wearing)
    return tuple(
        exposure
        for at_call in by_call.values()
        for exposure in _at_call(at_call, components, wet, inside, now)
    )


def _at_call(
    at_call: list[Wearing],
    components: Sequence[Component],
    wet: frozenset[ContaminantId],
    inside: Ground | None,
    now: dt.datetime | None,
) -> Iterator[Exposure]:
    said: dict[int, tuple[Statement, ...]] = {}
    for wearing in at_call:
        yield from _from_people(wearing, said, inside, now)
        yield from _from_remarks(wearing)
    denied = {
        (wearing.component.id, remark.contaminant)
        for wearing in at_call
        for remark in wearing.remarks
        if _denies(remark)
    }
    for exposure in soak_through(at_call, components, wet):
        answered = exposure.knowledge is Knowledge.SUSPECTED
        if not (answered and (exposure.component, exposure.contaminant) in denied):
            yield exposure


def _from_people(
    wearing: Wearing,
    said: dict[int, tuple[Statement, ...]],
    inside: Ground | None,
    now: dt.datetime | None,
) -> Iterator[Exposure]:
    """Put on a component what its wearers met; each wearer is graded once for all they wore."""
    denied = {remark.contaminant for remark in wearing.remarks if _denies(remark)}
    for presence in wearing.people:
        if id(presence) not in said:
            said[id(presence)] = _met(wearing.call, presence, inside, now)
        for statement in said[id(presence)]:
            if statement.contaminant not in denied or not _deniable(statement):
                yield _exposure(wearing, statement)


def _met(
    call: Call, presence: Presence, inside: Ground | None, now: dt.datetime | None
) -> tuple[Statement, ...]:
    return (grade_smoke(call, presence, inside), *state_hazards(call, presence, now))


def _denies(remark: Remark) -> bool:
    """Whether somebody named says of this component that something is not on it."""
    return remark.knowledge is Knowledge.ABSENT and remark.said_by is not None


def _deniable(statement: Statement) -> bool:
    """Whether a look at one component can answer it: not a survey, nor smoke one stood in."""
    if statement.finding.ground.rule == "statement.survey":
        return False
    return statement.knowledge in _DENIABLE or statement.contaminant != SMOKE


def _exposure(wearing: Wearing, statement: Statement) -> Exposure:
    return Exposure(
        component=wearing.component.id,
        contaminant=statement.contaminant,
        knowledge=statement.knowledge,
        call=wearing.call.id,
        zone=closest_zone(wearing.people),
        finding=statement.finding,
    )


def _from_remarks(wearing: Wearing) -> Iterator[Exposure]:
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
            finding=say(
                bearing_of(knowledge),
                "remark.absent_unnamed" if unnamed else f"remark.{knowledge}",
                stated("remark", remark.said_by),
                wearing.call,
                contaminant=remark.contaminant,
                said_by=remark.said_by,
                detail=remark.detail,
            ),
        )
