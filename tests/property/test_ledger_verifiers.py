"""Two verifiers that share no code say the same of every record, word for word."""

import random

from hypothesis import given, settings
from hypothesis import strategies as st
from tests import ledger_tampering as tampering
from tests.ledger_cases import TARN_HOLLOW, at
from tests.ledger_records import grown

from sootline import ledger_verifier
from sootline.core.ledger import Anchor, Entry, component, take_anchor, verify_chain, write_anchor
from sootline.core.ledger.damage import report
from sootline.core.ledger.exports import export_all, export_item, read_head, read_line
from sootline.core.ledger.proving import verify_item


def anchor_of(entries: list[Entry]) -> Anchor:
    """Return the anchor somebody else keeps of a record."""
    anchor = take_anchor(TARN_HOLLOW, (entry.hash for entry in entries), at("09:00"))
    assert anchor is not None
    return anchor


def alone(lines: list[str], anchors: list[Anchor]) -> str:
    """Return what the stand-alone verifier says."""
    read = [ledger_verifier.read_anchor(write_anchor(anchor)) for anchor in anchors]
    return ledger_verifier.written(ledger_verifier.verify(iter(lines), read))


def ours(lines: list[str], anchors: list[Anchor]) -> str:
    """Return what the program says."""
    head = read_head(lines[0])
    exported = [read_line(line, place) for place, line in enumerate(lines[1:], start=1)]
    if head.anchor is not None and head.item is not None:
        return report(verify_item(exported, head.anchor, anchors))
    return report(verify_chain((one.entry for one in exported), anchors))


@settings(max_examples=60, deadline=None)
@given(
    seed=st.integers(0, 10**9),
    length=st.integers(1, 40),
    change=st.none() | st.sampled_from(tampering.KINDS),
    cut=st.integers(0, 40),
)
def test_whole_records(
    seed: int, length: int, change: tampering.Tampering | None, cut: int
) -> None:
    """Damaged or not, with anchors that fit or not."""
    kept = grown(seed, length + 2).entries
    anchors = [anchor_of(kept[: max(1, min(cut, len(kept)))]), anchor_of(kept)]
    if change is not None:
        kept = change(list(kept), random.Random(seed))  # noqa: S311  # repeatable
    lines = [*export_all(TARN_HOLLOW, ())]
    lines += [_line(entry) for entry in kept]
    assert alone(lines, anchors) == ours(lines, anchors)


def _line(entry: Entry) -> str:
    """Write a line of whatever was done to an entry; half a character is no line at all."""
    document = {"header": entry.header, "hash": entry.hash}
    if entry.salt is not None:
        document["salt"] = entry.salt.hex()
    if entry.payload is not None:
        document["payload"] = entry.payload
    return ledger_verifier.written(document)


@settings(max_examples=40, deadline=None)
@given(
    seed=st.integers(0, 10**9),
    damage=st.none() | st.tuples(st.integers(0, 10**6), st.integers(0, 6)),
    other=st.booleans(),
)
def test_one_things_export(seed: int, damage: tuple[int, int] | None, other: bool) -> None:
    """The lines of one piece, each with its proof; some with a bit flipped."""
    book = grown(seed, 30)
    anchor = anchor_of(book.entries)
    lines = list(export_item(book.entries, component("0001"), anchor))
    if damage is not None and len(lines) > 1:
        place = 1 + damage[0] % (len(lines) - 1)
        raw = bytearray(lines[place].encode())
        raw[damage[0] % len(raw)] ^= 1 << damage[1]
        lines[place] = raw.decode(errors="surrogateescape")
    anchors = [anchor_of(book.entries[:-1] if other else book.entries)]
    assert alone(lines, anchors) == ours(lines, anchors)
    if damage is None:
        assert '"damages":[]' in ours(lines, anchors)


@settings(max_examples=200, deadline=None)
@given(
    lines=st.lists(
        st.text(max_size=40)
        | st.builds(
            ledger_verifier.written,
            st.dictionaries(
                st.sampled_from(("header", "hash", "salt", "payload", "proof")),
                st.none() | st.booleans() | st.integers(-2, 2) | st.text(max_size=6)
                | st.lists(st.text(max_size=3), max_size=2),
            ),
        ),
        max_size=5,
    )
)  # fmt: skip
def test_lines_of_nonsense(lines: list[str]) -> None:
    """No line stops either of them, and they say the same."""
    (first,) = export_all(TARN_HOLLOW, ())
    whole = [first, *(line.replace("\n", " ") for line in lines)]
    assert alone(whole, []) == ours(whole, [])
