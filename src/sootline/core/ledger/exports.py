"""How does the record leave the program, so that it can be read without it?

Text lines of JSON: a first line that says what follows, then one entry a line, with the very
texts that were hashed. A whole record can be read in again and checked by itself; the export of
one thing carries, for each of its entries, the proof that it stands in the whole record, and
shows nobody else's.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import cast

from sootline.core.basis import BadInputError, Fault, InstallationId, ItemId, MessageId
from sootline.core.ledger.anchors import Anchor, read_anchor, write_anchor
from sootline.core.ledger.canonical import Json, canonical, read_canonical, read_strictly
from sootline.core.ledger.entries import Entry
from sootline.core.ledger.facts import Fact, read_facts
from sootline.core.ledger.folding import loads_of, touched
from sootline.core.ledger.items import parse_item
from sootline.core.ledger.merkle import Tree

EXPORT_FORM = 1
_LEDGER = "ledger"


@dataclass(frozen=True, kw_only=True)
class ExportHead:
    """What the first line says.

    Args:
        item: the one thing it is about; None is the whole record.
        anchor: how far the whole record reached when it was written.
    """

    installation: InstallationId
    item: ItemId | None = None
    anchor: Anchor | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Exported:
    """One entry of an export, with the proof that it is in the whole record, if it has one."""

    entry: Entry
    proof: tuple[bytes, ...] = ()


def export_all(
    installation: InstallationId, entries: Iterable[Entry], anchor: Anchor | None = None
) -> Iterator[str]:
    """Write a whole record, line by line."""
    yield write_head(ExportHead(installation=installation, anchor=anchor))
    for entry in entries:
        yield write_line(Exported(entry=entry))


def export_item(entries: Sequence[Entry], item: ItemId, anchor: Anchor) -> Iterator[str]:
    """Write what the record holds about one thing, with proofs, line by line.

    Entries of the loads a component was in come along; the entries of other pieces do not.

    Args:
        entries: the whole record, up to the anchor's.
    """
    yield write_head(ExportHead(installation=anchor.installation, item=item, anchor=anchor))
    tree = Tree([bytes.fromhex(entry.hash) for entry in entries[: anchor.n]])
    for seq in about(read_facts(entries[: anchor.n]), item):
        proof = tree.inclusion(seq - 1)
        yield write_line(Exported(entry=entries[seq - 1], proof=proof))


def about(facts: Sequence[Fact], item: ItemId) -> list[int]:
    """Return the places of all entries that belong to one thing's life, in their order."""
    mine = [fact for fact in facts if item in touched([fact])]
    things = {item, *loads_of(mine)}
    moved = {fact.corrects for fact in mine if fact.corrects is not None}
    return [
        fact.seq
        for fact in facts
        if fact.item in things or item in touched([fact]) or fact.seq in moved
    ]


def write_head(head: ExportHead) -> str:
    """Return the first line."""
    document: dict[str, object] = {
        "sootline": _LEDGER,
        "form": EXPORT_FORM,
        "installation": head.installation,
    }
    if head.item is not None:
        document["item"] = head.item
    if head.anchor is not None:
        document["anchor"] = write_anchor(head.anchor)
    return canonical(document, place="line 1")


def read_head(line: str) -> ExportHead:
    """Return what the first line says.

    Raises:
        BadInputError: it is not the first line of a record, or of a form this program does not
            know.
    """
    document = read_canonical(line, place="line 1")
    if not isinstance(document, dict) or document.get("sootline") != _LEDGER:
        raise _refused("ledger.export.no_ledger")
    if document.get("form") != EXPORT_FORM:
        raise _refused("ledger.export.form", form=str(document.get("form")))
    item, anchor = document.get("item"), document.get("anchor")
    return ExportHead(
        installation=InstallationId(str(document.get("installation"))),
        item=None if item is None else parse_item(str(item)),
        anchor=None if anchor is None else read_anchor(str(anchor)),
    )


def write_line(exported: Exported) -> str:
    """Return an entry's line."""
    entry = exported.entry
    document: dict[str, object] = {"header": entry.header, "hash": entry.hash}
    if entry.salt is not None:
        document["salt"] = entry.salt.hex()
    if entry.payload is not None:
        document["payload"] = entry.payload
    if exported.proof:
        document["proof"] = [step.hex() for step in exported.proof]
    return canonical(document, place="entry")


def read_line(line: str, place: int) -> Exported:
    """Return the entry of a line.

    A line that cannot be read is an entry all the same: one whose hash is wrong, so that
    verifying says where, and goes on.

    Args:
        place: of the entry, from 1; in a whole record its sequence.
    """
    try:
        return _exported(read_strictly(line) or {}, place)
    except (KeyError, TypeError, ValueError):
        unreadable = Entry(seq=place, header=line, hash="", salt=None, payload=None)
        return Exported(entry=unreadable)


def _exported(document: dict[str, Json], place: int) -> Exported:
    salt, payload = document.get("salt"), document.get("payload")
    steps = cast("list[str]", document.get("proof", []))
    entry = Entry(
        seq=place,
        header=_text(document["header"]),
        hash=_text(document["hash"]),
        salt=None if salt is None else bytes.fromhex(_text(salt)),
        payload=None if payload is None else _text(payload),
    )
    return Exported(entry=entry, proof=tuple(bytes.fromhex(step) for step in steps))


def _text(value: Json) -> str:
    if not isinstance(value, str):
        raise TypeError(value)
    return value


def _refused(message: str, **values: str) -> BadInputError:
    fault = Fault(place="line 1", message=MessageId(message), values=tuple(values.items()))
    return BadInputError([fault])
