"""Which component is it: identity, kind, label, dates, owner, size?"""

from dataclasses import dataclass
from typing import Annotated

from sootline.core.basis import (
    ComponentId,
    DateSpan,
    GuideId,
    KindId,
    MappingForm,
    MemberId,
    Quantity,
    SetId,
)
from sootline.core.gear.labels import Label
from sootline.core.gear.records import Record
from sootline.core.gear.state import State


@dataclass(frozen=True, kw_only=True)
class Component:
    """One tracked component; a set is only a view over several.

    Args:
        owner: whose it is; None is a spare or belongs to the pool.
        set: the set it belongs to.
        size: by dimension ("chest", "waist", "inseam", "hand"), as on the label.
        mass: weighed dry; None is not weighed.
        traits: what sets it apart from its kind ("leather", "rubber", "aluminised",
            "particulate-blocking", "cbrn").
        guide: the maker's guide that covers it.
        guest: the department that owns it, when it is not ours.
        records: what was done to it, as far as it was written down, in any order.
        wash_count: advanced cleanings so far; None is not known.
    """

    id: ComponentId
    kind: KindId
    owner: MemberId | None = None
    set: SetId | None = None
    size: Annotated[tuple[tuple[str, str], ...], MappingForm()] = ()
    mass: Quantity | None = None
    traits: tuple[str, ...] = ()
    label: Label = Label()
    guide: GuideId | None = None
    made: DateSpan = DateSpan()
    in_service: DateSpan = DateSpan()
    guest: str | None = None
    wash_count: int | None = None
    records: tuple[Record, ...] = ()
    state: State = State()
