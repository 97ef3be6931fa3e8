"""Exports: lines, first lines, one thing's entries with their proofs."""

import dataclasses
import json

import pytest
from tests.ledger_cases import SHELL, TARN_HOLLOW, Book, at, draft, load

from sootline.core.basis import BadInputError, InstallationId
from sootline.core.ledger import (
    Anchor,
    DamageKind,
    EntryKind,
    ItemKind,
    component,
    item,
    take_anchor,
    verify_chain,
)
from sootline.core.ledger.exports import (
    Exported,
    ExportHead,
    about,
    export_all,
    export_item,
    read_head,
    read_line,
    write_head,
    write_line,
)
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.folding import fold
from sootline.core.ledger.proving import verify_item

K = EntryKind
OTHER = component("0413")


def book() -> Book:
    """Return a record of two pieces in one load; one entry was about the wrong piece at first."""
    new = Book()
    new.add(
        draft(K.REGISTERED, "00:10"),
        draft(K.REGISTERED, "00:10", thing=OTHER),
        draft(K.PUT_IN_WASHER, "04:00", load="W-1"),
        draft(K.PUT_IN_WASHER, "04:00", thing=OTHER, load="W-1"),
        draft(K.LOAD_ENDED, "05:00", thing=load("W-1")),
        draft(K.HUNG, "05:10", thing=OTHER),
        draft(K.CORRECTED, "06:00", thing=OTHER, corrects=6, reason="tag", item=SHELL),
        draft(K.NOTED, "06:10", thing=item(ItemKind.MEMBER, "201"), said="x"),
    )
    return new


def anchor_of(kept: Book) -> Anchor:
    """Return the anchor of a whole record."""
    taken = take_anchor(TARN_HOLLOW, (entry.hash for entry in kept.entries), at("09:00"))
    assert taken is not None
    return taken


def lines_of(kept: Book) -> list[str]:
    """Return the shell's export."""
    return list(export_item(kept.entries, SHELL, anchor_of(kept)))


def test_a_whole_record_comes_back_equal() -> None:
    """Every byte, and an erased payload stays gone."""
    kept = book()
    kept.erase(3)
    anchor = anchor_of(kept)
    first, *lines = export_all(TARN_HOLLOW, kept.entries, anchor)
    assert read_head(first) == ExportHead(installation=TARN_HOLLOW, anchor=anchor)
    assert [read_line(line, n + 1).entry for n, line in enumerate(lines)] == kept.entries


def test_one_things_export_shows_nobody_elses() -> None:
    """Its own entries, its loads, and what was first written about another piece; no more."""
    facts = read_facts(book().entries)
    assert about(facts, SHELL) == [1, 3, 5, 6, 7]
    shown = "\n".join(lines_of(book()))
    assert "member:201" not in shown


def test_one_things_export_is_proven() -> None:
    """Each entry leads to the root, and folds to the same life as in the whole record."""
    kept = book()
    first, *lines = lines_of(kept)
    head = read_head(first)
    assert (head.item, head.anchor) == (SHELL, anchor_of(kept))
    exported = [read_line(line, n + 1) for n, line in enumerate(lines)]
    result = verify_item(exported, anchor_of(kept), [anchor_of(kept)])
    assert (result.intact, result.entries, result.anchors) == (True, 5, (anchor_of(kept),))
    part = fold(one.entry for one in exported).piece(SHELL)
    assert part == fold(kept.entries).piece(SHELL)


def test_a_proof_fits_one_entry_only() -> None:
    """Another entry with that proof is found, and so is an anchor of another record."""
    kept = book()
    exported = [read_line(line, n) for n, line in enumerate(lines_of(kept)[1:], start=1)]
    swapped = [dataclasses.replace(exported[0], proof=exported[1].proof), *exported[1:]]
    anchor = anchor_of(kept)
    (damage,) = verify_item(swapped, anchor).damages
    assert (damage.seq, damage.kind) == (1, DamageKind.PROOF)
    other = dataclasses.replace(anchor, root="a" * 64)
    assert verify_item(exported, anchor, [other]).first_bad == anchor.n
    shorter = dataclasses.replace(anchor, n=3)
    assert verify_item(exported, anchor, [shorter]).anchors == ()
    moved = dataclasses.replace(anchor, installation=InstallationId("x"))
    kinds = {damage.kind for damage in verify_item(exported, moved).damages}
    assert kinds == {DamageKind.INSTALLATION}
    assert verify_item([Exported(entry=read_line("?", 1).entry)], anchor).first_bad == 1


@pytest.mark.parametrize(
    "line",
    ["", "x", "[]", "{}", '{"hash":"00","header":7}', '{"hash":7,"header":"{}"}',
     '{"hash":"00","header":"{}","salt":7}', '{"hash":"00","header":"{}","salt":"zz"}',
     '{"hash":"00","header":"{}","payload":[]}', '{"hash":"00","header":"{}","proof":7}',
     '{"hash":"00","header":"{}","proof":[7]}'],
)  # fmt: skip
def test_a_line_that_cannot_be_read_is_damage(line: str) -> None:
    """It is told with its place, and the rest is read on."""
    entry = read_line(line, 1).entry
    assert (entry.header, entry.hash) == (line, "")
    assert verify_chain([entry]).first_bad == 1


@pytest.mark.parametrize(
    "first",
    ["", "{}", "[]", '{"form":2,"installation":"x","sootline":"ledger"}',
     '{"form":1,"installation":"x","item":"0412","sootline":"ledger"}',
     '{"anchor":"{}","form":1,"installation":"x","sootline":"ledger"}'],
)  # fmt: skip
def test_another_first_line_refuses_the_file(first: str) -> None:
    """What is no record, or of a newer form, is not guessed."""
    with pytest.raises(ValueError, match=r"ledger\."):
        read_head(first)


def test_a_first_line_may_say_little() -> None:
    """A record without an anchor, and one thing's part."""
    head = ExportHead(installation=TARN_HOLLOW, item=SHELL)
    assert read_head(write_head(head)) == head


def test_half_erased_entries_are_written_as_they_are() -> None:
    """An export hides no damage."""
    entry = dataclasses.replace(book().entries[0], salt=None)
    assert "salt" not in json.loads(write_line(Exported(entry=entry)))
    assert read_line(write_line(Exported(entry=entry)), 1).entry == entry


def test_an_entry_that_is_no_json_is_named() -> None:
    """Folding refuses the record, and says which entries."""
    kept = book().entries
    kept[1] = dataclasses.replace(kept[1], header="{")
    kept[2] = dataclasses.replace(kept[2], payload="[]")
    kept[3] = dataclasses.replace(kept[3], payload="{")
    with pytest.raises(BadInputError) as error:
        fold(kept)
    assert [fault.place for fault in error.value.faults] == ["entry 2", "entry 3", "entry 4"]
