"""Everything of the register can be written down from a terminal, and shows in the record."""

import json
from pathlib import Path

import pytest
from django.test import override_settings
from tests.integration.store_acts import store_in
from tests.integration.store_databases import Database, Databases

from sootline.cli.main import main
from sootline.core.basis import ComponentId, ItemId
from sootline.core.gear import Component, Custody, Life
from sootline.core.ledger import ItemKind
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.folding import fold_facts
from sootline.core.ledger.record_items import RecordItem, missing_items
from sootline.storage.entries import read_entries
from sootline.storage.register import RegisterStore

THINGS = {
    "members": [{"id": "118", "crew": "E2"}, {"id": "131"}],
    "places": [{"id": "locker-14", "of": "118"}],
    "bags": [{"id": "B7", "place": "locker-14", "since": "2024-05"}],
    "supplies": [{"id": "soap", "unit": "l", "minimum": "5", "stock": "12", "expires": "2027-01"}],
    "contractors": [{"id": "laundry", "does": ["cleaning"], "until": "2026-12-31"}],
    "components": [
        {"id": "C1", "kind": "coat-shell", "owner": "118", "label": {"serial": "S-1"},
         "state": {"custody": "spare-rack", "stage": "checked", "assembly": "assembled",
                   "life": "reserve"}},
        {"id": "H1", "kind": "hood", "owner": "118",
         "state": {"custody": "spare-rack", "stage": "checked", "assembly": "assembled",
                   "life": "reserve"}},
    ],
}  # fmt: skip


@pytest.fixture
def place(databases: Databases, tmp_path: Path) -> Database:
    """Make a store with everything of the list registered."""
    made = databases.fresh("sqlite")
    store_in(made)
    file = tmp_path / "things.json"
    file.write_text(json.dumps(THINGS), encoding="utf-8")
    assert _record(made, "register", file, "--station", "2", "--grant", "G-2026") == 0
    return made


def _record(place: Database, *words: object, by: str = "206") -> int:
    with override_settings(DATA_DIR=place.folder):
        return main(["record", *map(str, words), "--by", by])


def _piece(name: str) -> Component:
    known = RegisterStore().component(ComponentId(name))
    assert known is not None
    return known.component


def _thing(item: str) -> dict[str, object]:
    life = RegisterStore().thing(ItemId(item))
    assert life is not None
    return dict(life.facts)


@pytest.mark.usefixtures("place")
def test_everything_is_registered_as_one_act() -> None:
    """Members, places, bags with their age, supplies with minimum and expiry, contractors, gear."""
    assert _thing("bag:B7")["since"] == "2024-05"
    assert _thing("supply:soap")["expires"] == "2027-01"
    assert (_thing("supply:soap")["minimum"], _thing("contractor:laundry")["until"]) == (
        "5", "2026-12-31",
    )  # fmt: skip
    assert _thing("place:locker-14")["of"] == "118"
    assert len(RegisterStore().things(ItemKind.MEMBER)) == 2
    acts = {one.read_header().idem.partition("/")[0] for one in read_entries("default")}
    assert len(acts) == 1
    (entry,) = read_entries("default", item="component:C1")
    assert json.loads(entry.payload or "")["grant"] == "G-2026"


def test_facts_change(place: Database) -> None:
    """A bag's place, a supply's stock, a piece's owner; null takes a fact back."""
    assert _record(place, "change", "bag:B7", "place=shelf", "since=null") == 0
    assert _record(place, "change", "supply:soap", 'stock="4"') == 0
    assert _record(place, "change", "C1", "owner=131") == 0

    assert (_thing("bag:B7")["place"], _thing("bag:B7")["since"]) == ("shelf", None)
    assert (_thing("supply:soap")["stock"], _piece("C1").owner) == ("4", "131")
    assert _record(place, "change", "C1", "owner") == 2
    assert _record(place, "change", "C1", 'owner="1') == 2
    assert _record(place, "change", "C1", "colour=red") == 2


def test_gear_goes_out_and_comes_back(place: Database) -> None:
    """Issued and returned, lent and taken back, offered and accepted or declined."""
    assert _record(place, "issue", "C1", "--to", "118") == 0
    assert (_piece("C1").state.holder, _piece("C1").state.life) == ("118", Life.IN_SERVICE)
    assert _record(place, "return", "C1", "--rack", "rack-1") == 0
    assert _piece("C1").state.custody is Custody.SPARE_RACK
    assert _record(place, "lend", "H1", "--to", "neighbours") == 0
    assert _piece("H1").state.custody is Custody.LOAN
    assert _record(place, "take-back", "H1") == 0
    assert _record(place, "offer", "C1", "--station", "3") == 0
    assert _record(place, "accept", "C1", "--station", "3") == 0
    known = RegisterStore().component(ComponentId("C1"))
    assert known is not None
    assert known.station == "3"
    assert _record(place, "offer", "H1", "--station", "3") == 0
    assert _record(place, "decline", "H1", "--reason", "too small") == 0
    assert _record(place, "return", "H1") == 0
    assert _record(place, "issue", "H1", "--to", "118") == 2  # it waits for its wash


def test_a_life_ends_before_a_witness(place: Database) -> None:
    """For training only, retired, disposed of; the witness is another person."""
    assert _record(place, "training-only", "H1", "--reason", "seam") == 0
    assert _piece("H1").state.life is Life.TRAINING_ONLY
    assert _record(place, "retire", "C1", "--reason", "age") == 0
    same = ("dispose", "C1", "--method", "cut up", "--witness", "206")
    assert _record(place, *same) == 2
    assert _record(place, *same[:-1], "118") == 0

    assert _piece("C1").state.life is Life.DISPOSED
    life = fold_facts(read_facts(read_entries("default"))).piece(ItemId("component:C1"))
    missing = missing_items(life)
    assert RecordItem.DISPOSAL not in missing
    assert RecordItem.MADE in missing


def test_everything_of_a_member_is_locked_in_one_act(place: Database) -> None:
    """After a death or a serious injury: what they own, and what else they wore."""
    assert _record(place, "secure", "118", "--reason", "injury at a fire", "--also", "H1") == 0

    assert {_piece(name).state.custody for name in ("C1", "H1")} == {Custody.EVIDENCE}
    assert _record(place, "issue", "C1", "--to", "131") == 2
    assert _record(place, "secure", "999", "--reason", "x") == 2


def test_an_untrained_helper_is_a_warning(
    place: Database, capsys: pytest.CaptureFixture[str]
) -> None:
    """Who assigns decides; with a training that counts there is none."""
    assert _record(place, "assigned", "131", "--work", "washing") == 1
    assert "131" in capsys.readouterr().out
    given = ("--work", "washing", "--trainer", "206", "--on", "2026-02-01", "--until", "2099")
    assert _record(place, "trained", "131", *given) == 0

    assert _record(place, "assigned", "131", "--work", "washing") == 0
    assert _record(place, "assigned", "131", "--work", "driving") == 2
    assert _record(place, "trained", "131", "--work", "drying", "--trainer", "1", "--on", "x") == 2


def test_entries_are_taken_back_or_erased(place: Database) -> None:
    """One that never happened; and what one says, with a second person who is another."""
    assert _record(place, "issue", "C1", "--to", "118", "--key", "k") == 0
    assert _record(place, "issue", "C1", "--to", "118", "--key", "k", "--at", "x") == 2
    last = max(one.seq for one in read_entries("default"))
    assert _record(place, "withdraw", last, "--reason", "other coat") == 0
    assert _piece("C1").state.life is Life.RESERVE
    assert _record(place, "withdraw", "last", "--reason", "x") == 2
    assert _record(place, "erase", last, "--second", "206", "--reason", "court order") == 2
    assert _record(place, "erase", last, "--second", "118", "--reason", "court order") == 0

    assert [one.seq for one in read_entries("default") if one.erased] == [last]


def test_the_same_key_is_the_same_act(place: Database) -> None:
    """Asked again it adds nothing, as when a reply was lost."""
    moment = ("--key", "k", "--at", "2026-03-01T08:00+00:00")
    for _ in range(2):
        assert _record(place, "issue", "C1", "--to", "118", *moment) == 0

    assert len(list(read_entries("default", item="component:C1"))) == 2
