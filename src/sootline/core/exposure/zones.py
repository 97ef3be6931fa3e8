"""Where was a person, and could what was there have met the person's gear?"""

from collections.abc import Iterable

from sootline.core.exposure.calls import Answer, Presence, Zone

INTERIOR = frozenset((Zone.INSIDE, Zone.OVERHAUL))
_DISTANT = frozenset((Zone.PUMP, Zone.STAGING))
# An unknown zone stands right behind the interior: it may have been.
_CLOSEST_FIRST = (
    Zone.INSIDE,
    Zone.OVERHAUL,
    Zone.UNKNOWN,
    Zone.ROOF,
    Zone.OUTSIDE,
    Zone.STAGING,
    Zone.PUMP,
)


def closest_zone(people: Iterable[Presence]) -> Zone:
    """Return the zone in which any of these people came closest; unknown where nobody said."""
    zones = [zone for person in people for zone in person.zones or (Zone.UNKNOWN,)]
    return min(zones, key=_CLOSEST_FIRST.index, default=Zone.UNKNOWN)


def was_away(presence: Presence) -> bool:
    """Whether the person stayed where nothing of the call could reach the gear.

    Only a statement shows that: at the pump or in staging throughout, in no smoke, not on air.
    """
    away = bool(presence.zones) and _DISTANT.issuperset(presence.zones)
    return away and presence.smoke is Answer.NO and presence.on_air is not Answer.YES
