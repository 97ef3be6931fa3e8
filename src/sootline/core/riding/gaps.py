"""Why can a member not ride: which place stays empty, in which dimension, and until when?"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from sootline.core.basis import MemberId, MinuteSpan
from sootline.core.riding.answers import CannotRide, CanRide, Gap, NearMiss
from sootline.core.riding.asking import hold_of, worn_at
from sootline.core.riding.fit import Dimension, check_fit, failures, misfit
from sootline.core.riding.garments import last_of
from sootline.core.riding.situation import Rider, Situation, Slot, Unit
from sootline.core.riding.wearable import NOW


@dataclass(frozen=True, kw_only=True)
class _Floor:
    """What is on the floor at a minute: who has what, what is on the rack, what is given out."""

    situation: Situation
    held: Mapping[tuple[MemberId, Slot], tuple[Unit, ...]]
    rack: Mapping[Slot, tuple[Unit, ...]]
    given: frozenset[str]
    minute: int


def list_gaps(
    situation: Situation, can: Sequence[CanRide], ever: Sequence[CanRide], minute: int
) -> tuple[CannotRide, ...]:
    """List who cannot ride at a minute, with every gap.

    Args:
        can: who rides at the minute.
        ever: who rides then or at a later arrival, with what is kept for them.
    """
    spares = [unit for unit in situation.units if unit.holder is None]
    floor = _Floor(
        situation=situation,
        held=hold_of(situation),
        rack={slot: tuple(one for one in spares if one.slot is slot) for slot in Slot},
        given=frozenset(worn.unit.id for one in ever for worn in one.outfit if worn.handed),
        minute=minute,
    )
    riding = {one.member for one in can}
    later = {one.member: one for one in ever}
    return tuple(
        _cannot(floor, rider, later.get(rider.id))
        for rider in situation.present
        if rider.id not in riding
    )


def _cannot(floor: _Floor, rider: Rider, later: CanRide | None) -> CannotRide:
    gaps = tuple(
        _gap(floor, rider, slot)
        for slot in rider.needs
        if worn_at(floor.held.get((rider.id, slot), ()), floor.minute) is None
    )
    earliest, in_spare = _earliest(gaps, later)
    return CannotRide(
        member=rider.id,
        crew=rider.crew,
        interior=rider.interior,
        gaps=_decisive(gaps, floor),
        earliest=earliest,
        in_spare=in_spare,
    )


def _decisive(gaps: tuple[Gap, ...], floor: _Floor) -> tuple[Gap, ...]:
    """Keep what no spare fills; where a spare would fill each, what others have or is to come."""
    unfilled = tuple(gap for gap in gaps if not gap.taken)
    contested = tuple(
        gap
        for gap in gaps
        if all(u.id in floor.given or not u.there_by(floor.minute) for u in gap.taken)
    )
    return unfilled or contested or gaps


def _earliest(gaps: Sequence[Gap], later: CanRide | None) -> tuple[MinuteSpan | None, bool]:
    """Say when the member rides, in own gear or with what is kept for the member, and which."""
    own = _last(gap.back for gap in gaps)
    kept = _last(worn.unit.back for worn in later.outfit) if later else None
    in_spare = kept is not None and (own is None or kept.late < own.late)
    return (kept if in_spare else own), in_spare


def _last(backs: Iterable[MinuteSpan | None]) -> MinuteSpan | None:
    """Return when the last of them is there; None when one has no known time."""
    last = NOW
    for back in backs:
        if back is None:
            return None
        last = last_of(last, back)
    return last


def _gap(floor: _Floor, rider: Rider, slot: Slot) -> Gap:
    own = floor.held.get((rider.id, slot), ())
    alike: dict[object, tuple[Dimension, ...]] = {}
    for unit in floor.rack[slot]:
        if (unit.elements, unit.size) not in alike:
            checks = check_fit(floor.situation, rider, unit)
            alike[unit.elements, unit.size] = failures(checks)
    checked = [(unit, alike[unit.elements, unit.size]) for unit in floor.rack[slot]]
    backs = [unit.back for unit in own if unit.back is not None]
    return Gap(
        slot=slot,
        own=own,
        nearest=tuple(_nearest(checked)),
        taken=tuple(unit for unit, failed in checked if not failed and unit.back is not None),
        back=min(backs, key=lambda span: span.late, default=None),
    )


def _nearest(checked: Sequence[tuple[Unit, tuple[Dimension, ...]]]) -> Iterator[NearMiss]:
    """Name the wearable spare that fails least, then every spare nobody can wear as it is."""
    wearable = [(unit, failed) for unit, failed in checked if failed and unit.back is not None]
    if wearable:
        unit, failed = min(wearable, key=lambda pair: (len(pair[1]), misfit(pair[1])))
        yield NearMiss(unit=unit, dimensions=failed)
    for unit, _ in checked:
        if unit.back is None:
            yield NearMiss(unit=unit, reasons=unit.reasons)
