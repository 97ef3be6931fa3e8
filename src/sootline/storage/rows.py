"""Which row stands for a component's or a thing's life?"""

from collections.abc import Mapping
from dataclasses import fields, replace

from sootline.core.basis import BadInputError, ComponentId, KindId
from sootline.core.gear import Component
from sootline.core.job.codec import decode, encode
from sootline.core.ledger import canonical, kind_of, name_of
from sootline.core.ledger.canonical import Json
from sootline.core.ledger.lives import PieceLife
from sootline.core.ledger.things import ThingLife
from sootline.storage.models import ComponentRow, Thing

_NOT_FROM_REGISTER = frozenset({"id", "state", "wash_count"})
_FROM_REGISTER = frozenset(field.name for field in fields(Component)) - _NOT_FROM_REGISTER
_UNKNOWN_KIND = KindId("unknown")


def component_of(piece: PieceLife) -> Component:
    """Return a component as its register and its history have it.

    A register that no longer makes a component (another installation's, a wrong correction)
    leaves its number, its kind and its state.
    """
    identity = ComponentId(name_of(piece.item))
    said = {
        name: value
        for name, value in piece.register.items()
        if name in _FROM_REGISTER and value is not None
    }
    registered = _registered(identity, said)
    return replace(
        registered,
        state=piece.state,
        records=(*registered.records, *piece.records),
        wash_count=piece.wash_count,
    )


def component_row(piece: PieceLife) -> ComponentRow:
    """Return the row of a component."""
    component = component_of(piece)
    state, label = component.state, component.label
    made = component.made if component.made.latest else label.made
    station = piece.register.get("station")
    return ComponentRow(
        id=component.id,
        kind=component.kind,
        owner=component.owner,
        holder=state.holder,
        set=component.set,
        station=station if isinstance(station, str) else None,
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


def _registered(identity: ComponentId, said: Mapping[str, Json]) -> Component:
    try:
        return decode(Component, canonical({"kind": _UNKNOWN_KIND, **said, "id": identity}))
    except BadInputError:
        kind = said.get("kind")
        return Component(id=identity, kind=KindId(kind) if isinstance(kind, str) else _UNKNOWN_KIND)
