"""At which sink is a component washed by hand, and where may it dry?"""

from collections.abc import Iterator

from sootline.core.basis import Bearing, Finding, PlaceId, Standing, finding
from sootline.core.gear.kinds import DryMethod, Layer, WashMethod
from sootline.core.gear.labels import Act
from sootline.core.laundry.goods import Goods, entered, practice
from sootline.core.laundry.reasons import hazard_ground
from sootline.core.laundry.rooms import DryingPlace, SinkUse, WashRoom
from sootline.core.laundry.sharing import apart
from sootline.core.laundry.sorts import DryingChoice

_AIR = "dry.air_temp"
_BY_BRUSH = (WashMethod.BRUSH, WashMethod.WIPE)
_ELSEWHERE = (DryMethod.HANG, DryMethod.FLAT)


def hand_places(goods: Goods, room: WashRoom) -> tuple[PlaceId, ...]:
    """List the basins or benches for a component; sinks for food or hygiene are never among them.

    Brushing and wiping go to a bench and hand washing to a basin, where the room has one; boots
    go to either.
    """
    usable = [sink for sink in room.sinks if sink.use is SinkUse.GEAR]
    wants_bench = goods.decision.wash in _BY_BRUSH
    either = goods.kind.layer is Layer.BOOT
    fitting = [sink.id for sink in usable if either or sink.bench is wants_bench]
    # A basin does for brushing; a bench holds no water to wash in.
    return tuple(fitting or [sink.id for sink in usable if wants_bench])


def refused_sinks(room: WashRoom) -> tuple[Finding, ...]:
    """Say which sinks of the room never see soiled gear."""
    ground = practice("wash.sinks")
    return tuple(
        finding(Bearing.FORBIDS, f"laundry.sink.{sink.use}", ground, sink=sink.id)
        for sink in room.sinks
        if sink.use is not SinkUse.GEAR
    )


def drying_choice(goods: Goods, room: WashRoom) -> DryingChoice:
    """Say where a component may dry: racks and cabinets it bears, or hung up or laid flat.

    Its methods stand in order: what is hung or laid flat first of all takes no rack place, and
    what racks and cabinets do not take is hung or laid flat where it may be. With no place and
    no elsewhere the component cannot dry here; the reasons say why.
    """
    methods = goods.decision.terms.dry
    elsewhere = next((one for one in methods if one in _ELSEWHERE), None)
    if elsewhere and elsewhere is methods[0]:
        return _elsewhere(goods, elsewhere)
    places: list[PlaceId] = []
    reasons: list[Finding] = []
    for place in room.drying:
        if place.method in _ELSEWHERE or (place.kinds and goods.kind.id not in place.kinds):
            continue
        faults = tuple(_place_faults(goods, place))
        reasons.extend(faults or (_admitted(goods, place),))
        if not faults:
            places.append(place.id)
    if elsewhere and not places:
        return _elsewhere(goods, elsewhere, *reasons)
    return DryingChoice(component=goods.id, places=tuple(places), reasons=tuple(reasons))


def _elsewhere(goods: Goods, method: DryMethod, *against: Finding) -> DryingChoice:
    names = {"component": goods.id, "method": method}
    ground = goods.decision.terms.dry_ground
    said = finding(Bearing.NOTES, "laundry.dry.elsewhere", ground, **names)
    return DryingChoice(component=goods.id, places=(), elsewhere=method, reasons=(said, *against))


def _place_faults(goods: Goods, place: DryingPlace) -> Iterator[Finding]:
    """Say why a place is not for this component: method, forbidden heat, air too warm."""
    terms = goods.decision.terms
    names = {"component": goods.id, "place": place.id}
    if place.method not in terms.dry:
        values = {"method": place.method, "allowed": ", ".join(terms.dry)}
        message = "laundry.dry.method"
        yield finding(Bearing.FORBIDS, message, terms.dry_ground, **names, **values)
    cabinet = place.method is DryMethod.CABINET
    separation = goods.decision.separation
    if cabinet and apart(separation):
        # A run is closed over everything in it; open places stand each for itself.
        hazards = ", ".join(separation.hazards)
        ground = hazard_ground(goods)
        yield finding(Bearing.FORBIDS, "laundry.dry.apart", ground, **names, hazards=hazards)
    acts = ((Act.MACHINE_DRY, cabinet), (Act.HEATED_DRY, place.air_temp is not None))
    for act, applies in acts:
        if applies and (ban := terms.banned(act)):
            yield finding(Bearing.FORBIDS, "laundry.dry.banned", ban.ground, **names, act=act)
    if place.air_temp is None:
        return
    limit = terms.limit(_AIR)
    standing = limit.stand(place.air_temp)
    values = {"reading": str(place.air_temp)}
    if standing is Standing.BEYOND:
        bound, ground = next(
            one for one in limit.limits if one[0].stand(place.air_temp) is Standing.BEYOND
        )
        values["limit"] = str(bound)
        yield finding(Bearing.FORBIDS, "laundry.dry.beyond", ground, **names, **values)
    elif standing is Standing.UNKNOWN:
        ground = limit.unset[0] if limit.unset else practice(_AIR)
        yield finding(Bearing.ASKS, "laundry.dry.no_limit", ground, **names, **values)


def _admitted(goods: Goods, place: DryingPlace) -> Finding:
    """Say that a place may take the component, against which limit if it is heated."""
    names = {"component": goods.id, "place": place.id}
    binding = goods.decision.terms.limit(_AIR).binding
    if place.air_temp is None or binding is None:
        return finding(Bearing.NOTES, "laundry.dry.unheated", entered("room.drying"), **names)
    values = {"reading": place.air_temp, "limit": binding[0]}
    return finding(Bearing.LIMITS, "laundry.dry.within", binding[1], **names, **values)
