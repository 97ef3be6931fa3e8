"""Which row stands for a component's or a thing's life, and which life for a row?"""

import json

from sootline.core.basis import ItemId
from sootline.core.gear import Component
from sootline.core.job.codec import encode
from sootline.core.job.lives import component_of, offered_to, station_of
from sootline.core.ledger import canonical, kind_of
from sootline.core.ledger.lives import PieceLife
from sootline.core.ledger.things import ThingLife
from sootline.storage.models import ComponentRow, Thing


def component_row(piece: PieceLife) -> ComponentRow:
    """Return the row of a component."""
    component = component_of(piece)
    state, label = component.state, component.label
    made = component.made if component.made.latest else label.made
    return ComponentRow(
        id=component.id,
        kind=component.kind,
        owner=component.owner,
        holder=state.holder,
        set=component.set,
        station=station_of(piece),
        offered_to=offered_to(piece),
        place=state.place,
        maker=label.maker,
        lot=label.lot,
        serial=label.serial,
        custody=state.custody.value,
        stage=state.stage.value,
        life=state.life.value,
        holds=len(state.open_holds),
        made_by=made.latest,
        document=encode(Component, component, indent=None),
        seq=piece.last_seq,
    )


def thing_row(thing: ThingLife) -> Thing:
    """Return the row of any other thing."""
    return Thing(
        item=thing.item,
        kind=kind_of(thing.item).value,
        facts=canonical(thing.facts),
        registered=thing.registered,
        seq=thing.last_seq,
    )


def life_of(row: Thing) -> ThingLife:
    """Return the life of a thing's row."""
    return ThingLife(
        item=ItemId(row.item),
        facts=json.loads(row.facts),
        registered=row.registered,
        last_seq=row.seq,
    )
