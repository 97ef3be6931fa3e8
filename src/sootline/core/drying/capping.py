"""May a drying place be used at the warmth it reaches?"""

from sootline.core.basis import Bearing, Finding, Quantity, Standing, finding
from sootline.core.gear.terms import ResolvedLimit
from sootline.core.machines.grounds import as_entered

TOPIC = "dry.air_temp"


def judge_heat(place: str, air_temp: Quantity | None, limit: ResolvedLimit) -> Finding | None:
    """Hold the hottest air of a place against the limit in force.

    Args:
        air_temp: None is unheated, which no limit forbids.

    Returns:
        What forbids the place or must be asked first; None when it may be used.
    """
    if air_temp is None:
        return None
    values = {"place": place, "reading": str(air_temp)}
    beyond = [one for one in limit.limits if one[0].stand(air_temp) is Standing.BEYOND]
    if beyond:
        bound, ground = beyond[0]
        return finding(Bearing.FORBIDS, "drying.heat.beyond", ground, **values, limit=bound)
    if limit.stand(air_temp) is Standing.UNKNOWN:
        ground = limit.unset[0] if limit.unset else as_entered(TOPIC)
        return finding(Bearing.ASKS, "drying.heat.no_limit", ground, **values)
    return None
