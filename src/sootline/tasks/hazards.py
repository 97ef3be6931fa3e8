"""What may be on a component, and whose gear lies in a bag wet, since when?"""

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass

from sootline.core.basis import BagId, ContaminantId, MemberId
from sootline.core.care.decisions import Decision
from sootline.core.exposure.calls import Call, DeconMethod, Done, Presence
from sootline.core.job.jobs import Job

_RULE = "contaminant."
_WET_WAYS = (DeconMethod.WATER, DeconMethod.WET_SOAP)


@dataclass(frozen=True, kw_only=True)
class WetBag:
    """One member's gear that went into bags wet.

    Args:
        least_h, most_h: how long it has been in there by now [h]; the least is 0 while nobody
            knows when the crew was back.
    """

    member: MemberId
    bags: tuple[BagId, ...]
    least_h: float
    most_h: float


def hazards_on(decisions: Iterable[Decision]) -> tuple[ContaminantId, ...]:
    """Return every contaminant that may be on some components, as their decisions name them."""
    found: dict[ContaminantId, None] = {}
    for decision in decisions:
        found.update(dict.fromkeys(decision.separation.hazards))
        reasons = (hold.reason for hold in decision.open_holds if hold.reason)
        for one in (*decision.cautions, *decision.first, *reasons):
            if one.ground.rule.startswith(_RULE):
                found[ContaminantId(one.ground.rule.removeprefix(_RULE))] = None
    return tuple(found)


def list_wet_bags(job: Job, members: Iterable[MemberId] | None = None) -> tuple[WetBag, ...]:
    """List who has gear in bags that was wetted on scene, with the hours it has been in there.

    Args:
        members: whose; None is everybody's.
    """
    wanted = None if members is None else frozenset(members)
    return tuple(
        _wet_bag(call, person, job.now)
        for call in job.calls
        for person in call.people
        if person.bags and _wetted(person) and (wanted is None or person.member in wanted)
    )


def _wetted(person: Presence) -> bool:
    done = person.decon.done in (Done.DONE, Done.PART)
    return done and person.decon.method in _WET_WAYS


def _wet_bag(call: Call, person: Presence, now: dt.datetime) -> WetBag:
    return WetBag(
        member=person.member,
        bags=person.bags,
        least_h=_hours(now - call.back_at) if call.back_at else 0.0,
        most_h=_hours(now - call.at),
    )


def _hours(since: dt.timedelta) -> float:
    return max(0.0, round(since / dt.timedelta(hours=1), 1))
