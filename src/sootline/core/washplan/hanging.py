"""How do a room's racks and cabinets become the one rack and the cabinets of the plan?

The neutral problem knows one rack for everything and cabinets open to all that may be heated. The
places that most pieces may use become those. A piece that may only use others (glove posts, a
boot dryer) is given time for its turn there: with n pieces on k places nobody waits for more than
n/k turns, and in a closed cabinet for one more. That is never too short.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from sootline.core.basis import Bearing, Finding, MinuteSpan, PlaceId, finding
from sootline.core.gear.kinds import DryMethod, Kind
from sootline.core.laundry.goods import entered
from sootline.core.laundry.rooms import DryingPlace, WashRoom
from sootline.core.washplan.durations import Clock
from sootline.core.washplan.handled import Handled


@dataclass(frozen=True, kw_only=True)
class Hung:
    """How one piece dries in the plan.

    Args:
        units: rack or cabinet places it takes; 0 where its place is never short.
        rack: how long on the rack, or in its own place where units is 0; None is not allowed.
        cabinet: how long in a cabinet; None is not allowed there.
        notes: what the times rest on.
    """

    units: int
    rack: MinuteSpan | None
    cabinet: MinuteSpan | None
    notes: tuple[Finding, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Places:
    """The racks and cabinets that the plan counts."""

    racks: tuple[DryingPlace, ...]
    cabinets: tuple[DryingPlace, ...]


@dataclass(kw_only=True)
class _Times:
    """Collects times over places and kinds: the longest counts; a missing one is remembered."""

    spans: list[MinuteSpan] = field(default_factory=list)
    notes: list[Finding] = field(default_factory=list)
    missing: bool = False

    def add(self, found: tuple[MinuteSpan, Finding | None] | None) -> None:
        if found is None:
            self.missing = True
            return
        self.spans.append(found[0])
        self.notes.extend([found[1]] if found[1] else [])

    @property
    def longest(self) -> MinuteSpan | None:
        if self.missing or not self.spans:
            return None
        return MinuteSpan(
            earliest=max(span.earliest for span in self.spans),
            likely=max(span.likely for span in self.spans),
            late=max(span.late for span in self.spans),
        )


def choose_places(pieces: Sequence[Handled], room: WashRoom) -> Places:
    """Choose the racks, and the cabinets, that most pieces may use."""
    return Places(
        racks=_most_used(pieces, room, DryMethod.RACK),
        cabinets=_most_used(pieces, room, DryMethod.CABINET),
    )


def hang(piece: Handled, pieces: Sequence[Handled], places: Places, clock: Clock) -> Hung | None:
    """Say how one piece dries; None when nobody gives a time for it."""
    if piece.drying.elsewhere:
        return _elsewhere(piece, piece.drying.elsewhere, clock)
    allowed = set(piece.drying.places)
    racks = places.racks if _all_in(places.racks, allowed) else ()
    cabinets = places.cabinets if _all_in(places.cabinets, allowed) else ()
    if not racks and not cabinets:
        return _in_turns(piece, pieces, clock)
    on_rack, in_cabinet = _times(racks, piece, clock), _times(cabinets, piece, clock)
    if on_rack.longest is None and in_cabinet.longest is None:
        return None
    return Hung(
        units=1,
        rack=on_rack.longest,
        cabinet=in_cabinet.longest,
        notes=(*on_rack.notes, *in_cabinet.notes),
    )


def _most_used(
    pieces: Sequence[Handled], room: WashRoom, method: DryMethod
) -> tuple[DryingPlace, ...]:
    """Return the places of a method that most pieces may use, and that no other piece needs.

    Every piece may use all of them or none: what only some may use is left out.
    """
    of_method = {place.id: place for place in room.drying if place.method is method}
    used = Counter(
        places
        for piece in pieces
        if (places := frozenset(one for one in piece.drying.places if one in of_method))
    )
    if not used:
        return ()
    chosen = max(used, key=lambda places: (used[places], len(places), sorted(places)))
    while partly := [one for one in used if chosen & one and not chosen <= one]:
        chosen &= partly[0]
    return tuple(place for name, place in of_method.items() if name in chosen)


def _all_in(places: Sequence[DryingPlace], allowed: set[PlaceId]) -> bool:
    return all(place.id in allowed for place in places)


def _times(places: Sequence[DryingPlace], piece: Handled, clock: Clock) -> _Times:
    times = _Times()
    for place in places:
        for kind in piece.kinds:
            times.add(clock.dry(place, kind))
    return times


def _elsewhere(piece: Handled, method: DryMethod, clock: Clock) -> Hung | None:
    """Take the time of the department's own hanging or flat place, or the planning interval."""
    times = _Times()
    for kind in piece.kinds:
        place = _named_place(clock.room, method, kind)
        times.add(clock.dry(place, kind) if place else clock.planned(method, kind, method.value))
    if times.longest is None:
        return None
    return Hung(units=0, rack=times.longest, cabinet=None, notes=tuple(times.notes))


def _named_place(room: WashRoom, method: DryMethod, kind: Kind) -> DryingPlace | None:
    fitting = [place for place in room.drying if place.method is method]
    return next((one for one in fitting if not one.kinds or kind.id in one.kinds), None)


def _in_turns(piece: Handled, pieces: Sequence[Handled], clock: Clock) -> Hung | None:
    """Give a piece that may only use places the plan does not count time for its turn there."""
    mine = piece.drying.places
    waiting = sum(1 for other in pieces if set(mine).intersection(other.drying.places))
    places = [place for place in clock.room.drying if place.id in mine]
    turns = -(-waiting // max(1, sum(place.places for place in places)))
    turns += any(place.method is DryMethod.CABINET for place in places)
    times = _times(places, piece, clock)
    longest = times.longest
    if longest is None:
        return None
    values: Mapping[str, object] = {"component": piece.id, "places": ", ".join(mine), "n": turns}
    note = finding(Bearing.NOTES, "laundry.dry.turns", entered("room.drying"), **values)
    padded = MinuteSpan(
        earliest=longest.earliest, likely=longest.likely * turns, late=longest.late * turns
    )
    notes = (*times.notes, *((note,) if turns > 1 else ()))
    return Hung(units=0, rack=padded, cabinet=None, notes=notes)
