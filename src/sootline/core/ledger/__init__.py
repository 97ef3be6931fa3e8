"""The record: entries, their chain, what they add up to, and whether they are the ones written."""

from sootline.core.ledger.anchors import (
    Anchor,
    read_anchor,
    read_anchors,
    take_anchor,
    write_anchor,
)
from sootline.core.ledger.appending import (
    Appended,
    KeyReusedError,
    OvertakenError,
    append,
    append_all,
    begin,
    head_after,
    says_the_same,
)
from sootline.core.ledger.canonical import Json, canonical, entered, read_canonical
from sootline.core.ledger.damage import Damage, DamageKind, ErasedPayload, Verification
from sootline.core.ledger.drafts import Draft, read_payload, write_payload
from sootline.core.ledger.entries import Entry, Head, Header, Second, read_header, write_header
from sootline.core.ledger.foreign import foreign_draft, taken_entry
from sootline.core.ledger.forms import Payload
from sootline.core.ledger.items import ItemKind, component, item, kind_of, name_of, parse_item
from sootline.core.ledger.kinds import EntryKind, Established
from sootline.core.ledger.merkle import Frontier, Tree
from sootline.core.ledger.times import ClockFlag, ClockSource, Occurred
from sootline.core.ledger.verifying import verify_chain

__all__ = [
    "Anchor",
    "Appended",
    "ClockFlag",
    "ClockSource",
    "Damage",
    "DamageKind",
    "Draft",
    "Entry",
    "EntryKind",
    "ErasedPayload",
    "Established",
    "Frontier",
    "Head",
    "Header",
    "ItemKind",
    "Json",
    "KeyReusedError",
    "Occurred",
    "OvertakenError",
    "Payload",
    "Second",
    "Tree",
    "Verification",
    "append",
    "append_all",
    "begin",
    "canonical",
    "component",
    "entered",
    "foreign_draft",
    "head_after",
    "item",
    "kind_of",
    "name_of",
    "parse_item",
    "read_anchor",
    "read_anchors",
    "read_canonical",
    "read_header",
    "read_payload",
    "says_the_same",
    "take_anchor",
    "taken_entry",
    "verify_chain",
    "write_anchor",
    "write_header",
    "write_payload",
]
