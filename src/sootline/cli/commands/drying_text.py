"""How is an outlook on drying said?"""

from collections.abc import Iterator

from sootline.cli.output import finding_lines
from sootline.cli.pieces import wrapped
from sootline.core.basis import MinuteSpan
from sootline.core.drying.for_plans import DryingOutlook, PlaceEstimate
from sootline.core.machines import Moisture
from sootline.words import say


def outlook_lines(outlook: DryingOutlook, moisture: Moisture, *, lang: str) -> Iterator[str]:
    """Say every place's interval and what it rests on, then what the room's air takes."""
    yield from wrapped(say("drying.line.heading", lang=lang), indent=0)
    ends = (moisture.band.low, moisture.band.likely, moisture.band.high)
    low, likely, high = (f"{share * 100:.0f}" for share in ends)
    values = {"low": low, "likely": likely, "high": high}
    yield from wrapped(say(moisture.rests_on, values, lang=lang), indent=0)
    for one in outlook.places:
        yield from ("", *_place(one, lang))
    yield from ("", say("drying.line.room", lang=lang))
    yield from finding_lines(outlook.room.findings, lang=lang)
    if outlook.left_out:
        yield from ("", say("drying.line.left_out", lang=lang))
        yield from finding_lines(outlook.left_out, lang=lang)
    yield ""
    yield from wrapped(say("drying.line.never_the_clock", lang=lang), indent=0)


def _place(one: PlaceEstimate, lang: str) -> Iterator[str]:
    values = {"place": one.place, "cloth": one.cloth.value, "mass": f"{one.batch_kg:.1f}"}
    if one.estimate is None:
        yield from wrapped(say("drying.line.none", values, lang=lang), indent=0)
    else:
        found = one.estimate
        values |= _hours(found.minutes) | {
            "water": f"{found.water_kg:.1f}",
            "rate": f"{found.rate_kg_h:.2f}",
            "bound": found.bound.value,
        }
        yield from wrapped(say("drying.line.estimate", values, lang=lang), indent=0)
        rests = {"place": one.place, "kind": one.cloth.value, "minutes": str(found.minutes)}
        yield from wrapped(say(found.minutes.rests_on, rests, lang=lang))
    yield from finding_lines(one.findings, lang=lang)


def _hours(minutes: MinuteSpan) -> dict[str, str]:
    """Return the ends of an interval in hours, as people speak of drying."""
    return {
        "earliest": f"{minutes.earliest / 60:.1f}",
        "likely": f"{minutes.likely / 60:.1f}",
        "late": f"{minutes.late / 60:.1f}",
    }
