"""What do the entries add up to, in the tables that screens read?

An entry refreshes the things it touches from all that was ever said of them, so that replaying
the whole record comes to the same rows.
"""

from collections.abc import Iterable, Iterator, Sequence
from itertools import chain, islice
from typing import TypeVar

from django.db.models import Q

from sootline.core.basis import ItemId
from sootline.core.ledger import Entry, EntryKind, ItemKind, kind_of, name_of
from sootline.core.ledger.facts import Fact, read_facts
from sootline.core.ledger.folding import fold_facts, loads_of, touched
from sootline.core.ledger.lives import PieceLife
from sootline.core.ledger.things import ThingLife, fold_things
from sootline.storage.entries import in_order
from sootline.storage.models import ComponentRow, EntryRow, Link, Thing
from sootline.storage.models.projections import DueBasis, DueDay
from sootline.storage.questions import put_questions
from sootline.storage.rows import component_row, thing_row

# More names than this do not go into one question to SQLite.
_AT_ONCE = 400
# Only these can say that another thing's entries belong to an item's life.
_MAY_LINK = Q(kind__in=(EntryKind.CORRECTED.value, EntryKind.FOREIGN.value)) | Q(
    payload__body__contains='"load":'
)
T = TypeVar("T")
_COLUMNS = tuple(
    field.name for field in ComponentRow._meta.concrete_fields if not field.primary_key
)


def project(alias: str, fresh: Sequence[Entry]) -> None:
    """Bring the tables up to the entries just added."""
    if not fresh:
        return
    facts = read_facts(fresh)
    _link(alias, facts)
    for some in batched(sorted(concerned(alias, facts)), _AT_ONCE):
        _refresh(alias, frozenset(some))


def concerned(alias: str, facts: Iterable[Fact]) -> frozenset[ItemId]:
    """Name everything whose rows these facts may change, once their links are noted."""
    changed = touched(facts)
    return changed | _found(alias, "item", "other", changed)


def replay(alias: str) -> int:
    """Make every row anew from the entries alone; return how many entries there were.

    To be called while nobody writes, in a transaction.
    """
    for model in (ComponentRow, Thing, Link, DueDay, DueBasis):
        model.objects.using(alias).all().delete()
    rows = EntryRow.objects.using(alias)
    items = {ItemId(item) for item in rows.values_list("item", flat=True).distinct()}
    for some in batched(in_order(rows.filter(_MAY_LINK)), 5000):
        facts = read_facts(some)
        _link(alias, facts)
        items |= touched(facts)
    for chosen in batched(sorted(items), _AT_ONCE):
        _refresh(alias, frozenset(chosen))
    return rows.count()


def _link(alias: str, facts: Iterable[Fact]) -> None:
    """Note which other things' entries belong to the life of an item."""
    links = {(item, other) for fact in facts for item, other in _links_of(fact) if item != other}
    Link.objects.using(alias).bulk_create(
        [Link(item=item, other=other) for item, other in sorted(links)],
        ignore_conflicts=True,
        batch_size=_AT_ONCE,
    )


def _links_of(fact: Fact) -> Iterator[tuple[ItemId, ItemId]]:
    for item in touched([fact]):
        yield item, fact.item
        for load in loads_of([fact]):
            yield item, load


def _refresh(alias: str, items: frozenset[ItemId]) -> None:
    """Make the rows of some things from everything that belongs to their lives."""
    needed = items | _found(alias, "other", "item", items)
    facts = read_facts(_about(alias, needed))
    pieces = fold_facts(facts).pieces
    _put(alias, items, pieces, fold_things(facts))
    put_questions(alias, items, pieces)


def _put(
    alias: str,
    items: frozenset[ItemId],
    pieces: Iterable[PieceLife],
    things: Iterable[ThingLife],
) -> None:
    """Replace the rows of some things."""
    mine = [piece for piece in pieces if piece.item in items]
    rows = [component_row(piece) for piece in mine if piece.stands]
    ComponentRow.objects.using(alias).bulk_create(
        rows, update_conflicts=True, unique_fields=["id"], update_fields=_COLUMNS,
        batch_size=_AT_ONCE // 4,
    )  # fmt: skip
    undone = [name_of(piece.item) for piece in mine if not piece.stands]
    ComponentRow.objects.using(alias).filter(id__in=undone).delete()
    others = [thing_row(thing) for thing in things if thing.item in items]
    Thing.objects.using(alias).bulk_create(
        others, update_conflicts=True, unique_fields=["item"],
        update_fields=["kind", "facts", "registered", "seq"], batch_size=_AT_ONCE // 5,
    )  # fmt: skip
    there = {row.item for row in others}
    gone = [item for item in items if kind_of(item) is not ItemKind.COMPONENT and item not in there]
    Thing.objects.using(alias).filter(item__in=gone).delete()


def _about(alias: str, items: frozenset[ItemId]) -> list[Entry]:
    """Read all entries about some things, in the record's order."""
    rows = EntryRow.objects.using(alias)
    found = chain.from_iterable(
        in_order(rows.filter(item__in=some)) for some in batched(sorted(items), _AT_ONCE)
    )
    return sorted(found, key=lambda entry: entry.seq)


def _found(alias: str, wanted: str, given: str, items: frozenset[ItemId]) -> frozenset[ItemId]:
    """Follow the links from some things to others."""
    found: set[ItemId] = set()
    for some in batched(sorted(items), _AT_ONCE):
        rows = Link.objects.using(alias).filter(**{f"{given}__in": some})
        found.update(ItemId(name) for name in rows.values_list(wanted, flat=True))
    return frozenset(found)


def batched(items: Iterable[T], size: int) -> Iterator[tuple[T, ...]]:
    """Take items in parts of so many."""
    rest = iter(items)
    while some := tuple(islice(rest, size)):
        yield some
