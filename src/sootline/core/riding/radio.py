"""What is said over the radio? One message per thing to say, with numbers that read aloud."""

import datetime as dt
from collections.abc import Iterator

from sootline.core.basis import Bearing, Finding, MinuteSpan, finding
from sootline.core.riding.answers import CannotRide, Coverage, Gap
from sootline.core.riding.fit import Dimension
from sootline.core.riding.hand_outs import GROUND
from sootline.core.riding.situation import HORIZON_MIN


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
    for gap in left.gaps:
        yield _gap(left, gap)
    yield _back(left.earliest, now)


def _gap(left: CannotRide, gap: Gap) -> Finding:
    """Say why a place stays empty: nothing fits, all given out, or the size is not known."""
    who = {"member": left.member, "slot": gap.slot}
    if gap.taken:
        return _said("taken", **who)
    nearest = next((miss for miss in gap.nearest if miss.dimensions), None)
    if nearest is None:
        return _said("none", **who)
    worst = max(nearest.dimensions, key=_weight)
    if worst.verdict.unknown:
        return _said(worst.verdict, **who, dimension=worst.name)
    return _said("no_size", **who, dimension=worst.name, measure=worst.measure or "?")


def _weight(dimension: Dimension) -> tuple[bool, object]:
    return not dimension.verdict.unknown, abs(dimension.off or 0)


def _back(when: MinuteSpan | None, now: dt.datetime) -> Finding:
    if when is None:
        return _said("back_unknown")
    first, late = clock(now, when.earliest), clock(now, when.late)
    if first == late:
        return _said("back_at", time=late)
    return _said("back_between", first=first, late=late)


def clock(now: dt.datetime, minute: int) -> str:
    """Read a minute from now on the zone's clock; with its day when it is a day or more away."""
    moment = (now.astimezone(dt.UTC) + dt.timedelta(minutes=minute)).astimezone(now.tzinfo)
    return moment.strftime("%H:%M" if minute < HORIZON_MIN else "%Y-%m-%d %H:%M")


def _said(message: str, **values: object) -> Finding:
    return finding(Bearing.NOTES, f"riding.radio.{message}", GROUND, **values)
