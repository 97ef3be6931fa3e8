"""What was done with known gear, as a list of events tells it?"""

import datetime as dt
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import replace

from sootline.core.basis import ComponentId, DateSpan
from sootline.core.gear.components import Component
from sootline.core.roster.chronology import event_disorders
from sootline.core.roster.columns import Field
from sootline.core.roster.events import PastEvent, with_events
from sootline.core.roster.lines import Line, LineReader
from sootline.core.roster.pieces import is_unlabelled_part


def read_history(
    lines: Iterable[Line], known: tuple[Component, ...], reader: LineReader, today: dt.date
) -> tuple[Component, ...]:
    """Return the known components with what was done to them; faults go to the reader."""
    named: dict[str, list[PastEvent]] = defaultdict(list)
    for line in lines:
        name = line.text(Field.ID) or line.text(Field.SERIAL)
        if line.event is None:
            continue
        if name is None:
            reader.refuse(line.row, Field.SERIAL, "", "roster.event.no_piece", value="")
            continue
        piece = ComponentId(name)
        on = line.span(Field.DATE)
        named[name].append(PastEvent(piece=piece, kind=line.event, on=on, row=line.row))
    pieces = _by_name(known)
    events: list[PastEvent] = []
    for name, told in named.items():
        found = pieces.get(name, ())
        _refuse_disorder(told, found, reader, today)
        if len(found) == 1:
            events += _of_parts(found[0], told, known)
        else:
            _refuse_name(name, told, found, reader)
    return with_events(known, events)


def _by_name(known: tuple[Component, ...]) -> dict[str, tuple[Component, ...]]:
    """Return the pieces each name may mean: by id, else by serial."""
    by_serial: dict[str, list[Component]] = defaultdict(list)
    for component in known:
        if component.label.serial:
            by_serial[component.label.serial].append(component)
    named = {serial: tuple(pieces) for serial, pieces in by_serial.items()}
    return named | {component.id: (component,) for component in known}


def _refuse_name(
    name: str, told: list[PastEvent], found: tuple[Component, ...], reader: LineReader
) -> None:
    message = "roster.event.several" if found else "roster.event.no_such_piece"
    several = ", ".join(component.id for component in found)
    for event in told:
        reader.refuse(event.row, Field.SERIAL, "", message, value=name, known=several)


def _refuse_disorder(
    told: list[PastEvent], found: tuple[Component, ...], reader: LineReader, today: dt.date
) -> None:
    made = found[0].made if len(found) == 1 else DateSpan()
    in_service = found[0].in_service if len(found) == 1 else DateSpan()
    for disorder in event_disorders(told, made, in_service, today):
        values = {"value": disorder.date, "other": disorder.other}
        reader.refuse(disorder.row, Field.DATE, "", disorder.message, **values)


def _of_parts(
    whole: Component, told: list[PastEvent], known: tuple[Component, ...]
) -> list[PastEvent]:
    """Say the events of the whole and of the parts that came in with it, unlabelled."""
    parts = [part for part in known if part.id == f"{whole.id}/{part.kind}"]
    unlabelled = [part.id for part in parts if is_unlabelled_part(part)]
    return [replace(event, piece=piece) for piece in (whole.id, *unlabelled) for event in told]
