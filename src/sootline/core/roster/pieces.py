"""Which components does a line of a list become, under which ids, in which state?"""

from collections.abc import Container, Iterator

from sootline.core.basis import (
    ComponentId,
    DateSpan,
    MemberId,
    MessageId,
    PlaceId,
    SetId,
)
from sootline.core.gear.components import Component
from sootline.core.gear.labels import Label
from sootline.core.gear.records import Deed, Record
from sootline.core.gear.state import Custody, Hold, Life, State
from sootline.core.roster.columns import Field
from sootline.core.roster.lines import Line
from sootline.core.roster.statuses import Status
from sootline.core.roster.text import folded
from sootline.core.rulebook.contaminants import Decider

ESCALATE_AFTER_H = 12
_NOBODY = frozenset(
    (
        "spare", "spares", "pool", "stock", "loaner", "loaners", "reserve", "unassigned", "none",
        "nobody", "repuesto", "reserva", "sin asignar", "nadie",
    )
)  # fmt: skip


def hold_for(question: str) -> Hold:
    """Return the open hold with which a piece comes in until somebody answers.

    Args:
        question: what has to be answered, as a message id.
    """
    return Hold(
        cause=f"import/{question.rpartition('.')[2]}",
        question=MessageId(question),
        decider=Decider.GEAR_OFFICER,
        deputy=Decider.CHIEF,
        escalate_after_h=ESCALATE_AFTER_H,
    )


def owner_of(line: Line) -> MemberId | None:
    """Return whose piece it is; "spare" and its like are nobody's."""
    member = line.text(Field.MEMBER)
    return MemberId(member) if member and folded(member) not in _NOBODY else None


def components_of(line: Line, taken: Container[str]) -> Iterator[Component]:
    """Return one component per kind the line names.

    The dates, count and state the line gives are said of the whole, so each part has them; serial,
    lot and mass stand on one label and go to the first part, if it is the only one.

    Args:
        taken: ids that are in use already.
    """
    whole = ComponentId(_free_id(line, taken))
    for index, kind in enumerate(line.kinds):
        first = index == 0
        yield Component(
            id=whole if first else ComponentId(f"{whole}/{kind}"),
            kind=kind,
            owner=owner_of(line),
            set=SetId(named) if (named := line.text(Field.SET)) else None,
            size=line.size,
            mass=line.mass if len(line.kinds) == 1 else None,
            label=_label(line) if first else Label(maker=line.text(Field.MAKER)),
            made=_made(line),
            in_service=line.span(Field.IN_SERVICE),
            wash_count=line.wash_count,
            records=_records(line),
            state=_state(line),
        )


def is_unlabelled_part(component: Component) -> bool:
    """Whether it came in as part of a whole and its own label was never read."""
    return component.label.serial is None and component.id.endswith(f"/{component.kind}")


def _free_id(line: Line, taken: Container[str]) -> str:
    """Return an id of its own: the list's, else the serial, told apart where it stands twice."""
    given = line.text(Field.ID) or line.text(Field.SERIAL) or f"row-{line.row}"
    candidates = (given, f"{given} {line.kinds[0]}")
    for candidate in candidates:
        if candidate not in taken:
            return candidate
    return f"{given} {line.kinds[0]} #{line.row}"


def _label(line: Line) -> Label:
    return Label(
        maker=line.text(Field.MAKER),
        style=line.text(Field.STYLE),
        lot=line.text(Field.LOT),
        serial=line.text(Field.SERIAL),
        edition=line.text(Field.EDITION),
    )


def _records(line: Line) -> tuple[Record, ...]:
    deeds = ((Deed.ADVANCED_CLEANING, Field.CLEANED), (Deed.ADVANCED_INSPECTION, Field.INSPECTED))
    return tuple(Record(deed=deed, on=line.span(of)) for deed, of in deeds if line.span(of).latest)


def _made(line: Line) -> DateSpan:
    """Return when it was made; without a date, not after the day it was paid for."""
    made, bought = line.span(Field.MADE), line.span(Field.PURCHASED).latest
    if made.latest is None and bought is not None:
        return DateSpan(earliest=made.earliest, latest=bought)
    return made


def _state(line: Line) -> State:
    """Return the state a line gives; a piece without owner is on the spare rack."""
    status = line.status or Status()
    place = line.text(Field.PLACE)
    life = status.life
    if line.span(Field.RETIRED).latest and life is not Life.DISPOSED:
        life = Life.RETIRED
    without_word = Custody.MEMBER if owner_of(line) else Custody.SPARE_RACK
    return State(
        custody=status.custody or without_word,
        place=PlaceId(place) if place else None,
        holder=owner_of(line),
        life=life,
        holds=(hold_for(status.hold),) if status.hold else (),
    )
