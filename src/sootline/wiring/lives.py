"""What is the whole life of a piece, with the loads it was in? A demonstration keeps no record."""

from django.conf import settings

from sootline.core.basis import ComponentId
from sootline.core.ledger import ItemKind, component, kind_of, name_of
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.folding import fold_facts, loads_of
from sootline.core.ledger.lives import PieceLife
from sootline.storage.models import Link
from sootline.wiring.store import open_store

__all__ = ["Loads", "life_of"]

Loads = dict[str, tuple[str, ...]]


def life_of(piece: ComponentId) -> tuple[PieceLife, Loads] | None:
    """Return a piece's life, and what its loads held by name; None keeps no record of it."""
    if settings.DEMO:
        return None
    store, item = open_store(), component(piece)
    facts = list(read_facts(store.entries(item=item)))
    loads = sorted(loads_of(facts))
    facts += [fact for load in loads for fact in read_facts(store.entries(item=load))]
    found = {one.item: one for one in fold_facts(sorted(facts, key=lambda one: one.seq)).pieces}
    held = {name_of(load): _pieces_in(load) for load in loads}
    return (found[item], held) if item in found else None


def _pieces_in(load: str) -> tuple[str, ...]:
    """Name what was ever recorded as put into a load."""
    rows = Link.objects.filter(other=load).order_by("item").values_list("item", flat=True)
    return tuple(name_of(one) for one in rows if kind_of(one) is ItemKind.COMPONENT)
