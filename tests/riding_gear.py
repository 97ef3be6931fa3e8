"""Whole outfits for the riding tests, component by component; everything here is invented."""

import datetime as dt
from decimal import Decimal

from sootline.core.basis import ComponentId, KindId, MemberId, SetId
from sootline.core.gear import CareStage, Component, Custody, Element, State
from sootline.core.riding import (
    FitRule,
    Mask,
    MaskState,
    Records,
    Rider,
    RidingFacts,
    Situation,
    Slot,
    arrange,
)

NOW = dt.datetime(2026, 3, 1, 3, 30, tzinfo=dt.timezone(-dt.timedelta(hours=5)))
EVERY_SLOT = (Slot.SET, Slot.HOOD, Slot.GLOVES, Slot.BOOTS, Slot.HELMET, Slot.MASK)
READY, SOILED = (
    State(),
    State(stage=CareStage.TO_WASH, custody=Custody.BAG),
)
COAT_KINDS = ("coat-shell", "coat-liner", "drag-device")
TROUSER_KINDS = ("trouser-shell", "trouser-liner")
FIT = (
    FitRule(element=Element.COAT, dimension="chest", most=Decimal(2), unit="in"),
    FitRule(element=Element.TROUSERS, dimension="waist", most=Decimal(2), unit="in"),
    FitRule(
        element=Element.TROUSERS,
        dimension="inseam",
        least=Decimal(-1),
        most=Decimal(1),
        unit="in",
    ),
    FitRule(element=Element.GLOVES, dimension="hand"),
    FitRule(element=Element.BOOTS, dimension="foot"),
    FitRule(element=Element.HELMET, dimension="head"),
    FitRule(element=Element.MASK, dimension="mask"),
)


def piece(
    name: str,
    kind: str,
    owner: str | None = None,
    state: State = READY,
    group: str | None = None,
    **size: str,
) -> Component:
    """Return one component, named as its set and kind."""
    return Component(
        id=ComponentId(name),
        kind=KindId(kind),
        owner=MemberId(owner) if owner else None,
        set=SetId(group) if group else None,
        size=tuple(size.items()),
        state=state,
    )


def coat(name: str, chest: str, owner: str | None = None, state: State = READY) -> list[Component]:
    """Return shell, liner and drag device of one coat."""
    sizes: tuple[dict[str, str], ...] = ({"chest": chest}, {"chest": chest}, {})
    return [
        piece(f"{name}-{kind}", kind, owner, state, name, **size)
        for kind, size in zip(COAT_KINDS, sizes, strict=True)
    ]


def trousers(
    name: str, size: str, owner: str | None = None, state: State = READY
) -> list[Component]:
    """Return shell and liner of one pair of trousers; the size is waist by inseam ("40x30")."""
    waist, inseam = size.split("x")
    return [
        piece(f"{name}-{kind}", kind, owner, state, name, waist=waist, inseam=inseam)
        for kind in TROUSER_KINDS
    ]


def whole_set(
    name: str, size: str, owner: str | None = None, state: State = READY
) -> list[Component]:
    """Return coat and trousers; the size is chest, waist and inseam ("46/40x30")."""
    chest, legs = size.split("/")
    return [*coat(name, chest, owner, state), *trousers(name, legs, owner, state)]


def small_gear(owner: str, soiled: tuple[str, ...] = ()) -> list[Component]:
    """Return a member's hood, gloves, boots and helmet; the kinds named are in the bag."""
    kinds = ("hood", "gloves", "boots-leather", "helmet-shell", "ear-neck-cover")
    return [
        piece(f"{owner}-{kind}", kind, owner, SOILED if kind in soiled else READY) for kind in kinds
    ]


def mask(owner: str, state: MaskState = MaskState.USABLE, size: str = "M") -> Mask:
    """Return a member's mask."""
    return Mask(id=ComponentId(f"{owner}-mask"), owner=MemberId(owner), size=size, state=state)


def rider(name: str, *, needs: tuple[Slot, ...] = EVERY_SLOT, **facts: object) -> Rider:
    """Return an interior-qualified member of the one crew."""
    given: dict[str, object] = {"interior": True, **facts}
    return Rider(id=MemberId(name), needs=needs, **given)  # type: ignore[arg-type]


def situation(
    components: list[Component], riders: list[Rider], facts: RidingFacts, **found: object
) -> Situation:
    """Arrange a situation at 03:30."""
    given: dict[str, object] = {"now": NOW, **found}
    records = Records(facts=facts, components=tuple(components), **given)  # type: ignore[arg-type]
    return arrange(records, riders)
