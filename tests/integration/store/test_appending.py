"""What comes into the record comes in whole, once and in its place, on every database."""

import datetime as dt

import pytest
from django.db import connection
from tests.integration.store_acts import NOON, erasure, store_in, worn
from tests.integration.store_databases import Database

from sootline.core.basis import BadInputError
from sootline.core.ledger import (
    ClockFlag,
    KeyReusedError,
    OvertakenError,
    component,
    verify_chain,
)


def test_entries_stand_one_after_another(database: Database) -> None:
    """Entries get their places in turn, and the chain reads back whole."""
    store = store_in(database)

    for n in range(5):
        store.append([worn(f"k{n}")])

    found = verify_chain(store.entries())
    assert (found.entries, found.intact) == (5, True)
    assert store.head().hash == found.head


def test_the_bytes_come_back(database: Database) -> None:
    """The texts read back are the very texts that were hashed, in every script."""
    store = store_in(database)
    draft = worn("k", "Ärmel-0412 ‐ 袖 🧥")

    (made,) = store.append([draft])

    assert list(store.entries()) == [made.entry]


def test_a_repeated_request_is_answered_again(database: Database) -> None:
    """The same key with the same words gets the entry it made the first time."""
    store = store_in(database)
    (first,) = store.append([worn("k")])
    store.append([worn("other")])

    (again,) = store.append([worn("k")])

    assert (again.entry, again.repeated) == (first.entry, True)
    assert store.head().seq == 2


def test_a_key_with_other_words_is_refused(database: Database) -> None:
    """Two different acts cannot be one request."""
    store = store_in(database)
    store.append([worn("k", "0412")])

    with pytest.raises(KeyReusedError):
        store.append([worn("k", "0413")])

    assert store.head().seq == 1


def test_a_key_belongs_to_its_actor(database: Database) -> None:
    """Two people may choose the same key."""
    store = store_in(database)

    store.append([worn("k", actor="118")])
    store.append([worn("k", actor="119")])

    assert store.head().seq == 2


def test_an_overtaken_asker_is_told(database: Database) -> None:
    """Whoever did not see the last entry about a piece gets to see it, and nothing is written."""
    store = store_in(database)
    (first,) = store.append([worn("a")])
    (second,) = store.append([worn("b", after=first.entry.seq)])

    with pytest.raises(OvertakenError) as raised:
        store.append([worn("c", after=first.entry.seq)])

    assert raised.value.entry == second.entry
    assert store.head().seq == 2


def test_an_act_is_whole_or_nothing(database: Database) -> None:
    """When one half of an act cannot be recorded, neither is."""
    store = store_in(database)
    store.append([worn("a", "0412"), worn("b", "0413")])

    with pytest.raises(KeyReusedError):
        store.append([worn("c", "0412"), worn("b", "0412")])

    assert store.head().seq == 2


def test_an_erasure_takes_the_payload(database: Database) -> None:
    """Two people may have a payload erased: it is gone, shown as erased, and the chain holds."""
    store = store_in(database)
    store.append([worn("a")])

    store.append([erasure("e", 1, component("0412"))])

    found = verify_chain(store.entries())
    assert found.intact
    assert [(one.seq, one.under) for one in found.erased] == [(1, 2)]


def test_an_erasure_of_what_is_not_there(database: Database) -> None:
    """Nothing can be erased that was never recorded."""
    store = store_in(database)

    with pytest.raises(BadInputError):
        store.append([erasure("e", 7, component("0412"))])


def test_a_clock_set_back_is_flagged(database: Database) -> None:
    """A clock that runs back refuses nothing: order is kept and the entry is flagged."""
    times = iter([NOON, NOON, NOON - dt.timedelta(days=1)])
    store = store_in(database, now=lambda: next(times))
    store.append([worn("a")])

    (late,) = store.append([worn("b")])

    assert late.entry.seq == 2
    assert ClockFlag.BACK in late.entry.read_header().flags


def test_a_record_is_begun_once(database: Database) -> None:
    """Beginning again leaves the installation's name and its entries."""
    store = store_in(database)
    store.append([worn("a")])

    assert store.begin() == store.head()
    assert connection.vendor == database.vendor
