"""Which single purchase or loan would put whom back in a seat?

For everybody left out at the last arrival: the places that neither own gear nor a spare left on
the rack fills, each in the member's own size. With those pieces that member rides and nobody steps
back, so each purchase listed is worth at least one seat.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from sootline.core.basis import MemberId
from sootline.core.gear import Element
from sootline.core.riding.answers import Riding
from sootline.core.riding.asking import hold_of, worn_at
from sootline.core.riding.fit import check_fit, failures
from sootline.core.riding.situation import Rider, Situation, Slot, Unit
from sootline.core.riding.wearable import NOW

_ELEMENTS = {Slot.SET: (Element.COAT, Element.TROUSERS)}


@dataclass(frozen=True, kw_only=True)
class Wanted:
    """One piece that is missing, in the sizes it must have; none where one size fits all."""

    slot: Slot
    size: tuple[tuple[str, str], ...]


@dataclass(frozen=True, kw_only=True)
class Purchase:
    """What would have to be bought or lent together.

    Args:
        covers: those left out who could ride with it, one of them for each time it is had.
        only: those of them whom nothing else listed covers.
    """

    pieces: tuple[Wanted, ...]
    covers: tuple[MemberId, ...]
    only: tuple[MemberId, ...] = ()


@dataclass(frozen=True, kw_only=True)
class _Lack:
    rider: Rider
    pieces: tuple[Wanted, ...]


def list_purchases(situation: Situation, riding: Riding) -> tuple[Purchase, ...]:
    """List what would help, the fewest pieces first.

    A member who was not measured in a dimension that matters cannot be bought for and is in none;
    nor is one who lacks an element for which no fit limit is set.

    Args:
        riding: the answer for this situation.
    """
    lacks = tuple(_lacks(situation, riding))
    bundles = dict.fromkeys(lack.pieces for lack in lacks if _sized(lack.pieces))
    every = (
        Purchase(
            pieces=pieces,
            covers=tuple(one.rider.id for one in lacks if _serves(situation, pieces, one)),
        )
        for pieces in bundles
    )
    found = sorted((one for one in every if one.covers), key=lambda one: len(one.pieces))
    return tuple(replace(one, only=_only(one, found)) for one in found)


def _only(purchase: Purchase, others: Sequence[Purchase]) -> tuple[MemberId, ...]:
    return tuple(
        member for member in purchase.covers if sum(member in other.covers for other in others) == 1
    )


def _lacks(situation: Situation, riding: Riding) -> Iterator[_Lack]:
    """Name, for everybody left out, what neither own gear nor the rack fills in the end."""
    last = riding.moments[-1]
    held = hold_of(situation)
    given = {worn.unit.id for one in last.can for worn in one.outfit if worn.handed}
    rack = [
        unit
        for unit in situation.units
        if unit.holder is None and unit.id not in given and unit.there_by(last.minute)
    ]
    left_out = {one.member for one in last.cannot}
    for rider in situation.present:
        if rider.id in left_out:
            empty = [
                slot
                for slot in rider.needs
                if worn_at(held.get((rider.id, slot), ()), last.minute) is None
                and not any(
                    unit.slot is slot and not failures(check_fit(situation, rider, unit))
                    for unit in rack
                )
            ]
            yield _Lack(rider=rider, pieces=tuple(_wanted(situation, rider, s) for s in empty))


def _wanted(situation: Situation, rider: Rider, slot: Slot) -> Wanted:
    """Describe the piece that would fit best: the member's own measures."""
    measures = dict(rider.measures)
    size = tuple(
        (rule.dimension, measures.get(rule.dimension, ""))
        for element in _elements(slot)
        if element not in situation.one_size
        for rule in situation.fit
        if rule.element is element
    )
    return Wanted(slot=slot, size=size)


def _elements(slot: Slot) -> tuple[Element, ...]:
    return _ELEMENTS.get(slot) or (Element(slot),)


def _sized(pieces: tuple[Wanted, ...]) -> bool:
    return bool(pieces) and all(size.strip() for piece in pieces for _, size in piece.size)


def _serves(situation: Situation, pieces: tuple[Wanted, ...], lack: _Lack) -> bool:
    """Whether these pieces fill everything a member lacks."""
    bought = {piece.slot: piece for piece in pieces}
    return all(
        want.slot in bought
        and not failures(check_fit(situation, lack.rider, _as_unit(bought[want.slot])))
        for want in lack.pieces
    )


def _as_unit(piece: Wanted) -> Unit:
    return Unit(
        id="bought", slot=piece.slot, elements=_elements(piece.slot), size=piece.size, back=NOW
    )
