"""Which places of an outfit can be filled, with what? From whole elements to sets, pairs, masks."""

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import zip_longest

from sootline.core.basis import Bearing, Finding, MemberId, MinuteSpan, finding
from sootline.core.gear import Element
from sootline.core.riding.facts import Mask, MaskState, RidingFacts
from sootline.core.riding.garments import Garment, last_of
from sootline.core.riding.situation import Slot, Unit, clock, minutes_until
from sootline.core.riding.wearable import NOW, record_ground

_SLOTS = {
    Element.COAT: Slot.COAT,
    Element.TROUSERS: Slot.TROUSERS,
    Element.HOOD: Slot.HOOD,
    Element.GLOVES: Slot.GLOVES,
    Element.BOOTS: Slot.BOOTS,
    Element.HELMET: Slot.HELMET,
    Element.MASK: Slot.MASK,
    Element.ESCAPE: Slot.ESCAPE,
}
_SET_ELEMENTS = (Element.COAT, Element.TROUSERS, Element.COVERALL)


def slots_of(needs: Iterable[Element], *, mixed_sets: bool) -> tuple[Slot, ...]:
    """Turn needed elements into places of an outfit: coat and trousers are one unless mixed."""
    slots: dict[Slot, None] = {}
    for element in needs:
        whole = element in _SET_ELEMENTS and not mixed_sets
        slots[Slot.SET if whole or element is Element.COVERALL else _SLOTS[element]] = None
    return tuple(slots)


def list_units(
    garments: Iterable[Garment], facts: RidingFacts, now: dt.datetime
) -> tuple[Unit, ...]:
    """List everything that fills a place of an outfit, worn, handed out, on the rack or coming."""
    every = tuple(garments)
    single = [one for one in every if one.element not in _SET_ELEMENTS]
    sets = [one for one in every if one.element in _SET_ELEMENTS]
    units = [_single(one, facts) for one in single]
    if facts.mixed_sets:
        units += [unit for one in sets for unit in _mixed(one, facts)]
    else:
        units += _spare_sets(sets, facts)
        units += _own_sets(sets, facts)
    units += [_mask(mask, now) for mask in facts.masks]
    return tuple(units)


def _single(garment: Garment, facts: RidingFacts) -> Unit:
    return _unit((garment,), _SLOTS[garment.element], facts)


def _mixed(garment: Garment, facts: RidingFacts) -> Iterator[Unit]:
    """Take coats and trousers singly; a coverall fills both places of whoever has it.

    A coverall on the rack is not offered where sets are mixed: it would have to be given twice.
    """
    if garment.element is not Element.COVERALL:
        yield _single(garment, facts)
    elif garment.holder is not None:
        yield _unit((garment,), Slot.COAT, facts)
        yield _unit((garment,), Slot.TROUSERS, facts)


def _unit(garments: tuple[Garment, ...], slot: Slot, facts: RidingFacts) -> Unit:
    """Join elements that are worn as one; what one of them lacks, the whole lacks."""
    first = garments[0]
    back: MinuteSpan | None = NOW
    for garment in garments:
        back = last_of(back, garment.back) if back and garment.back else None
    components = tuple(part for garment in garments for part in garment.components)
    return Unit(
        id=components[0] if slot is not Slot.SET else first.set,
        slot=slot,
        elements=tuple(garment.element for garment in garments),
        components=components,
        size=tuple(pair for garment in garments for pair in garment.size),
        holder=first.holder,
        own=first.owner is not None and first.owner == first.holder,
        lender=_lender(components, facts) if any(one.lent for one in garments) else None,
        back=back,
        reasons=tuple(reason for garment in garments for reason in garment.reasons),
        first=tuple(step for garment in garments for step in garment.first),
        untried=any(
            try_on.component in components
            and try_on.member == first.holder
            and try_on.signed_by is None
            for try_on in facts.try_ons
        ),
    )


def _lender(components: tuple[str, ...], facts: RidingFacts) -> str:
    return next(
        loan.lender for loan in facts.loans if not set(loan.components).isdisjoint(components)
    )


def _spare_sets(garments: list[Garment], facts: RidingFacts) -> Iterator[Unit]:
    """Pair coat and trousers of one spare set; one without the other is a set that lacks it."""
    spares = [one for one in garments if one.owner is None or one.owner != one.holder]
    keys = dict.fromkeys((one.holder, one.set) for one in spares)
    for holder, name in keys:
        members = [one for one in spares if (one.holder, one.set) == (holder, name)]
        coveralls = [one for one in members if one.element is Element.COVERALL]
        for coverall in coveralls:
            yield _unit((coverall,), Slot.SET, facts)
        rest = tuple(one for one in members if one.element is not Element.COVERALL)
        if rest:
            yield _whole(_unit(rest, Slot.SET, facts), rest[0])


def _whole(unit: Unit, garment: Garment) -> Unit:
    """Take back a set's readiness when it has only coat or only trousers."""
    lacking = [one for one in (Element.COAT, Element.TROUSERS) if one not in unit.elements]
    if not lacking:
        return unit
    reason = finding(
        Bearing.FORBIDS,
        "riding.set.half",
        record_ground("set.parts", garment.set),
        set=garment.set,
        has=garment.element,
        element=lacking[0],
    )
    return replace(unit, back=None, reasons=(reason, *unit.reasons))


def _own_sets(garments: list[Garment], facts: RidingFacts) -> Iterator[Unit]:
    """Pair each member's own coats and trousers, those recorded as one set first."""
    own: dict[MemberId, list[Garment]] = {}
    for one in garments:
        if one.owner is not None and one.owner == one.holder:
            own.setdefault(one.owner, []).append(one)
    for mine in own.values():
        coats = [one for one in mine if one.element is Element.COAT]
        trousers = [one for one in mine if one.element is Element.TROUSERS]
        for coverall in (one for one in mine if one.element is Element.COVERALL):
            yield _unit((coverall,), Slot.SET, facts)
        for coat in list(coats):
            match = next((one for one in trousers if one.set == coat.set), None)
            if match:
                coats.remove(coat)
                trousers.remove(match)
                yield _unit((coat, match), Slot.SET, facts)
        for pair in zip_longest(coats, trousers):
            there = tuple(one for one in pair if one is not None)
            yield _whole(_unit(there, Slot.SET, facts), there[0])


def _mask(mask: Mask, now: dt.datetime) -> Unit:
    """Take a mask as its cross-reference says; its own records are kept elsewhere."""
    back: MinuteSpan | None = NOW
    reasons: tuple[Finding, ...] = ()
    if mask.state is not MaskState.USABLE:
        wait = minutes_until(mask.back, now) if mask.back else None
        back = None if wait is None else MinuteSpan.exactly(wait)
        reasons = (
            finding(
                Bearing.FORBIDS,
                "riding.mask.no_time" if wait is None else "riding.mask.time",
                record_ground("mask", mask.id),
                mask=mask.id,
                mask_state=mask.state,
                size=mask.size or "?",
                time="?" if wait is None else clock(now, wait),
            ),
        )
    return Unit(
        id=mask.id,
        slot=Slot.MASK,
        elements=(Element.MASK,),
        components=(mask.id,),
        size=(("mask", mask.size),) if mask.size else (),
        holder=mask.holder or mask.owner,
        own=mask.owner is not None and mask.holder in (None, mask.owner),
        back=back,
        reasons=reasons,
    )
