"""What is the whole life of a piece, with the loads it was in? A demonstration keeps no record."""

from django.conf import settings

from sootline.core.basis import ComponentId, ItemId
from sootline.core.job.codec import decode
from sootline.core.job.jobs import Job
from sootline.core.ledger import EntryKind, ItemKind, canonical, component, kind_of, name_of
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.folding import fold_facts, loads_of
from sootline.core.ledger.lives import PieceLife
from sootline.core.rebuild import AfterWashCheck
from sootline.storage.models import Link
from sootline.wiring.store import open_store

__all__ = ["Loads", "checks_of", "life_of"]

_CHECKS = (EntryKind.TOUCH_CHECKED, EntryKind.NOTED)
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


def checks_of(piece: ComponentId, job: Job) -> tuple[AfterWashCheck, ...]:
    """Return every check of a piece that is recorded, the newest first; those of a job at least."""
    if settings.DEMO:
        return tuple(one for one in job.checks if one.component == piece)
    facts = read_facts(open_store().entries(item=component(piece)))
    said = [fact.payload.get("check") for fact in facts if fact.kind in _CHECKS]
    found = [decode(AfterWashCheck, canonical(one)) for one in said if isinstance(one, dict)]
    return tuple(sorted(found, key=lambda check: check.at, reverse=True))


def _pieces_in(load: str) -> tuple[str, ...]:
    """Name what was ever recorded as put into a load."""
    rows = Link.objects.filter(other=load).order_by("item").values_list("item", flat=True)
    items = (ItemId(one) for one in rows)
    return tuple(name_of(one) for one in items if kind_of(one) is ItemKind.COMPONENT)
