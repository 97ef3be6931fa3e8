"""What has happened to a piece before it came into this program, as a list tells it?

A bare "cleaning" is no advanced cleaning until somebody says so: it is kept out of the records
that due dates rest on.
"""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, replace
from difflib import get_close_matches
from enum import StrEnum

from sootline.core.basis import ComponentId, DateSpan
from sootline.core.gear.components import Component
from sootline.core.gear.records import Deed, Record
from sootline.core.gear.state import Life
from sootline.core.roster.text import folded
from sootline.core.roster.unreadable import UnreadableCellError


class EventKind(StrEnum):
    """What a list may say was done with a piece."""

    ISSUE = "issue"
    EXPOSURE = "exposure"
    CLEANING = "cleaning"
    ADVANCED_CLEANING = "advanced-cleaning"
    INSPECTION = "inspection"
    ADVANCED_INSPECTION = "advanced-inspection"
    LINER_INSPECTION = "liner-inspection"
    REPAIR = "repair"
    RETIREMENT = "retirement"


@dataclass(frozen=True, kw_only=True)
class PastEvent:
    """Something that was done with a piece, on a day that may be known in part."""

    piece: ComponentId
    kind: EventKind
    on: DateSpan
    row: int


_WORDS = {
    EventKind.ISSUE: "issue; issued; first issue; first service; in service; entrega; "
    "puesta en servicio",
    EventKind.EXPOSURE: "exposure; fire; incident; call; worn; exposicion; incendio",
    EventKind.CLEANING: "cleaning; wash; washed; cleaned; lavado; limpieza",
    EventKind.ADVANCED_CLEANING: "advanced cleaning; limpieza avanzada",
    EventKind.INSPECTION: "inspection; inspected; inspeccion",
    EventKind.ADVANCED_INSPECTION: "advanced inspection; inspeccion avanzada",
    EventKind.LINER_INSPECTION: "liner inspection; complete liner inspection",
    EventKind.REPAIR: "repair; repaired; reparacion",
    EventKind.RETIREMENT: "retirement; retired; retire; disposal; disposed; baja; retiro",
}
_EVENT_OF = {word.strip(): kind for kind, words in _WORDS.items() for word in words.split(";")}
_DEEDS = {
    EventKind.ISSUE: Deed.ISSUED,
    EventKind.EXPOSURE: Deed.WORN,
    EventKind.ADVANCED_CLEANING: Deed.ADVANCED_CLEANING,
    EventKind.ADVANCED_INSPECTION: Deed.ADVANCED_INSPECTION,
    EventKind.LINER_INSPECTION: Deed.LINER_INSPECTION,
}


def read_event(text: str) -> EventKind:
    """Return what a word says was done.

    Raises:
        UnreadableCellError: the word is not known.
    """
    word = folded(text)
    if word not in _EVENT_OF:
        near = get_close_matches(word, _EVENT_OF, n=3, cutoff=0.6)
        raise UnreadableCellError("roster.event.unknown", near=", ".join(near or EventKind))
    return _EVENT_OF[word]


def with_events(
    components: Iterable[Component], events: Iterable[PastEvent]
) -> tuple[Component, ...]:
    """Return the components with what was done to them recorded; the retired ones retired."""
    of_piece: dict[ComponentId, list[PastEvent]] = defaultdict(list)
    for event in events:
        of_piece[event.piece].append(event)
    return tuple(_with(component, of_piece.get(component.id, [])) for component in components)


def _with(component: Component, events: list[PastEvent]) -> Component:
    done = tuple(
        Record(deed=_DEEDS[event.kind], on=event.on) for event in events if event.kind in _DEEDS
    )
    state = component.state
    if any(event.kind is EventKind.RETIREMENT for event in events):
        state = replace(state, life=Life.RETIRED)
    return replace(component, records=(*component.records, *done), state=state)
