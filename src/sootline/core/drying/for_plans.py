"""Which drying times follow from the room's air, for the wash plan to reckon with?

A row that the department measured stays; what no model speaks of (gloves, boots, helmets) stays
with the planning table.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from sootline.core.basis import (
    Assumptions,
    Bearing,
    Finding,
    KindId,
    PlaceId,
    UnreadableValueError,
    finding,
)
from sootline.core.drying.arrays.columns import Question
from sootline.core.drying.arrays.estimates import estimate_many
from sootline.core.drying.calibrating import Calibration, Ratio, calibrate
from sootline.core.drying.capping import judge_heat
from sootline.core.drying.cloths import Cloth
from sootline.core.drying.estimating import (
    DryingEstimate,
    Surroundings,
    Wetness,
)
from sootline.core.drying.filling import Share, WetPiece, blown, fill, into_room_kg_h, share_out
from sootline.core.drying.logging_loads import compare_loads
from sootline.core.drying.rates import Batch, Blown
from sootline.core.drying.readings import Readings, RoomAir
from sootline.core.drying.rooms import RoomBalance, RoomDiagnosis, balance_room, diagnose_room
from sootline.core.gear.kinds import DryMethod
from sootline.core.gear.terms import ResolvedLimit
from sootline.core.laundry.rooms import DryingPlace, DryingTime, WashRoom
from sootline.core.machines.grounds import as_entered

OWN_LOADS = "drying.rests.own_loads"
# A piece that lies flat, or is not dried, gives off its water otherwise than a model here says.
_MODELLED = (DryMethod.RACK, DryMethod.CABINET, DryMethod.HANG)
# An interval whose late end is further off than three days is no promise to plan on [min].
LONGEST_MIN = 3 * 24 * 60


@dataclass(frozen=True, kw_only=True)
class PlaceEstimate:
    """What is expected of one cloth at one place, with what speaks for and against it.

    Args:
        batch_kg: dry mass that hangs there at once [kg].
        estimate: None where there is none; a finding says why.
    """

    place: PlaceId
    cloth: Cloth
    batch_kg: float
    estimate: DryingEstimate | None
    findings: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class DryingOutlook:
    """All places' estimates, the rows for the plan, and the room that they share.

    Args:
        left_out: logged loads that say nothing about the model, and why.
    """

    places: tuple[PlaceEstimate, ...]
    rows: tuple[DryingTime, ...]
    room: RoomDiagnosis
    left_out: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class _Place:
    """One place with everything that bears on an estimate there."""

    place: DryingPlace
    blown: Blown
    balance: RoomBalance
    ratios: tuple[Ratio, ...]
    wetness: Wetness
    heat_limit: ResolvedLimit


def estimate_drying_times(
    *,
    room: WashRoom,
    air: RoomAir,
    readings: Readings,
    pieces: tuple[WetPiece, ...],
    wetness: Wetness,
    heat_limit: ResolvedLimit,
    assumptions: Assumptions,
) -> DryingOutlook:
    """Estimate every place for every cloth there is, each place as full as tonight makes it.

    Args:
        heat_limit: the limits in force on drying air, over all pieces.

    Raises:
        UnreadableValueError: readings that no air has.
    """
    places = {place.id: (place, blown(place, readings)) for place in room.drying}
    balance = balance_room(air, assumptions)
    streams = {name: one for name, (_, one) in places.items()}
    ratios, left_out = compare_loads(readings.logged, streams, assumptions)
    shares = share_out(places, pieces, balance.air, assumptions)
    gear_kg = sum(float(piece.mass.to("kg")) for piece in pieces)
    at = {
        place.id: _Place(
            place=place, blown=one, balance=balance, ratios=ratios, wetness=wetness,
            heat_limit=heat_limit,
        )
        for place, one in places.values()
    }  # fmt: skip
    asked = [
        _ask(at[place.id], batch, _others(place.id, shares, gear_kg, batch), assumptions)
        for place, _ in places.values()
        if place.method in _MODELLED
        for cloth in Cloth
        if (batch := fill(place, cloth, pieces)) is not None
    ]
    estimates = _estimates(asked, assumptions)
    return DryingOutlook(
        places=tuple(estimates),
        rows=tuple(_rows(estimates, room, pieces)),
        room=diagnose_room(air, into_room_kg_h(shares, gear_kg), assumptions),
        left_out=left_out,
    )


@dataclass(frozen=True, kw_only=True)
class _Asked:
    """One batch at one place, and what stands against asking how long it dries."""

    place: PlaceId
    question: Question
    known: Calibration
    against: tuple[Finding, ...]


def _ask(at: _Place, batch: Batch, others_kg_h: float, assumptions: Assumptions) -> _Asked:
    known = calibrate(at.ratios, at.place.id, batch.cloth, assumptions)
    around = Surroundings(place=at.blown, room=at.balance, others_kg_h=others_kg_h)
    question = Question(batch=batch, wetness=at.wetness, around=around, factor=known.factor)
    against = tuple(_against(at))
    return _Asked(place=at.place.id, question=question, known=known, against=against)


def _estimates(asked: Sequence[_Asked], assumptions: Assumptions) -> list[PlaceEstimate]:
    """Estimate every batch that nothing stands against, all at once."""
    may = [one.question for one in asked if not one.against]
    answers = iter(estimate_many(may, assumptions))
    return [_estimate(one, None if one.against else next(answers)) for one in asked]


def _estimate(asked: _Asked, answer: DryingEstimate | UnreadableValueError | None) -> PlaceEstimate:
    """Put an answer together with what speaks for and against it."""
    estimate, findings = None, asked.against
    if isinstance(answer, UnreadableValueError):
        ground = as_entered("room.air")
        findings = (finding(Bearing.FORBIDS, answer.message, ground, **dict(answer.values)),)
    elif answer is not None:
        estimate = answer
        if asked.known.here:
            own = replace(answer.minutes, rests_on=OWN_LOADS)
            estimate = replace(answer, minutes=own)
        findings = (asked.known.trust, *_too_slow(asked.place, estimate))
    batch = asked.question.batch
    return PlaceEstimate(
        place=asked.place,
        cloth=batch.cloth,
        batch_kg=batch.dry_kg,
        estimate=estimate,
        findings=findings,
    )


def _others(place: PlaceId, shares: tuple[Share, ...], gear_kg: float, batch: Batch) -> float:
    """Return what the gear that does not hang here gives off elsewhere in the room [kg/h]."""
    elsewhere = (share for share in shares if share.place != place)
    return into_room_kg_h(elsewhere, gear_kg - batch.dry_kg)


def _against(at: _Place) -> Iterator[Finding]:
    """Say why a place is not reckoned with: too warm, or nobody knows what its fan moves."""
    heat = judge_heat(at.place.id, at.place.air_temp, at.heat_limit)
    if heat is not None:
        yield heat
    elif at.blown.flow_m3h is None and at.place.method is DryMethod.CABINET:
        yield finding(Bearing.ASKS, "drying.fan.unknown", as_entered("room.fan"), place=at.place.id)


def _too_slow(place: PlaceId, estimate: DryingEstimate) -> Iterator[Finding]:
    if estimate.minutes.late > LONGEST_MIN:
        values = {"place": place, "minutes": estimate.minutes, "limit": LONGEST_MIN}
        yield finding(Bearing.WARNS, "drying.too_slow", as_entered("room.air"), **values)


def _rows(
    estimates: Iterable[PlaceEstimate], room: WashRoom, pieces: tuple[WetPiece, ...]
) -> Iterator[DryingTime]:
    """Turn estimates into rows, behind everything that the department entered itself."""
    for one in estimates:
        if one.estimate is None or one.estimate.minutes.late > LONGEST_MIN:
            continue
        kinds = {piece.kind for piece in pieces if piece.cloth is one.cloth}
        left = kinds - _entered(one.place, room, kinds)
        if left:
            yield DryingTime(
                place=one.place, kinds=tuple(sorted(left)), minutes=one.estimate.minutes
            )


def _entered(place: PlaceId, room: WashRoom, kinds: set[KindId]) -> set[KindId]:
    """Return the kinds the department has a row for; one without kinds is for all of them."""
    rows = [row for row in room.drying_times if row.place == place]
    if any(not row.kinds for row in rows):
        return kinds
    return {kind for row in rows for kind in row.kinds}
