"""Verifying: each kind of damage, what was erased, and anchors."""

import dataclasses
import json

import pytest
from tests.ledger_cases import TARN_HOLLOW, Book, at, draft

from sootline.core.basis import BadInputError, MemberId, UnreadableValueError
from sootline.core.ledger import (
    Anchor,
    DamageKind,
    Entry,
    EntryKind,
    Established,
    Second,
    read_anchor,
    read_header,
    take_anchor,
    verify_chain,
    write_anchor,
)
from sootline.core.ledger.checks import MOST_LISTED
from sootline.core.ledger.hashing import entry_hash
from sootline.core.ledger.merkle import EMPTY_ROOT, Tree, is_beginning, root_by_inclusion

K, D = EntryKind, DamageKind


def kept() -> list[Entry]:
    """Return a record of three entries."""
    book = Book()
    book.add(draft(K.HUNG, "04:20", place="rack 3"), draft(K.DRIED, "06:20"),
             draft(K.TOUCH_CHECKED, "07:00", by="118"))  # fmt: skip
    return book.entries


def with_fields(entry: Entry, **fields: object) -> Entry:
    """Return an entry with other fields in its header, and its hash made anew."""
    header = json.dumps(json.loads(entry.header) | fields, sort_keys=True, separators=(",", ":"))
    return dataclasses.replace(entry, header=header, hash=entry_hash(header))


def anchor(entries: list[Entry], **changed: str) -> Anchor:
    """Return an anchor of these entries, perhaps with something changed."""
    taken = take_anchor(TARN_HOLLOW, (entry.hash for entry in entries), at("09:00"))
    assert taken is not None
    return dataclasses.replace(taken, **changed)  # type: ignore[arg-type]


def damages(entries: list[Entry], *anchors: Anchor) -> list[tuple[int, DamageKind]]:
    """Return place and kind of every damage."""
    return [(damage.seq, damage.kind) for damage in verify_chain(entries, anchors).damages]


def test_a_whole_record_tells_its_head_and_root() -> None:
    """Nothing is damaged; the figures are those of an anchor."""
    entries = kept()
    result = verify_chain(entries, [anchor(entries)])
    assert (result.entries, result.head, result.intact) == (3, entries[-1].hash, True)
    assert (result.root, result.first_bad) == (anchor(entries).root, None)
    assert result.anchors == (anchor(entries),)


def test_an_empty_record_is_whole() -> None:
    """There is nothing to damage, and nothing to anchor."""
    result = verify_chain([])
    assert (result.entries, result.root, result.intact) == (0, EMPTY_ROOT.hex(), True)
    assert take_anchor(TARN_HOLLOW, [], at("09:00")) is None


@pytest.mark.parametrize(
    ("fields", "kind"),
    [
        ({"v": 2}, D.VERSION),
        ({"v": True}, D.VERSION),
        ({"alg": "md5"}, D.VERSION),
        ({"seq": 4}, D.SEQUENCE),
        ({"prev": "0" * 64}, D.PREVIOUS),
        ({"installation": "port-vessick"}, D.INSTALLATION),
        ({"payload_digest": "0" * 64}, D.PAYLOAD),
        ({"seq": 3.5}, D.UNREADABLE),
    ],
)
def test_the_last_entry_says_something_else(fields: dict[str, object], kind: DamageKind) -> None:
    """Each field of a header is held against what it must be."""
    entries = kept()
    entries[2] = with_fields(entries[2], **fields)
    assert damages(entries) == [(3, kind)]


@pytest.mark.parametrize("header", ["{", "[]", '{"v":1,"v":1}', '{"v": 1}', "\udc80"])
def test_a_header_of_another_form_is_damage(header: str) -> None:
    """Two readers must never read it in two ways."""
    entries = kept()
    entries[2] = dataclasses.replace(entries[2], header=header)
    assert damages(entries) == [(3, D.HASH), (3, D.UNREADABLE)]


def test_the_place_in_the_table_counts_too() -> None:
    """The stored sequence is not that of the header."""
    entries = kept()
    entries[2] = dataclasses.replace(entries[2], seq=9)
    assert damages(entries) == [(3, D.SEQUENCE)]


def test_only_two_people_make_a_payload_go() -> None:
    """A payload that is gone without an erasure is damage; with one it is told."""
    book = Book()
    book.add(draft(K.NOTED, "04:20", said="x"))
    book.erase(1)
    assert damages(book.entries) == [(1, D.PAYLOAD_MISSING)]
    second = Second(person=MemberId("118"), established=Established.PIN)
    book = Book()
    book.add(draft(K.NOTED, "04:20", said="x"),
             draft(K.ERASED, "05:00", erases=1, second=second, reason="court order"))  # fmt: skip
    assert verify_chain(book.entries).not_carried_out == ((1, 2),)
    book.erase(1)
    (told,) = verify_chain(book.entries).erased
    assert (told.seq, told.under, told.people) == (1, 2, ("201", "118"))


@pytest.mark.parametrize("left", ["salt", "payload"])
def test_half_an_erasure_is_damage(left: str) -> None:
    """A payload shown without its salt is backed by nothing; a salt left behind gives it away."""
    entries = kept()
    gone = "payload" if left == "salt" else "salt"
    entries[1] = dataclasses.replace(entries[1], **{gone: None})  # type: ignore[arg-type]
    assert damages(entries) == [(2, D.PAYLOAD)]


@pytest.mark.parametrize(
    "fields",
    [
        {"erases": None},
        {"erases": 2},
        {"erases": 0},
        {"erases": True},
        {"second": None},
        {"second": {"person": "201", "established": "pin"}},
        {"second": {"person": 7, "established": "pin"}},
        {"actor": 7},
    ],
)
def test_an_erasure_without_two_people_or_an_entry_is_damage(fields: dict[str, object]) -> None:
    """Nobody erases alone, or ahead."""
    second = Second(person=MemberId("118"), established=Established.PIN)
    book = Book()
    book.add(draft(K.NOTED, "04:20", said="x"),
             draft(K.ERASED, "05:00", erases=1, second=second, reason="court order"))  # fmt: skip
    assert damages([book.entries[0], with_fields(book.entries[1], **fields)]) == [(2, D.ERASURE)]


def test_anchors_find_what_the_chain_cannot() -> None:
    """A tail cut off; another head, root or record."""
    entries = kept()
    assert damages(entries[:2]) == []
    assert damages(entries[:2], anchor(entries)) == [(3, D.ANCHOR_SHORT)]
    assert damages(entries, anchor(entries, hash="a" * 64)) == [(3, D.ANCHOR_HASH)]
    assert damages(entries, anchor(entries, root="a" * 64)) == [(3, D.ANCHOR_ROOT)]
    assert damages(entries, anchor(entries, installation="x")) == [(3, D.ANCHOR_INSTALLATION)]
    old = anchor(entries[:2])
    assert verify_chain(entries, [old, old]).anchors == (old, old)


def test_a_wholly_damaged_record_is_told_in_its_first_hundreds() -> None:
    """Nobody reads a million lines of damage; how many there are is told."""
    lost = Entry(seq=0, header="", hash="", salt=None, payload=None)
    result = verify_chain([lost] * (MOST_LISTED + 5))
    assert len(result.damages) == MOST_LISTED
    assert result.more == 2 * (MOST_LISTED + 5) - MOST_LISTED
    assert result.first_bad == 1


def test_anchors_come_back_from_their_text() -> None:
    """What is printed on a report can be typed in again."""
    taken = anchor(kept())
    assert read_anchor(write_anchor(taken) + "\n") == taken


@pytest.mark.parametrize(
    "changed",
    [{"v": 2}, {"n": 0}, {"hash": "XY"}, {"root": None}, {"at": "soon"}, {"at": 3},
     {"at": "2026-03-01T09:00:00"}, {"extra": 1}, {"n": "3"}, {"installation": 7}],
)  # fmt: skip
def test_what_is_no_anchor_is_refused(changed: dict[str, object]) -> None:
    """A wrong figure would prove nothing."""
    text = json.dumps(json.loads(write_anchor(anchor(kept()))) | changed, sort_keys=True,
                      separators=(",", ":"))  # fmt: skip
    with pytest.raises((BadInputError, UnreadableValueError)):
        read_anchor(text)


@pytest.mark.parametrize("text", ["[]", "x", '{"n":1}'])
def test_other_documents_are_no_anchors(text: str) -> None:
    """Nor is a list, or half of one."""
    with pytest.raises(BadInputError):
        read_anchor(text)


@pytest.mark.parametrize(
    ("fields", "message"),
    [
        ({"v": 2}, "version"),
        ({"alg": "sha1"}, "version"),
        ({"kind": "flown"}, "unreadable"),
        ({"colour": "red"}, "unreadable"),
        ({"seq": "3"}, "unreadable"),
        ({"seq": True}, "unreadable"),
        ({"device": 3}, "unreadable"),
        ({"occurred": {}}, "unreadable"),
        ({"occurred": 3}, "unreadable"),
        ({"flags": ["late"]}, "unreadable"),
        ({"second": {"person": "118"}}, "unreadable"),
        ({"item": "0412"}, "unreadable"),
        ({"recorded_at": "2026-03-01T08:00:00"}, "no_offset"),
    ],
)
def test_headers_of_another_form_are_refused(fields: dict[str, object], message: str) -> None:
    """An unknown version, kind or field is never guessed."""
    text = json.dumps(json.loads(kept()[0].header) | fields, sort_keys=True, separators=(",", ":"))
    with pytest.raises(BadInputError) as error:
        read_header(text)
    assert error.value.faults[0].message.rpartition(".")[2] == message


@pytest.mark.parametrize("text", ["[]", "3"])
def test_a_header_is_an_object(text: str) -> None:
    """Nothing else names its fields."""
    with pytest.raises(BadInputError):
        read_header(text)


def test_proofs_of_the_wrong_length_prove_nothing() -> None:
    """Outside the tree, too short, too long, or of an older record that is none."""
    tree = Tree([bytes([n]) * 32 for n in range(5)])
    root = tree.root()
    with pytest.raises(IndexError):
        tree.inclusion(5)
    with pytest.raises(IndexError):
        tree.consistency(0)
    assert root_by_inclusion(b"", 5, 5, ()) is None
    assert root_by_inclusion(b"\0" * 32, 0, 5, ()) is None
    assert is_beginning(5, root, 5, root, ())
    assert not is_beginning(5, root, 5, root, (root,))
    assert not is_beginning(3, root, 5, root, ())
    assert not is_beginning(0, root, 5, root, (root,))
    path = tree.consistency(2)
    old = Tree([bytes([n]) * 32 for n in range(2)]).root()
    assert is_beginning(2, old, 5, root, path)
    assert not is_beginning(2, old, 5, root, (*path, root))
    assert not is_beginning(2, old, 5, root, path[:1])
