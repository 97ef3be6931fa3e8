"""How does the answer to "who can ride, and what is where" read: crews, members, cells?"""

import datetime as dt
from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from sootline.core.basis import ComponentId, Finding, MemberId
from sootline.core.care import Decision
from sootline.core.gear import Component
from sootline.core.job.jobs import Job, Member
from sootline.core.riding import CannotRide, CanRide
from sootline.tasks.decide import Decided
from sootline.tasks.desk import Desk
from sootline.tasks.who_can_ride import WhoRides
from sootline.web.reading.clock import Clock
from sootline.web.reading.columns import Column, Group, groups_of, key_of
from sootline.web.reading.floor import Cell, Crew, Floor, Row, Spot
from sootline.web.reading.marks import Mark, mark_of, mark_of_mask
from sootline.web.reading.saying import Said, said

_MASK = "mask"


@dataclass(frozen=True, kw_only=True)
class _Facts:
    job: Job
    desk: Desk
    clock: Clock
    answer: WhoRides
    decisions: Mapping[ComponentId, Decision]
    owned: Mapping[MemberId | None, tuple[Component, ...]]


def read_floor(
    desk: Desk, decided: Decided, answer: WhoRides, clock: Clock, crews: Collection[str]
) -> Floor:
    """Lay the answer out.

    Args:
        crews: only these.
    """
    job = desk.job
    facts = _Facts(
        job=job,
        desk=desk,
        clock=clock,
        answer=answer,
        decisions={one.component: one for one in decided.decisions},
        owned=_owned(job.components),
    )
    names = tuple(dict.fromkeys(member.crew for member in job.members))
    shown = [member for member in job.members if member.crew in crews]
    groups = groups_of(_keys(facts, shown))
    laid_out = [_crew(facts, name, groups) for name in names if name in crews]
    return Floor(
        groups=groups,
        crews=tuple(sorted(laid_out, key=lambda one: not one.short)),
        names=names,
        marks=_marks(laid_out),
    )


def _owned(components: Iterable[Component]) -> dict[MemberId | None, tuple[Component, ...]]:
    found: dict[MemberId | None, list[Component]] = defaultdict(list)
    for component in components:
        found[component.owner].append(component)
    return {owner: tuple(pieces) for owner, pieces in found.items()}


def _keys(facts: _Facts, members: Iterable[Member]) -> list[str]:
    keys = [key_of(one) for member in members for one in facts.owned.get(member.id, ())]
    return [*keys, _MASK] if facts.job.riding.masks else keys


def _marks(crews: Iterable[Crew]) -> tuple[Mark, ...]:
    found = {
        spot.mark
        for crew in crews
        for row in crew.rows
        for cell in row.cells
        for spot in cell.spots
    }
    return tuple(mark for mark in Mark if mark in found)


def _crew(facts: _Facts, name: str, groups: tuple[Group, ...]) -> Crew:
    coverage = facts.answer.riding.now
    cannot = {one.member: one for one in coverage.cannot}
    can = {one.member: one for one in coverage.can}
    members = [member for member in facts.job.members if member.crew == name]
    rows = [
        _row(facts, member, can.get(member.id), cannot.get(member.id), groups) for member in members
    ]
    return Crew(
        name=name,
        short=any(not status.met for status in coverage.crews if status.crew == name),
        spoken=_spoken(facts.answer.spoken, name),
        left_out=tuple(member.id for member in members if member.id in cannot),
        rows=tuple(sorted(rows, key=lambda row: (row.can or row.away, row.away))),
    )


def _spoken(spoken: Iterable[Finding], crew: str) -> tuple[Said, ...]:
    """Take what is said of a crew as a whole: from its name to the first word of a person."""
    found: list[Said] = []
    within = False
    for one in spoken:
        values = dict(one.values)
        if "crew" in values or one.message.rpartition(".")[2].startswith("department"):
            within = values.get("crew", "") == crew
        if within and not {"member", "component", "mask"} & set(values):
            found.append(Said(message=one.message, values=one.values))
    return tuple(found)


def _row(
    facts: _Facts,
    member: Member,
    can: CanRide | None,
    cannot: CannotRide | None,
    groups: tuple[Group, ...],
) -> Row:
    why = _why(cannot)
    if cannot:
        verdict, lines = said("web.ride.cannot"), _why_not(facts, cannot)
    elif can:
        verdict, lines = _in_what(can), _about(facts, can)
    else:
        verdict, lines = said("web.ride.away"), ()
    return Row(
        member=member,
        can=can is not None,
        away=can is None and cannot is None,
        verdict=verdict,
        lines=lines,
        cells=tuple(
            _cell(facts, member, column, why) for group in groups for column in group.columns
        ),
    )


def _why(cannot: CannotRide | None) -> frozenset[ComponentId]:
    gaps = cannot.gaps if cannot else ()
    return frozenset(
        component
        for gap in gaps
        for unit in gap.own
        for component in (*unit.components, ComponentId(unit.id))
    )


def _cell(facts: _Facts, member: Member, column: Column, why: frozenset[ComponentId]) -> Cell:
    if column.key == _MASK:
        masks = [one for one in facts.job.riding.masks if member.id in (one.owner, one.holder)]
        spots = tuple(Spot(mark=mark_of_mask(one), piece=None) for one in masks)
        stops = any(one.id in why for one in masks)
    else:
        pieces = [one for one in facts.owned.get(member.id, ()) if key_of(one) == column.key]
        spots = tuple(_spots(pieces, facts.decisions))
        stops = any(one.id in why for one in pieces)
    rest = all(spot.mark.at_rest for spot in spots)
    return Cell(column=column, spots=spots, why=stops and not rest)


def _spots(
    pieces: Iterable[Component], decisions: Mapping[ComponentId, Decision]
) -> Iterable[Spot]:
    """Put pieces that stand alike into one spot."""
    alike: dict[Mark, list[ComponentId]] = defaultdict(list)
    for one in pieces:
        alike[mark_of(one, decisions[one.id])].append(one.id)
    for mark, names in alike.items():
        yield Spot(mark=mark, piece=names[0] if len(names) == 1 else None, count=len(names))


def _in_what(can: CanRide) -> Said:
    spare = next((one.unit.id for one in can.outfit if one.handed and one.slot == "set"), None)
    if spare:
        return said("web.ride.can_in", piece=spare)
    return said("web.ride.can" if can.interior else "web.ride.can_outside")


def _about(facts: _Facts, can: CanRide) -> tuple[Said, ...]:
    lines: list[Said] = []
    slots = [one.slot for one in can.outfit if one.handed and one.slot != "set"]
    if slots:
        lines.append(said("web.ride.also", slots=", ".join(slots)))
    if any(one.unit.first for one in can.outfit):
        lines.append(said("web.ride.look_first"))
    return (*lines, *_own_back(facts, can.member))


def _own_back(facts: _Facts, member: MemberId) -> tuple[Said, ...]:
    plan = facts.desk.plan
    backs = plan.worksheet.back if plan else ()
    back = next((one for one in backs if one.member == member), None)
    if plan is None or back is None or back.at is None or _all_back(facts, member):
        return ()
    message = "web.ride.own_back" if back.complete else "web.ride.own_part"
    return (said(message, span=facts.clock.span(plan.aim.start, back.at)),)


def _all_back(facts: _Facts, member: MemberId) -> bool:
    own = facts.owned.get(member, ())
    return all(mark_of(one, facts.decisions[one.id]).at_rest for one in own)


def _why_not(facts: _Facts, cannot: CannotRide) -> tuple[Said, ...]:
    spoken = [one for one in facts.answer.spoken if dict(one.values).get("member") == cannot.member]
    lines = [
        Said(message=one.message, values=one.values)
        for one in spoken
        if not one.message.rpartition(".")[2].startswith("back")
    ]
    lines += _held(facts, cannot.member)
    backs = _own_back(facts, cannot.member)
    if not backs and cannot.earliest is not None and not cannot.in_spare:
        at = facts.answer.now + dt.timedelta(minutes=cannot.earliest.late)
        backs = (said("web.ride.back_at", time=facts.clock.at(at)),)
    return (*lines, *backs)


def _held(facts: _Facts, member: MemberId) -> list[Said]:
    """Say who decides on what of a member's gear is held, each office once."""
    found: dict[str, Said] = {}
    for component in facts.owned.get(member, ()):
        decision = facts.decisions[component.id]
        for hold in decision.open_holds:
            told = dict(hold.reason.values) if hold.reason else {}
            found[hold.decider] = said(
                "web.ride.sealed" if decision.sealed else "web.ride.held",
                decider=hold.decider,
                person=told.get("person", ""),
                deputy=hold.deputy,
                stand_in=told.get("stand_in", ""),
            )
    return list(found.values())
