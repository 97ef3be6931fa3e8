"""Which component of a job is it, by its register and its history?"""

import json
from collections.abc import Mapping
from dataclasses import fields, replace

from sootline.core.basis import BadInputError, ComponentId, KindId
from sootline.core.gear import Component
from sootline.core.job.codec import decode
from sootline.core.ledger import EntryKind, name_of
from sootline.core.ledger.canonical import Json
from sootline.core.ledger.lives import Effect, PieceLife

_NOT_FROM_REGISTER = frozenset({"id", "state", "wash_count"})
_FROM_REGISTER = frozenset(field.name for field in fields(Component)) - _NOT_FROM_REGISTER
_UNKNOWN_KIND = KindId("unknown")
_OFFER_ENDS = (EntryKind.TRANSFER_ACCEPTED, EntryKind.TRANSFER_DECLINED)


def component_of(piece: PieceLife) -> Component:
    """Return a component as its register and its history have it.

    A register that makes no component (another installation's, a wrong correction) leaves its
    number, its kind and its state.
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


def station_of(piece: PieceLife) -> str | None:
    """Return the station it belongs to, where that is said."""
    station = piece.register.get("station")
    return station if isinstance(station, str) else None


def offered_to(piece: PieceLife) -> str | None:
    """Return the station it is offered to, while nobody there has answered."""
    to = None
    for line in piece.history:
        fact = line.settled.fact
        if line.effect is Effect.WITHDRAWN:
            continue
        if fact.kind is EntryKind.TRANSFER_OFFERED:
            to = fact.text("to")
        elif fact.kind in _OFFER_ENDS:
            to = None
    return to


def _registered(identity: ComponentId, said: Mapping[str, Json]) -> Component:
    try:
        # Payloads were canonical when they came in; how they are spelled here is all the same.
        return decode(Component, json.dumps({"kind": _UNKNOWN_KIND, **said, "id": identity}))
    except BadInputError:
        kind = said.get("kind")
        return Component(id=identity, kind=KindId(kind) if isinstance(kind, str) else _UNKNOWN_KIND)
