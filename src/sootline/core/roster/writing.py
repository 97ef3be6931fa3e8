"""What does a gear list look like that this program reads back as the same pieces?

Everything a list can say is written; what only the register holds (holds, records beyond the last
of a kind, who wears what where) is not. A piece whose state a list has no word for gets both words
it has, which no list is read by: better refused than misread.
"""

from collections.abc import Iterable

from sootline.core.gear.components import Component
from sootline.core.gear.records import Deed
from sootline.core.gear.state import Custody
from sootline.core.roster.columns import Field
from sootline.core.roster.statuses import STATUSES

_SIZES = (
    Field.CHEST,
    Field.LENGTH,
    Field.SLEEVE,
    Field.WAIST,
    Field.INSEAM,
    Field.RISE,
    Field.CUT,
    Field.HAND,
    Field.FOOT,
    Field.WIDTH,
    Field.LETTER,
    Field.SIZE,
)
_BEFORE = (Field.ID, Field.KIND, Field.MEMBER, Field.SET, Field.PLACE, Field.STATUS)
_AFTER = (
    Field.SERIAL,
    Field.LOT,
    Field.MAKER,
    Field.STYLE,
    Field.EDITION,
    Field.MADE,
    Field.IN_SERVICE,
    Field.CLEANED,
    Field.INSPECTED,
    Field.MASS,
    Field.WASH_COUNT,
)
_NAMES = {Field.CLEANED: "advanced cleaning", Field.INSPECTED: "advanced inspection"}
GEAR_HEADER = tuple(
    _NAMES.get(field, field.value.replace("-", " ")) for field in (*_BEFORE, *_SIZES, *_AFTER)
)


def gear_rows(components: Iterable[Component]) -> tuple[tuple[str, ...], ...]:
    """Return one row of texts per piece, in the order of GEAR_HEADER."""
    return tuple(_row(component) for component in components)


def _row(component: Component) -> tuple[str, ...]:
    sizes = dict(component.size)
    label = component.label
    before = (
        component.id,
        component.kind,
        component.owner,
        component.set,
        component.state.place,
        _status(component),
    )
    after = (
        label.serial,
        label.lot,
        label.maker,
        label.style,
        label.edition,
        _known(str(component.made)),
        _known(str(component.in_service)),
        _last(component, Deed.ADVANCED_CLEANING),
        _last(component, Deed.ADVANCED_INSPECTION),
        component.mass,
        component.wash_count,
    )
    middle = (sizes.get(field.value) for field in _SIZES)
    return tuple("" if cell is None else str(cell) for cell in (*before, *middle, *after))


def _known(span: str) -> str:
    return "" if span == "unknown" else span


def _last(component: Component, deed: Deed) -> str:
    done = [record.on for record in component.records if record.deed is deed and record.on.latest]
    return str(max(done, key=lambda span: str(span.latest))) if done else ""


def _status(component: Component) -> str:
    """Return the status word a list would use."""
    state = component.state
    without_word = Custody.MEMBER if component.owner else Custody.SPARE_RACK
    asked = {hold.question for hold in state.open_holds} & _LISTED
    for word, status in STATUSES.items():
        same_place = (status.custody or without_word) is state.custody
        if status.life is state.life and same_place and asked == {status.hold} - {""}:
            return word
    return f"{state.life.value}, {state.custody.value}"


_LISTED = {status.hold for status in STATUSES.values()} - {""}
