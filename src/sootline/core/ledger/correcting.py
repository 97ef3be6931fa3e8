"""What does each entry say after everything that was put right later?

A correction names one entry and says what was otherwise, or that it never happened. It can be
corrected itself, or taken back. Nothing disappears: the corrected entry stays in the history.
"""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

from sootline.core.basis import ItemId
from sootline.core.ledger.facts import Fact
from sootline.core.ledger.forms import Payload, read_occurred
from sootline.core.ledger.kinds import EntryKind
from sootline.core.ledger.times import Occurred


class Amended(StrEnum):
    """What later entries made of one."""

    NO = "no"
    CORRECTED = "corrected"
    WITHDRAWN = "withdrawn"
    # Somebody corrected it, and what they wrote was erased: it may have happened or not.
    DOUBTFUL = "doubtful"


@dataclass(frozen=True, kw_only=True, slots=True)
class Settled:
    """One entry with what later corrections made of it.

    Args:
        fact: as it counts now.
        written: as it was written.
        by: the corrections that count, as places in this record.
    """

    fact: Fact
    written: Fact
    amended: Amended = Amended.NO
    by: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class _Change:
    """What a chain of corrections says of an entry; None changes nothing of that."""

    withdrawn: bool = False
    doubtful: bool = False
    item: ItemId | None = None
    kind: EntryKind | None = None
    occurred: Occurred | None = None
    payload: Payload | None = None
    by: tuple[int, ...] = ()


_Corrections = dict[tuple[str, int], list[Fact]]


def settle(facts: Iterable[Fact]) -> tuple[Settled, ...]:
    """Return every entry but the corrections, with what was put right.

    Args:
        facts: in the record's order.
    """
    every = tuple(facts)
    corrections = _by_target(every)
    if not corrections:
        return tuple(Settled(fact=fact, written=fact) for fact in every)
    return tuple(
        _settled(fact, corrections) for fact in every if fact.kind is not EntryKind.CORRECTED
    )


def _by_target(facts: Iterable[Fact]) -> _Corrections:
    found: _Corrections = defaultdict(list)
    for fact in facts:
        if fact.kind is EntryKind.CORRECTED and fact.corrects is not None:
            found[fact.origin, fact.corrects].append(fact)
    return found


def _names(fact: Fact) -> tuple[tuple[str, int], ...]:
    """Return by which names a correction may point at an entry: here, and where it was written."""
    return tuple({(fact.origin, fact.origin_seq), (fact.here, fact.seq)})


def _settled(fact: Fact, corrections: _Corrections) -> Settled:
    change = _Change()
    for correction in _on(fact, corrections):
        said = _said(correction, corrections)
        change = _merged(change, said) if said is not None else change
    if not change.by:
        return Settled(fact=fact, written=fact)
    if change.withdrawn:
        return Settled(fact=fact, written=fact, amended=Amended.WITHDRAWN, by=change.by)
    amended = Amended.DOUBTFUL if change.doubtful else Amended.CORRECTED
    return Settled(fact=_changed(fact, change), written=fact, amended=amended, by=change.by)


def _on(fact: Fact, corrections: _Corrections) -> list[Fact]:
    found = [one for name in _names(fact) for one in corrections.get(name, ())]
    return sorted(found, key=lambda one: one.seq)


def _said(correction: Fact, corrections: _Corrections) -> _Change | None:
    """Return what a correction says after corrections of itself; None when it was taken back."""
    change: _Change | None = _own(correction)
    for later in _on(correction, corrections):
        said = _said(later, corrections)
        if said is not None:
            change = None if said.withdrawn else _merged(change or _Change(), said)
    return change


def _own(correction: Fact) -> _Change:
    """Return what a correction itself says; one that nobody can read leaves a doubt."""
    try:
        return _read_change(correction)
    except (KeyError, TypeError, ValueError):
        return _Change(doubtful=True, by=(correction.seq,))


def _read_change(correction: Fact) -> _Change:
    payload = correction.payload
    item, kind = correction.text("item"), correction.text("kind")
    occurred, said = payload.get("occurred"), payload.get("payload")
    if correction.erased:
        raise KeyError("payload")
    return _Change(
        withdrawn=payload.get("withdrawn") is True,
        item=ItemId(item) if item else None,
        kind=EntryKind(kind) if kind else None,
        occurred=read_occurred(occurred) if occurred is not None else None,
        payload=said if isinstance(said, dict) else None,
        by=(correction.seq,),
    )


def _merged(before: _Change, later: _Change) -> _Change:
    return _Change(
        withdrawn=later.withdrawn,
        doubtful=before.doubtful or later.doubtful,
        item=later.item or before.item,
        kind=later.kind or before.kind,
        occurred=later.occurred or before.occurred,
        payload=before.payload if later.payload is None else later.payload,
        by=(*before.by, *later.by),
    )


def _changed(fact: Fact, change: _Change) -> Fact:
    occurred = change.occurred
    return replace(
        fact,
        item=change.item or fact.item,
        kind=change.kind or fact.kind,
        payload=fact.payload if change.payload is None else change.payload,
        occurred=occurred or fact.occurred,
        earliest=occurred.true_earliest if occurred else fact.earliest,
        latest=occurred.true_latest if occurred else fact.latest,
        flags=() if occurred else fact.flags,
    )
