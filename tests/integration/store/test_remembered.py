"""What is handed out from memory equals what all rows say, whatever was written in between."""

import random

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from tests.integration.store_acts import draft, erasure, store_in, worn
from tests.integration.store_databases import Database, Databases

from sootline.core.ledger import Draft, EntryKind, ItemKind, component, item
from sootline.storage.ledger import LedgerStore
from sootline.storage.register import RegisterStore
from sootline.storage.remembered import RememberedRegister, remember

K = EntryKind
PIECES = tuple(component(f"{n:04}") for n in range(6))
KINDS = (K.RETURNED_SOILED, K.SORTED, K.HUNG, K.DRIED, K.TOUCH_CHECKED, K.BACK_ON_HOOK)


def _drawn(chance: random.Random, key: str, last: int) -> Draft:
    """Draft any entry that may change a row, of its own thing or of another."""
    piece, load = chance.choice(PIECES), item(ItemKind.LOAD, f"W-{chance.randrange(3)}")
    roll = chance.random()
    if roll < 0.15:
        station = chance.choice(("1", "2", None))
        return draft(key, K.REGISTERED, piece, kind="hood", station=station, owner="118")
    if roll < 0.3:
        return draft(key, K.PUT_IN_WASHER, piece, load=load.partition(":")[2], by="118")
    if roll < 0.4:
        return draft(key, chance.choice((K.LOAD_ENDED, K.LOAD_FAILED)), load, by="118", said="x")
    if roll < 0.55:
        moved = {"item": chance.choice(PIECES)} if chance.random() < 0.5 else {"withdrawn": True}
        return draft(key, K.CORRECTED, piece, corrects=last, reason="typing", **moved)
    if roll < 0.65:
        member = item(ItemKind.MEMBER, chance.choice(("118", "119")))
        return draft(key, chance.choice((K.REGISTERED, K.FACTS_CHANGED)), member, crew=key)
    if roll < 0.7:
        return erasure(key, last, piece)
    if roll < 0.75:
        return draft(key, K.DISPOSED, piece, by="118", method="cut up", witness="119")
    return draft(key, chance.choice(KINDS), piece, by="118", place="rack")


def _everything(register: RegisterStore | RememberedRegister) -> tuple[object, ...]:
    return (
        sorted(register.components(), key=lambda one: one.component.id),
        sorted(register.disposed(), key=lambda one: one.component.id),
        [register.component(one.component.id) for one in register.components()],
        [register.things(kind) for kind in (ItemKind.MEMBER, ItemKind.LOAD)],
        sorted(register.components_of("118"), key=lambda one: one.component.id),  # type: ignore[arg-type]
        register.thing(item(ItemKind.LOAD, "W-1")),
    )


def _append(store: LedgerStore, found: Draft) -> None:
    try:
        store.append([found])
    except ValueError:
        return  # what it corrects or erases is not there; nothing is recorded


@pytest.mark.parametrize("seed", range(4))
def test_what_is_remembered_equals_what_the_rows_say(database: Database, seed: int) -> None:
    """After each of a hundred entries of every sort, memory and rows agree, for every station."""
    store, chance = store_in(database), random.Random(seed)  # noqa: S311  # repeatable
    for at in range(100):
        _append(store, _drawn(chance, f"k{at}", max(1, store.head().seq)))
        for station in (None, "1"):
            kept = RememberedRegister(remember(), station)
            assert _everything(kept) == _everything(RegisterStore(station=station))
            assert kept.head == store.head()
    assert store.head().seq > 60


@pytest.fixture
def store(databases: Databases) -> LedgerStore:
    """Make a record of one piece on a file."""
    made = store_in(databases.fresh("sqlite"))
    made.append([draft("r", K.REGISTERED, component("0412"), kind="hood")])
    return made


def test_nothing_is_read_again_while_nothing_is_written(store: LedgerStore) -> None:
    """The same rows are handed out, and the database is asked for the record's end alone."""
    before = remember()
    with CaptureQueriesContext(connection) as asked:
        again = remember()

    assert again is before
    assert len(asked) == 2
    assert store.head() == again.head


def test_untouched_components_stay_the_same_objects(store: LedgerStore) -> None:
    """What judges by identity may rely on it."""
    store.append([draft("s", K.REGISTERED, component("0413"), kind="hood")])
    before = remember().known
    store.append([worn("w", "0413")])
    after = remember().known

    assert after["0412"] is before["0412"]  # type: ignore[index]
    assert after["0413"].component.state.stage == "worn"  # type: ignore[index]


def test_another_record_under_the_same_connection_is_read_anew(
    store: LedgerStore, databases: Databases
) -> None:
    """A store that was replaced underneath is noticed by its hashes."""
    store.append([worn("w", "0412"), worn("v", "0412")])
    assert "0412" in remember().known
    other = store_in(databases.fresh("sqlite"))
    other.append([draft(f"r{n}", K.REGISTERED, component(f"9{n:03}"), kind="hood")
                  for n in range(5)])  # fmt: skip

    assert sorted(remember().known) == [f"9{n:03}" for n in range(5)]
