"""Which rows of the timeline does a wash plan fill?"""

from collections import defaultdict
from collections.abc import Iterable, Iterator

from sootline.core.basis import ComponentId
from sootline.core.washplan.worksheet import DrySheet, Worksheet
from sootline.paper.speaking import Speaker
from sootline.paper.timeline import Bar, Row
from sootline.tasks.plan_wash import PlanResult


def rows_of(plan: PlanResult, speaker: Speaker) -> tuple[Row, ...]:
    """Return drums, then places for handwork, then drying places, as the work goes."""
    sheet = plan.worksheet
    return (*_drums(sheet, speaker), *_by_hand(sheet), *_drying(sheet, speaker))


def _drums(sheet: Worksheet, speaker: Speaker) -> Iterator[Row]:
    for washer in dict.fromkeys(load.washer for load in sheet.loads):
        loads = [load for load in sheet.loads if load.washer == washer]
        yield Row(
            name=washer,
            bars=tuple(
                Bar(
                    label=_load_name(load.number, speaker),
                    short=str(load.number),
                    start=load.start.likely,
                    likely=load.end.likely,
                    late=load.end.late,
                )
                for load in loads
            ),
        )


def _by_hand(sheet: Worksheet) -> Iterator[Row]:
    for station in dict.fromkeys(hand.station for hand in sheet.hand):
        there = [hand for hand in sheet.hand if hand.station == station]
        first = min(hand.start.likely for hand in there)
        likely = max(hand.end.likely for hand in there)
        late = max(hand.end.late for hand in there)
        yield Row(
            name=station, bars=(Bar(label=str(len(there)), start=first, likely=likely, late=late),)
        )


def _drying(sheet: Worksheet, speaker: Speaker) -> Iterator[Row]:
    """Join what came out of one load, or was washed by hand, into one bar for each place."""
    load_of = {name: load.number for load in sheet.loads for name in load.components}
    places: dict[str, dict[int, list[DrySheet]]] = defaultdict(lambda: defaultdict(list))
    for dry in sheet.drying:
        places[dry.where][_load(dry.components, load_of)].append(dry)
    for place, loads in places.items():
        bars = tuple(_together(number, runs, speaker) for number, runs in loads.items())
        yield Row(name=speaker.names("dry_method", place.split(", "))[0], bars=bars)


def _load(components: Iterable[ComponentId], load_of: dict[ComponentId, int]) -> int:
    return next((load_of[name] for name in components if name in load_of), 0)


def _together(number: int, runs: list[DrySheet], speaker: Speaker) -> Bar:
    pieces = sum(len(run.components) for run in runs)
    came = _load_name(number, speaker) if number else speaker.say("paper.timeline.by_hand")[0]
    return Bar(
        label=speaker.say("paper.timeline.dries", load=came, n=pieces)[0],
        short=str(pieces),
        start=min(run.start.likely for run in runs),
        likely=max(run.end.likely for run in runs),
        late=max(run.end.late for run in runs),
    )


def _load_name(number: int, speaker: Speaker) -> str:
    return speaker.say("paper.timeline.load", load_no=number)[0]
