"""What is said over the radio? One message per thing to say, with numbers that read aloud."""

import datetime as dt
from collections.abc import Iterator
from decimal import Decimal

from sootline.core.basis import Bearing, Finding, finding
from sootline.core.riding.answers import CannotRide, Coverage, Gap, NearMiss
from sootline.core.riding.fit import Dimension
from sootline.core.riding.hand_outs import GROUND
from sootline.core.riding.situation import HORIZON_MIN

# With more places empty than this the reasons are too many to listen to.
_REASONS_FOR = 2


def say_coverage(coverage: Coverage, now: dt.datetime) -> tuple[Finding, ...]:
    """Put who rides and who does not into messages, crew by crew.

    Args:
        now: minute 0, in the zone whose clock is read out.
    """
    names = [one.crew for one in coverage.can] + [one.crew for one in coverage.cannot]
    crews = dict.fromkeys(names)
    return tuple(found for crew in crews for found in _crew(coverage, crew, now))


def _crew(coverage: Coverage, crew: str, now: dt.datetime) -> Iterator[Finding]:
    riding = sum(1 for one in coverage.can if one.crew == crew)
    moment = "now" if coverage.minute == 0 else "from"
    name = "crew" if crew else "department"
    time = clock(now, coverage.minute)
    yield _said(f"{name}_{moment}", crew=crew, n=riding, number=riding, time=time)
    for status in coverage.crews:
        if status.crew == crew and not status.met:
            yield _said("below_minimum", n=status.interior, number=status.interior,
                        minimum=status.minimum)  # fmt: skip
    for left in coverage.cannot:
        if left.crew == crew:
            yield from _left_out(left, now)


def _left_out(left: CannotRide, now: dt.datetime) -> Iterator[Finding]:
    if left.earliest is not None and left.in_spare:
        yield _said("spare_at", member=left.member, time=clock(now, left.earliest.late))
        return
    sized = [gap for gap in left.gaps if gap.taken or _nearest(gap)]
    bare = [gap for gap in left.gaps if gap not in sized]
    for gap in sized:
        yield _size(left, gap)
    for message, gaps in (
        ("none", [gap for gap in bare if gap.own]),
        ("not_recorded", [gap for gap in bare if not gap.own]),
    ):
        if gaps:
            yield _said(message, member=left.member, slots=", ".join(gap.slot for gap in gaps))
    if len(bare) <= _REASONS_FOR:
        yield from (reason for gap in bare for unit in gap.own for reason in unit.reasons)
    yield _back(left, now)


def _size(left: CannotRide, gap: Gap) -> Finding:
    """Say why no spare serves: all that fit are given out, or the size is not here."""
    nearest = _nearest(gap)
    if nearest is None:
        return _said("taken", member=left.member, slot=gap.slot)
    worst = max(nearest.dimensions, key=_weight)
    return _said(
        worst.verdict if worst.verdict.unknown else "no_size",
        member=left.member,
        element=worst.element,
        dimension=worst.name,
        measure=worst.measure or "?",
    )


def _nearest(gap: Gap) -> NearMiss | None:
    return None if gap.taken else next((one for one in gap.nearest if one.dimensions), None)


def _weight(dimension: Dimension) -> tuple[bool, Decimal]:
    return not dimension.verdict.unknown, abs(dimension.off or Decimal(0))


def _back(left: CannotRide, now: dt.datetime) -> Finding:
    when = left.earliest
    if when is None:
        return _said("back_unknown", member=left.member)
    first, late = clock(now, when.earliest), clock(now, when.late)
    if first == late:
        return _said("back_at", member=left.member, time=late)
    return _said("back_between", member=left.member, first=first, late=late)


def clock(now: dt.datetime, minute: int) -> str:
    """Read a minute from now on the zone's clock; with its day when it is a day or more away."""
    moment = (now.astimezone(dt.UTC) + dt.timedelta(minutes=minute)).astimezone(now.tzinfo)
    return moment.strftime("%H:%M" if minute < HORIZON_MIN else "%Y-%m-%d %H:%M")


def _said(message: str, **values: object) -> Finding:
    return finding(Bearing.NOTES, f"riding.radio.{message}", GROUND, **values)
