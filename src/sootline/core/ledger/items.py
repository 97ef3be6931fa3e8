"""What is an entry about: which kind of thing, and which one?"""

from enum import StrEnum

from sootline.core.basis import ComponentId, ItemId, UnreadableValueError


class ItemKind(StrEnum):
    """The things the record speaks of."""

    COMPONENT = "component"
    SET = "set"
    MEMBER = "member"
    CALL = "call"
    LOAD = "load"
    BAG = "bag"
    MACHINE = "machine"
    RACK = "rack"
    SINK = "sink"
    PLACE = "place"
    SUPPLY = "supply"
    CONTRACTOR = "contractor"
    DEPARTMENT = "department"
    YEAR_FACT = "year-fact"
    READING = "reading"
    ENTRY = "entry"


_KINDS = frozenset(kind.value for kind in ItemKind)


def item(kind: ItemKind, identity: str) -> ItemId:
    """Return the id of a thing in the record ("component:0412").

    Raises:
        UnreadableValueError: the thing has no name.
    """
    if not identity.strip():
        raise UnreadableValueError("ledger.item.nameless", kind=kind.value)
    return ItemId(f"{kind.value}:{identity}")


def parse_item(text: str) -> ItemId:
    """Read the id of a thing from its text.

    Raises:
        UnreadableValueError: it names no kind of thing, or no thing.
    """
    kind, colon, identity = text.partition(":")
    if not colon or kind not in _KINDS or not identity.strip():
        raise UnreadableValueError("ledger.item.unreadable", text=text)
    return ItemId(text)


def component(identity: ComponentId | str) -> ItemId:
    """Return the id of a component in the record."""
    return item(ItemKind.COMPONENT, identity)


def kind_of(thing: ItemId) -> ItemKind:
    """Say which kind of thing it is."""
    return ItemKind(thing.partition(":")[0])


def name_of(thing: ItemId) -> str:
    """Return the thing's own name or number, without its kind."""
    return thing.partition(":")[2]
