"""How does the drying room read: each way of drying tonight, and what would change it?"""

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from django.utils.safestring import SafeString, mark_safe

from sootline.core.basis import Assumptions, Finding
from sootline.core.drying.calibrating import Ratio
from sootline.core.drying.cloths import Cloth
from sootline.core.drying.for_plans import PlaceEstimate
from sootline.core.gear import find_kind
from sootline.core.job.jobs import Job
from sootline.core.laundry.rooms import DryingTime
from sootline.paper.drying_plots import outlook_plots
from sootline.tasks.drying_room import DryingRoom, Learned
from sootline.web.reading.clock import Clock
from sootline.web.reading.saying import Resting, Said, resting, said


@dataclass(frozen=True, kw_only=True)
class Way:
    """One way of drying: a place and how the gear hangs there.

    Args:
        dry_at: earliest and late, on the clock, if it is hung now; empty where nobody can say.
        likely_at: in between.
        hours: the same from now on.
        instead: the hours under each remedy.
        entered: what the department measured itself, which the plan goes by.
        against: why there is no estimate, or what stands beside it.
    """

    place: str
    cloth: str
    mass_kg: str
    dry_at: str
    likely_at: str
    hours: Said | None
    instead: tuple[tuple[str, Said | None], ...]
    entered: tuple[DryingTime, ...]
    rests_on: Said | None
    against: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class LoadLine:
    """One logged load against the model.

    Args:
        ratio: measured over modelled; empty where it says nothing, and `why` tells why.
    """

    learned: Learned
    ratio: str
    why: Finding | None


@dataclass(frozen=True, kw_only=True)
class DryingShown:
    """The whole screen."""

    room: DryingRoom
    moisture: Said
    lead: str
    why: tuple[Resting, ...]
    ways: tuple[Way, ...]
    trust: tuple[Resting, ...]
    loads: tuple[LoadLine, ...]
    room_plot: SafeString
    curves: tuple[SafeString, ...]


def read_drying(
    room: DryingRoom, job: Job, clock: Clock, assumptions: Assumptions, lang: str
) -> DryingShown:
    """Lay the drying room out."""
    plots = dict(outlook_plots(room.outlook, room.air, assumptions, lang=lang))
    drawn = {name: mark_safe(svg) for name, svg in plots.items()}  # noqa: S308  # our drawing
    shares = (room.moisture.band.low, room.moisture.band.likely, room.moisture.band.high)
    low, likely, high = (f"{share * 100:.0f}" for share in shares)
    return DryingShown(
        room=room,
        moisture=said(room.moisture.rests_on, low=low, likely=likely, high=high),
        lead=_lead(room),
        why=resting(room.outlook.room.findings),
        ways=tuple(_way(room, number, job, clock) for number in range(len(room.outlook.places))),
        trust=resting(_trust(room)),
        loads=tuple(_load(one) for one in room.learned),
        room_plot=drawn.pop("room", mark_safe("")),  # nothing
        curves=tuple(drawn.values()),
    )


def _lead(room: DryingRoom) -> str:
    diagnosis = room.outlook.room
    if diagnosis.limit_kg_h is None:
        return "not-known"
    return "bottleneck" if diagnosis.bottleneck else "keeps-up"


def _way(room: DryingRoom, number: int, job: Job, clock: Clock) -> Way:
    one = room.outlook.places[number]
    minutes = one.estimate.minutes if one.estimate else None
    return Way(
        place=one.place,
        cloth=one.cloth.value,
        mass_kg=f"{one.batch_kg:.0f}",
        dry_at=clock.span(job.now, minutes) if minutes else "",
        likely_at=clock.at(job.now + dt.timedelta(minutes=minutes.likely)) if minutes else "",
        hours=_hours(one),
        instead=tuple(
            (other.remedy.value, _hours(other.outlook.places[number])) for other in room.remedied
        ),
        entered=tuple(row for row in job.wash_room.drying_times if _speaks_of(row, one)),
        rests_on=None if minutes is None else _rests_on(one),
        against=tuple(found for found in one.findings if not _is_trust(found)),
    )


def _hours(one: PlaceEstimate) -> Said | None:
    if one.estimate is None:
        return None
    found = one.estimate.minutes
    ends = {"earliest": found.earliest, "likely": found.likely, "late": found.late}
    return said("drying.screen.hours", **{name: _rounded(end) for name, end in ends.items()})


def _rounded(minutes: int) -> str:
    """Tell hours as finely as anybody can plan on."""
    hours = minutes / 60
    return f"{hours:.1f}" if hours < 3 else f"{hours:.0f}"


def _rests_on(one: PlaceEstimate) -> Said:
    assert one.estimate is not None  # the caller asked
    return said(f"drying.screen.{one.estimate.minutes.rests_on.rpartition('.')[2]}")


def _speaks_of(row: DryingTime, one: PlaceEstimate) -> bool:
    cloths = {Cloth.SHELL: ("shell",), Cloth.LINER: ("liner",)}.get(one.cloth, ("shell", "liner"))
    layers = {find_kind(kind).layer.value for kind in row.kinds}
    return row.place == one.place and (not row.kinds or bool(layers & set(cloths)))


def _is_trust(found: Finding) -> bool:
    return found.message.startswith("drying.trust.")


def _trust(room: DryingRoom) -> Iterator[Finding]:
    return (found for one in room.outlook.places for found in one.findings if _is_trust(found))


def _load(one: Learned) -> LoadLine:
    if isinstance(one.against, Ratio):
        return LoadLine(learned=one, ratio=f"{one.against.ratio:.2f}", why=None)
    return LoadLine(learned=one, ratio="", why=one.against)
