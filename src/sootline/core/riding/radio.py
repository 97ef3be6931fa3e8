"""What is said over the radio? One message per thing to say, with numbers that read aloud."""

import datetime as dt
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal

from sootline.core.basis import Bearing, Finding, finding
from sootline.core.gear import Element
from sootline.core.riding.answers import CannotRide, Coverage, Gap, NearMiss
from sootline.core.riding.fit import Dimension
from sootline.core.riding.hand_outs import GROUND
from sootline.core.riding.situation import clock

# With more places empty than this the reasons are too many to listen to.
_REASONS_FOR = 2
# Elements sized in several dimensions: the one that fails is said; the others have one size each.
_CUT_TO_MEASURE = (Element.COAT, Element.TROUSERS, Element.COVERALL)


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
        if status.crew != crew:
            continue
        if not status.met:
            yield _said("below_minimum", n=status.interior, number=status.interior,
                        minimum=status.minimum)  # fmt: skip
        elif status.interior < riding:
            yield _said("interior", number=status.interior)
    for left in coverage.cannot:
        if left.crew == crew:
            yield from _left_out(left, now)


def _left_out(left: CannotRide, now: dt.datetime) -> Iterator[Finding]:
    """Say why one member cannot ride; every sentence carries the member it is about."""
    for found in (*_why(left), *_when(left, now)):
        yield replace(found, values=(("member", left.member), *found.values))


def _why(left: CannotRide) -> Iterator[Finding]:
    if _in_spare_later(left):
        return
    sized = [gap for gap in left.gaps if gap.taken or _nearest(gap)]
    bare = [gap for gap in left.gaps if gap not in sized]
    for gap in sized:
        yield _size(gap)
    for message, gaps in (
        ("none", [gap for gap in bare if gap.own]),
        ("not_recorded", [gap for gap in bare if not gap.own]),
    ):
        if gaps:
            yield _said(message, slots=", ".join(gap.slot for gap in gaps))
    if len(bare) <= _REASONS_FOR:
        yield from (_aloud(reason) for gap in bare for unit in gap.own for reason in unit.reasons)


def _aloud(reason: Finding) -> Finding:
    """Keep to oneself why gear is on hold: what a person met is not for everybody's ears."""
    if reason.message != "riding.piece.hold":
        return reason
    return _said("on_hold", kind=reason.value("kind"), component=reason.value("component"))


def _size(gap: Gap) -> Finding:
    """Say why no spare serves: all that fit are given out, or the size is not here."""
    nearest = _nearest(gap)
    if nearest is None:
        return _said("taken", slot=gap.slot)
    worst = max(nearest.dimensions, key=_weight)
    values = {
        "element": worst.element,
        "dimension": worst.name,
        "measure": worst.measure or "?",
    }
    if worst.verdict.unknown:
        return _said(f"{worst.verdict}", **values)
    if worst.element in _CUT_TO_MEASURE:
        return _said("no_size_in", **values)
    return _said("no_size", **values)


def _nearest(gap: Gap) -> NearMiss | None:
    return None if gap.taken else next((one for one in gap.nearest if one.dimensions), None)


def _weight(dimension: Dimension) -> tuple[bool, Decimal]:
    return not dimension.verdict.unknown, abs(dimension.off or Decimal(0))


def _in_spare_later(left: CannotRide) -> bool:
    return left.earliest is not None and left.in_spare


def _when(left: CannotRide, now: dt.datetime) -> Iterator[Finding]:
    when = left.earliest
    if when is None:
        yield _said("back_unknown")
        return
    first, late = clock(now, when.earliest), clock(now, when.late)
    if _in_spare_later(left):
        yield _said("spare_at", time=late)
    elif first == late:
        yield _said("back_at", time=late)
    else:
        yield _said("back_between", first=first, late=late)


def _said(message: str, **values: object) -> Finding:
    return finding(Bearing.NOTES, f"riding.radio.{message}", GROUND, **values)
