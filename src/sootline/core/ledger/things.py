"""What is known of a thing that is no component: a member, a place, a machine, a call, a load?

The latest word counts, part by part: what is registered or changed replaces what stood there;
what happened to it is kept by its kind, the last of each.
"""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from sootline.core.basis import ItemId
from sootline.core.ledger.canonical import Json
from sootline.core.ledger.correcting import Amended, settle
from sootline.core.ledger.facts import Fact
from sootline.core.ledger.forms import Payload
from sootline.core.ledger.items import ItemKind, kind_of
from sootline.core.ledger.kinds import EntryKind
from sootline.core.ledger.ordering import in_order

_K = EntryKind
_SAID_OF_IT = frozenset({_K.REGISTERED, _K.FACTS_CHANGED, _K.MEASURED, _K.CALL_RECORDED})
# Each topic has a latest word of its own.
_BY_TOPIC = frozenset({_K.TRAINED, _K.POLICY_SET, _K.LIMIT_ACCEPTED})
_NO_FACTS = frozenset({_K.NOTED, _K.ATTACHED, _K.ERASED, _K.ANSWERED, _K.ANCHORED})


@dataclass(frozen=True, kw_only=True, slots=True)
class ThingLife:
    """What the record adds up to about one thing.

    Args:
        facts: by name, None where one was taken back; under an entry's kind, what the last entry
            of that kind said.
        registered: whether anybody registered it.
        last_seq: the last entry about it.
    """

    item: ItemId
    facts: Payload
    registered: bool
    last_seq: int


def fold_things(facts: Iterable[Fact]) -> tuple[ThingLife, ...]:
    """Fold facts into what is known of every thing that is no component."""
    settled = [one for one in settle(facts) if kind_of(one.fact.item) is not ItemKind.COMPONENT]
    by_item: dict[ItemId, list[Fact]] = defaultdict(list)
    for one in in_order(settled):
        if one.amended is not Amended.WITHDRAWN:
            by_item[one.fact.item].append(one.fact)
    return tuple(_life(item, found) for item, found in by_item.items())


def _life(item: ItemId, facts: list[Fact]) -> ThingLife:
    merged: dict[str, Json] = {}
    for fact in facts:
        _merge(merged, fact)
    return ThingLife(
        item=item,
        facts=merged,
        registered=any(fact.kind in (_K.REGISTERED, _K.CALL_RECORDED) for fact in facts),
        last_seq=max(fact.seq for fact in facts),
    )


def _merge(merged: dict[str, Json], fact: Fact) -> None:
    """Put one fact's word in its place."""
    said = dict(fact.payload)
    if fact.kind in _SAID_OF_IT:
        merged.update(said)
    elif fact.kind in _BY_TOPIC:
        before = merged.get(fact.kind.value)
        topics = dict(before) if isinstance(before, dict) else {}
        topics[fact.text("topic") or ""] = said
        merged[fact.kind.value] = topics
    elif fact.kind not in _NO_FACTS:
        merged[fact.kind.value] = said
