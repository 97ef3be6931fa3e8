"""What must a payload say, in which form, and how is an older form read?

A payload is a JSON object. Only what the fold and the record items need is demanded; a task may
write more. A form's number rises when what is demanded changes its meaning; older payloads stay
as they were written and are read through upcasters, one step at a time.
"""

import datetime as dt
from collections.abc import Callable, Iterator, Mapping
from types import MappingProxyType
from typing import Any, cast

from sootline.core.basis import BadInputError, Fault, ItemId, MessageId, UnreadableValueError
from sootline.core.gear.state import Assembly
from sootline.core.ledger.canonical import Json
from sootline.core.ledger.items import ItemKind, kind_of, parse_item
from sootline.core.ledger.kinds import EntryKind
from sootline.core.ledger.times import ClockSource, Occurred
from sootline.core.rulebook.contaminants import Decider, Level

Payload = Mapping[str, Json]
Upcaster = Callable[[Payload], Payload]

_E, _I = EntryKind, ItemKind
_OCCURRED_FIELDS = 4
# Everything is at its first form yet; a kind that moves on stands here with its number.
FORMS: Mapping[EntryKind, int] = MappingProxyType(dict.fromkeys(EntryKind, 1))
UPCASTERS: Mapping[tuple[EntryKind, int], Upcaster] = MappingProxyType({})

REQUIRED: Mapping[EntryKind, tuple[str, ...]] = MappingProxyType(
    {
        _E.WORN: ("member",),
        _E.ISSUED: ("holder",),
        _E.EXCHANGED: ("holder", "with"),
        _E.LENT: ("holder",),
        _E.HOLD_OPENED: ("cause", "question", "decider", "deputy"),
        _E.HOLD_RELEASED: ("cause", "by", "office"),
        _E.HOLD_ESCALATED: ("cause", "to"),
        _E.PUT_IN_WASHER: ("load",),
        _E.WASHED_BY_HAND: ("by",),
        _E.LOOKED_OVER: ("by",),
        _E.TOUCH_CHECKED: ("by",),
        _E.REBUILT: ("by",),
        _E.EVIDENCE_TAKEN: ("by",),
        _E.EVIDENCE_RETURNED: ("by", "office"),
        _E.HANDED_BACK: ("by",),
        _E.TRAINING_MARKED: ("by",),
        _E.RETIRED: ("by", "reason"),
        _E.DISPOSED: ("by", "method", "witness"),
        _E.LABEL_READ: ("by",),
        _E.ATTACHED: ("sha256",),
        _E.NOTED: ("said",),
        _E.TRANSFER_OFFERED: ("to",),
        _E.TRANSFER_ACCEPTED: ("by",),
        _E.TRANSFER_DECLINED: ("by",),
        _E.WASH_WRITTEN_UP: ("level", "by"),
        _E.DISINFECTED: ("by",),
        _E.INSPECTED_ROUTINE: ("by",),
        _E.INSPECTED_ADVANCED: ("by",),
        _E.INSPECTED_LINER: ("by",),
        _E.REPAIRED: ("by",),
        _E.TRAINED: ("topic",),
        _E.ROLE_CHANGED: ("role",),
        _E.MEMBER_LOCKED: ("by", "reason"),
        _E.EDITION_ADOPTED: ("edition", "by"),
        _E.POLICY_SET: ("topic", "by"),
        _E.LIMIT_ACCEPTED: ("topic", "by"),
        _E.CORRECTED: ("reason",),
        _E.ERASED: ("reason",),
        _E.ANSWERED: ("said",),
        _E.FOREIGN: ("origin", "header"),
        _E.CLOCK_CONFIRMED: ("by",),
        _E.ANCHORED: ("anchor", "holder"),
    }
)
_NOT_ON_COMPONENTS: Mapping[EntryKind, tuple[ItemKind, ...]] = MappingProxyType(
    {
        _E.REGISTERED: tuple(ItemKind),
        _E.FACTS_CHANGED: tuple(ItemKind),
        _E.ATTACHED: tuple(ItemKind),
        _E.NOTED: tuple(ItemKind),
        _E.CORRECTED: tuple(ItemKind),
        _E.ERASED: tuple(ItemKind),
        _E.ANSWERED: tuple(ItemKind),
        _E.FOREIGN: tuple(ItemKind),
        _E.TRANSFER_OFFERED: (_I.COMPONENT, _I.SET, _I.BAG),
        _E.TRANSFER_ACCEPTED: (_I.COMPONENT, _I.SET, _I.BAG),
        _E.TRANSFER_DECLINED: (_I.COMPONENT, _I.SET, _I.BAG),
        _E.CALL_RECORDED: (_I.CALL,),
        _E.LOAD_STARTED: (_I.LOAD,),
        _E.LOAD_ENDED: (_I.LOAD,),
        _E.LOAD_FAILED: (_I.LOAD,),
        _E.FLUSHED: (_I.MACHINE, _I.SINK),
        _E.SERVICED: (_I.MACHINE, _I.RACK, _I.SINK),
        _E.TRAINED: (_I.MEMBER,),
        _E.MEASURED: (_I.MEMBER,),
        _E.ROLE_CHANGED: (_I.MEMBER,),
        _E.MEMBER_LOCKED: (_I.MEMBER,),
        _E.SUPPLY_COUNTED: (_I.SUPPLY,),
        _E.RECALLED: (_I.DEPARTMENT, _I.COMPONENT),
        _E.EDITION_ADOPTED: (_I.DEPARTMENT,),
        _E.POLICY_SET: (_I.DEPARTMENT,),
        _E.LIMIT_ACCEPTED: (_I.DEPARTMENT, _I.COMPONENT),
        _E.PLANNED: (_I.DEPARTMENT,),
        _E.CLOCK_CONFIRMED: (_I.DEPARTMENT,),
        _E.ANCHORED: (_I.DEPARTMENT,),
    }
)
_WORDS: Mapping[str, frozenset[str]] = MappingProxyType(
    {
        "decider": frozenset(Decider),
        "deputy": frozenset(Decider),
        "office": frozenset(Decider),
        "assembly": frozenset(Assembly),
        "level": frozenset(Level),
    }
)


def check_payload(kind: EntryKind, thing: ItemId, payload: Payload) -> None:
    """Refuse what cannot be written about a thing, or says too little.

    Raises:
        BadInputError: with everything wrong.
    """
    faults = tuple(_faults(kind, thing, payload))
    if faults:
        raise BadInputError(faults)


def upcast(
    kind: EntryKind,
    form: int,
    payload: Payload,
    *,
    forms: Mapping[EntryKind, int] = FORMS,
    upcasters: Mapping[tuple[EntryKind, int], Upcaster] = UPCASTERS,
) -> Payload:
    """Return a payload in its kind's newest form.

    Raises:
        BadInputError: the form is newer than this program knows, or there was never such a one.
    """
    newest = forms[kind]
    if not 1 <= form <= newest:
        values = {"kind": kind.value, "form": str(form), "newest": str(newest)}
        raise BadInputError([_fault("form", "ledger.form.unknown", **values)])
    for step in range(form, newest):
        payload = upcasters[kind, step](payload)
    return payload


def _faults(kind: EntryKind, thing: ItemId, payload: Payload) -> Iterator[Fault]:
    allowed = _NOT_ON_COMPONENTS.get(kind, (ItemKind.COMPONENT,))
    if kind_of(thing) not in allowed:
        named = ", ".join(allowed)
        yield _fault("item", "ledger.form.item", kind=kind.value, item=thing, allowed=named)
    for name in REQUIRED.get(kind, ()):
        value = payload.get(name)
        if not isinstance(value, str) or not value.strip():
            yield _fault(f"payload.{name}", "ledger.form.missing", kind=kind.value, name=name)
    for name, words in _WORDS.items():
        value = payload.get(name)
        if value is not None and value not in words:
            listed = ", ".join(sorted(words))
            yield _fault(f"payload.{name}", "ledger.form.word", value=str(value), words=listed)
    if kind is EntryKind.CORRECTED:
        yield from _correction_faults(payload)


def _correction_faults(payload: Payload) -> Iterator[Fault]:
    """Hold a correction to what it may put right: that it happened, to what, what, when, how."""
    named = [name for name in CORRECTS if name in payload]
    if bool(named) == (payload.get("withdrawn") is True):
        yield _fault("payload", "ledger.form.correction", names=", ".join(CORRECTS))
    for name, check in CORRECTS.items():
        try:
            if name in payload:
                check(payload[name])
        except UnreadableValueError as error:
            yield Fault(place=f"payload.{name}", message=error.message, values=error.values)
        except (KeyError, TypeError, ValueError):
            values = {"name": name, "value": str(payload[name])}
            yield _fault(f"payload.{name}", "ledger.form.corrected_value", **values)


def read_occurred(value: Json) -> Occurred:
    """Return a span of time from its JSON form, as headers and corrections write it.

    Raises:
        KeyError, TypeError, ValueError: it is none.
    """
    fields = dict(cast("dict[str, Json]", value))
    offset = fields["offset_s"]
    if type(offset) not in (int, type(None)) or len(fields) != _OCCURRED_FIELDS:
        raise TypeError("occurred")
    return Occurred(
        earliest=dt.datetime.fromisoformat(cast("str", fields["earliest"])),
        latest=dt.datetime.fromisoformat(cast("str", fields["latest"])),
        clock=ClockSource(cast("str", fields["clock"])),
        offset_s=cast("int | None", offset),
    )


def _object(value: Json) -> None:
    if not isinstance(value, dict):
        raise TypeError(value)


CORRECTS: Mapping[str, Callable[[Any], object]] = MappingProxyType(
    {"item": parse_item, "kind": EntryKind, "occurred": read_occurred, "payload": _object}
)


def _fault(place: str, message: str, **values: str) -> Fault:
    return Fault(place=place, message=MessageId(message), values=tuple(values.items()))
