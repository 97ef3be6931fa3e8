"""In which washer, on which programme, may one component be washed here?"""

from collections.abc import Iterator

from sootline.core.basis import Bearing, Finding, Ground, Quantity, Standing, finding
from sootline.core.gear.labels import Act
from sootline.core.gear.terms import ResolvedLimit
from sootline.core.laundry.goods import Goods, entered, practice
from sootline.core.laundry.rooms import Company, Programme, Washer, WashRoom
from sootline.core.laundry.sorts import Setting

BATH = "wash.bath_temp"
SPIN = "wash.extraction"


def permitted(
    goods: Goods, company: Company, room: WashRoom
) -> tuple[tuple[Setting, ...], tuple[Finding, ...]]:
    """List the settings one component bears, and why each of the others is not for it.

    A setting counts only when the washer works, its limit is known, the component alone does not
    exceed it, and bath and spin are known and within every limit of the component.
    """
    settings: list[Setting] = []
    refusals: list[Finding] = []
    for washer in room.washers:
        faults = tuple(_washer_faults(goods, washer))
        refusals.extend(faults)
        if faults or washer.limit is None:
            continue
        for programme in washer.programmes:
            if programme.companies and company not in programme.companies:
                continue
            against = tuple(_programme_faults(goods, washer, programme))
            refusals.extend(against)
            if not against:
                settings.append(_setting(goods, washer, programme, washer.limit))
    return tuple(settings), tuple(refusals)


def _washer_faults(goods: Goods, washer: Washer) -> Iterator[Finding]:
    """Say why a washer takes this component on no programme at all."""
    names = {"component": goods.id, "washer": washer.id}
    ground = entered("room.washer")
    if not washer.working:
        yield finding(Bearing.NOTES, "laundry.washer.down", ground, **names)
    if washer.limit is None:
        yield finding(Bearing.ASKS, "laundry.washer.no_limit", ground, **names)
    elif goods.mass is None:
        yield finding(Bearing.ASKS, "laundry.mass.unknown", ground, **names, limit=washer.limit)
    elif goods.mass.base > washer.limit.base:
        values = {"mass": goods.mass, "limit": washer.limit}
        yield finding(Bearing.FORBIDS, "laundry.washer.too_heavy", ground, **names, **values)
    ban = goods.decision.terms.banned(Act.TOP_LOADER)
    if ban and not washer.front_loading:
        yield finding(Bearing.FORBIDS, "laundry.washer.top_loader", ban.ground, **names)


def _programme_faults(goods: Goods, washer: Washer, programme: Programme) -> Iterator[Finding]:
    """Say which of the programme's readings is not within every limit of the component."""
    names = {"component": goods.id, "washer": washer.id, "programme": programme.id}
    readings = ((BATH, "bath", programme.bath_temp), (SPIN, "spin", programme.extraction))
    for topic, word, reading in readings:
        limit = goods.decision.terms.limit(topic)
        standing = limit.stand(reading)
        if reading is None:
            ground = entered(f"room.programme.{word}")
            yield finding(Bearing.ASKS, f"laundry.{word}.unknown", ground, **names)
        elif standing is Standing.BEYOND:
            bound, ground = _beyond(limit, reading)
            values = {"reading": reading, "limit": bound}
            yield finding(Bearing.FORBIDS, f"laundry.{word}.beyond", ground, **names, **values)
        elif standing is Standing.UNKNOWN:
            ground = limit.unset[0] if limit.unset else practice(topic)
            values = {"reading": reading}
            yield finding(Bearing.ASKS, f"laundry.{word}.no_limit", ground, **names, **values)


def _beyond(limit: ResolvedLimit, reading: Quantity) -> tuple[str, Ground]:
    """Return the first stated limit the reading exceeds, strictest first."""
    return next(
        (str(bound), ground)
        for bound, ground in limit.limits
        if bound.stand(reading) is Standing.BEYOND
    )


def _setting(goods: Goods, washer: Washer, programme: Programme, limit: Quantity) -> Setting:
    names = {"washer": washer.id, "programme": programme.id}
    reasons = []
    for topic, word, reading in (
        (BATH, "bath", programme.bath_temp),
        (SPIN, "spin", programme.extraction),
    ):
        binding = goods.decision.terms.limit(topic).binding
        assert binding is not None  # within means that somebody stated a limit
        values = {"reading": reading, "limit": binding[0]}
        message = f"laundry.{word}.within"
        reasons.append(finding(Bearing.LIMITS, message, binding[1], **names, **values))
    return Setting(
        washer=washer.id,
        programme=programme.id,
        limit=limit,
        pieces=washer.pieces,
        reasons=tuple(reasons),
    )
