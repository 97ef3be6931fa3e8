"""Which whole elements are there: each with its parts, who has it, and whether it can be worn?

Shell, liner and drag device make one coat only when they belong to one set and all can be worn.
A component of no set is an element by itself, or belongs to its owner's other pieces.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from sootline.core.basis import (
    Bearing,
    ComponentId,
    Finding,
    KindId,
    MemberId,
    MinuteSpan,
    SetId,
    finding,
)
from sootline.core.gear import Component, Element, ElementView, find_kind, view_sets
from sootline.core.gear.sets import NEEDED
from sootline.core.riding.wearable import NOW, Known, Wear, judge_wear, record_ground


@dataclass(frozen=True, kw_only=True)
class Garment:
    """One element as somebody could put it on.

    Args:
        set: what it is recorded with; only pieces of one spare set go together.
        owner: whose it is; None is a spare.
        holder: who has it now.
        lent: whether it comes from another department.
    """

    element: Element
    set: SetId
    owner: MemberId | None
    holder: MemberId | None
    lent: bool
    components: tuple[ComponentId, ...]
    size: tuple[tuple[str, str], ...]
    back: MinuteSpan | None
    reasons: tuple[Finding, ...]
    first: tuple[Finding, ...]


_Key = tuple[MemberId | None, MemberId | None, SetId]


@dataclass(frozen=True, kw_only=True)
class Grouped:
    """The elements of one set of one owner, with everything they were judged by.

    Args:
        wanted: which kinds the department wants besides.
        by: per piece: itself, its decision, its retirement, its time back and of arrival.
    """

    wanted: tuple[KindId, ...]
    by: tuple[tuple[object, ...], ...]
    garments: tuple[Garment, ...]


Kept = dict[_Key, Grouped]


def list_garments(
    components: Iterable[Component],
    known: Known,
    also_needed: tuple[KindId, ...],
    kept: Kept | None = None,
) -> tuple[Garment, ...]:
    """List every element of every set and owner, whole or not.

    Another department's pieces count only when they are lent to us or handed out.

    Args:
        kept: what an earlier call left for later ones; elements are judged again only where a
            piece, or what is known of it, is another.

    Raises:
        BadInputError: a kind is unknown.
    """
    groups: dict[_Key, list[Component]] = defaultdict(list)
    for component in components:
        lent = component.id in known.arrivals
        holder = component.state.holder or component.owner
        if component.guest and not lent and holder is None:
            continue
        name = component.set or SetId(component.owner or component.id)
        groups[component.owner, holder, name].append(component)
    made = {} if kept is None else kept
    for key, members in groups.items():
        by = tuple(_known_of(one, known) for one in members)
        old = made.get(key)
        if old is None or old.wanted != also_needed or not _same(old.by, by):
            named = [one if one.set else replace(one, set=key[2]) for one in members]
            garments = tuple(_of_group(key, named, known, also_needed))
            made[key] = Grouped(wanted=also_needed, by=by, garments=garments)
    for gone in made.keys() - groups.keys():
        del made[gone]
    return tuple(garment for key in groups for garment in made[key].garments)


def _known_of(component: Component, known: Known) -> tuple[object, ...]:
    name = component.id
    known_by_name = (known.decisions, known.out, known.backs, known.arrivals)
    return component, *(facts.get(name) for facts in known_by_name)


def _same(old: tuple[tuple[object, ...], ...], new: tuple[tuple[object, ...], ...]) -> bool:
    """Whether everything is the very same; equal in other objects counts as another."""
    return len(old) == len(new) and all(
        mine is yours
        for before, after in zip(old, new, strict=True)
        for mine, yours in zip(before, after, strict=True)
    )


def _of_group(
    key: _Key, members: list[Component], known: Known, also_needed: tuple[KindId, ...]
) -> Iterator[Garment]:
    by_id = {member.id: member for member in members}
    for view in view_sets(members, also_needed)[0].elements:
        gone = [one.component for one in view.lacking if one.component is not None]
        pieces = [by_id[one] for one in (*view.components, *gone)]
        for parts in _apart(view.element, pieces):
            yield _garment(key, view, parts, known)


def _apart(element: Element, pieces: list[Component]) -> list[list[Component]]:
    """Take two gloves pairs or two helmets of one owner for two; loose parts go with each."""
    if element in NEEDED:
        return [pieces]
    separable = {part for piece in pieces for part in find_kind(piece.kind).separable}
    mains = [piece for piece in pieces if piece.kind not in separable]
    rest = [piece for piece in pieces if piece.kind in separable]
    return [[main, *rest] for main in mains]


def _garment(key: _Key, view: ElementView, parts: list[Component], known: Known) -> Garment:
    owner, holder, name = key
    wears = [judge_wear(part, known) for part in parts]
    faults = (*_missing(view, name), *_doubled(view, name))
    return Garment(
        element=view.element,
        set=name,
        owner=owner,
        holder=holder,
        lent=any(part.id in known.arrivals for part in parts),
        components=tuple(part.id for part in parts),
        size=_size(parts),
        back=None if faults else _last(wears),
        reasons=(*faults, *(reason for wear in wears for reason in wear.reasons)),
        first=tuple(step for wear in wears for step in wear.first),
    )


def _last(wears: Iterable[Wear]) -> MinuteSpan | None:
    """Return when the last part is back; None when one has no known time."""
    last = NOW
    for wear in wears:
        if wear.back is None:
            return None
        last = last_of(last, wear.back)
    return last


def last_of(one: MinuteSpan, other: MinuteSpan) -> MinuteSpan:
    """Return when both have happened."""
    return MinuteSpan(
        earliest=max(one.earliest, other.earliest),
        likely=max(one.likely, other.likely),
        late=max(one.late, other.late),
        rests_on=one.rests_on or other.rests_on,
    )


def _size(parts: Iterable[Component]) -> tuple[tuple[str, str], ...]:
    """Join the sizes on the labels; where two parts disagree the size is not known."""
    sizes: dict[str, str] = {}
    for part in parts:
        for dimension, size in part.size:
            sizes[dimension] = size if sizes.get(dimension, size) == size else ""
    return tuple(sizes.items())


def _missing(view: ElementView, name: SetId) -> Iterator[Finding]:
    for lacking in view.lacking:
        yield finding(
            Bearing.FORBIDS,
            "riding.piece.missing",
            record_ground("set.parts", name),
            element=view.element,
            kind=lacking.kind,
            set=name,
        )


def _doubled(view: ElementView, name: SetId) -> Iterator[Finding]:
    for kind in view.doubled:
        yield finding(
            Bearing.FORBIDS,
            "riding.piece.doubled",
            record_ground("set.parts", name),
            element=view.element,
            kind=kind,
            set=name,
        )
