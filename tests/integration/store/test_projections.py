"""The tables screens read follow from the entries, and replaying the record makes them anew."""

import json
from collections.abc import Mapping
from typing import Any

import pytest
from django.db import connection, transaction
from tests.integration.store_acts import draft, erasure, store_in, worn
from tests.integration.store_databases import Database

from sootline.core.gear import CareStage, Component
from sootline.core.job.codec import decode
from sootline.core.ledger import EntryKind, component, item
from sootline.core.ledger.items import ItemKind
from sootline.storage.ledger import LedgerStore
from sootline.storage.models import ComponentRow, Link, Thing
from sootline.storage.projecting import replay

SHELL: Mapping[str, Any] = {
    "kind": "coat-shell",
    "owner": "118",
    "station": "2",
    "label": {"maker": "Harrow", "lot": "L7", "serial": "S-1"},
    "made": "2019-05",
    "wash_count": 3,
    "state": {"custody": "member", "stage": "checked", "assembly": "assembled", "holder": "118"},
}


@pytest.fixture
def store(database: Database) -> LedgerStore:
    """Make a record with one shell in it, and a member."""
    made = store_in(database)
    made.append(
        [
            draft("r", EntryKind.REGISTERED, component("0412"), **SHELL),
            draft("m", EntryKind.REGISTERED, item(ItemKind.MEMBER, "118"), crew="E2"),
        ]
    )
    return made


def _row(piece: str = "0412") -> ComponentRow:
    return ComponentRow.objects.get(id=piece)


def _component(piece: str = "0412") -> Component:
    return decode(Component, _row(piece).document)


def _tables() -> tuple[list[tuple[object, ...]], ...]:
    return tuple(
        sorted(model.objects.values_list(*(f.name for f in model._meta.fields if f.name != "id" or
               model is ComponentRow)), key=str)
        for model in (ComponentRow, Thing, Link)
    )  # fmt: skip


@pytest.mark.usefixtures("store")
def test_a_registered_component_stands_as_it_was_described() -> None:
    """Its label, owner, dates and state come back as a component of a job."""
    found = _component()

    assert (found.kind, found.owner, found.wash_count) == ("coat-shell", "118", 3)
    assert (found.label.lot, str(found.made), found.state.stage) == (
        "L7", "2019-05", CareStage.CHECKED,
    )  # fmt: skip
    assert (_row().station, _row().serial, _row().holds) == ("2", "S-1", 0)


def test_an_act_shows_at_once(store: LedgerStore) -> None:
    """Once it is recorded that a piece was worn, its row says so."""
    store.append([worn("w", "0412")])

    assert _row().stage == "worn"
    assert _component().records[-1].deed == "worn"


def test_the_end_of_a_load_reaches_its_pieces(store: LedgerStore) -> None:
    """Only the load is named in the entry; the pieces in it are washed."""
    piece, load = component("0412"), item(ItemKind.LOAD, "W-9")
    store.append([draft("a", EntryKind.RETURNED, piece)])
    store.append([draft("b", EntryKind.PUT_IN_WASHER, piece, load="W-9", by="118")])

    store.append([draft("c", EntryKind.LOAD_ENDED, load, level="advanced")])

    assert _row().stage == "washed"
    assert _component().wash_count == 4


def test_a_wrong_number_moves_to_the_right_piece(store: LedgerStore) -> None:
    """A correction that names another piece takes the entry away here and counts it there."""
    store.append([draft("r2", EntryKind.REGISTERED, component("0413"), **SHELL)])
    (made,) = store.append([worn("w", "0412")])

    wrong, right = component("0412"), component("0413")
    store.append(
        [draft("c", EntryKind.CORRECTED, wrong, corrects=made.entry.seq, reason="misread",
               item=right)]
    )  # fmt: skip

    assert (_row("0412").stage, _row("0413").stage) == ("checked", "worn")
    before = _tables()
    with transaction.atomic():
        replay("default")
    assert _tables() == before


def test_a_member_keeps_the_last_measures(store: LedgerStore) -> None:
    """What is measured later replaces what was measured before; the rest stays."""
    who = item(ItemKind.MEMBER, "118")
    store.append([draft("a", EntryKind.MEASURED, who, measures={"chest": "42"})])
    store.append([draft("b", EntryKind.MEASURED, who, measures={"chest": "44"})])

    facts = json.loads(Thing.objects.get(item=who).facts)

    assert facts == {"crew": "E2", "measures": {"chest": "44"}}


def test_a_register_that_makes_no_component(store: LedgerStore) -> None:
    """Facts that cannot be read leave number, kind and state; nothing stops."""
    store.append([draft("x", EntryKind.REGISTERED, component("X1"), kind="hood", owner=7)])

    assert (_component("X1").kind, _component("X1").owner) == ("hood", None)


def test_replay_makes_the_same_rows(store: LedgerStore, database: Database) -> None:
    """Whatever stands in the tables, replaying the record brings them back, row for row."""
    load = item(ItemKind.LOAD, "W-9")
    store.append([worn("w", "0412"), draft("a", EntryKind.RETURNED, component("0412"))])
    store.append(
        [draft("b", EntryKind.PUT_IN_WASHER, component("0412"), load="W-9", by="118"),
         draft("s", EntryKind.LOAD_STARTED, load)]
    )  # fmt: skip
    store.append([draft("e", EntryKind.LOAD_FAILED, load, said="power cut")])
    store.append([erasure("x", 3, component("0412"))])
    before = _tables()
    ComponentRow.objects.update(stage="checked", document="{}")
    Thing.objects.all().delete()

    with transaction.atomic():
        count = replay("default")

    assert (_tables(), count) == (before, store.head().seq)
    assert connection.vendor == database.vendor
