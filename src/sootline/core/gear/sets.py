"""What does a set hold, what does it lack, and whose dates govern it? A set is only a view."""

from collections import Counter, defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from sootline.core.basis import ComponentId, KindId, SetId
from sootline.core.gear.catalogue import KINDS, find_kind
from sootline.core.gear.components import Component
from sootline.core.gear.kinds import Element
from sootline.core.gear.state import Custody, Life

# Source: common practice, no published source; the drag device has belonged to every coat since
# the 2007 edition of the US product standard (trade column on the drag device).
NEEDED: dict[Element, tuple[KindId, ...]] = {
    Element.COAT: (KindId("coat-shell"), KindId("coat-liner"), KindId("drag-device")),
    Element.TROUSERS: (KindId("trouser-shell"), KindId("trouser-liner")),
    Element.COVERALL: (KindId("coverall-shell"), KindId("coverall-liner"), KindId("drag-device")),
}

_PARTS = frozenset(part for kind in KINDS for part in kind.separable)


@dataclass(frozen=True, kw_only=True)
class Lacking:
    """A part the element cannot do without.

    Args:
        component: the recorded one that is not there (not seen, retired); None when none is
            recorded at all.
    """

    kind: KindId
    component: ComponentId | None = None


@dataclass(frozen=True, kw_only=True)
class ElementView:
    """One element of a set: coat, trousers, helmet, ...

    Args:
        components: what is recorded for it and still there.
        lacking: what it needs and does not have.
        doubled: kinds recorded more than once where one belongs.
        governing: the components whose dates govern it; the earliest of them counts.
    """

    element: Element
    components: tuple[ComponentId, ...]
    lacking: tuple[Lacking, ...]
    doubled: tuple[KindId, ...]
    governing: tuple[ComponentId, ...]

    @property
    def complete(self) -> bool:
        """Whether nothing lacks and nothing is there twice; it says nothing of condition."""
        return not self.lacking and not self.doubled


@dataclass(frozen=True, kw_only=True)
class SetView:
    """One set, element by element, in the order of the ensemble."""

    id: SetId
    elements: tuple[ElementView, ...]

    @property
    def complete(self) -> bool:
        """Whether every element that is in the set has its parts."""
        return all(element.complete for element in self.elements)


def view_sets(
    components: Iterable[Component], also_needed: tuple[KindId, ...] = ()
) -> tuple[SetView, ...]:
    """View components as sets; a component of no set is in none.

    Args:
        also_needed: kinds the department's policy wants in every element they belong to
            (suspenders).

    Raises:
        BadInputError: a kind is unknown.
    """
    grouped: dict[SetId, list[Component]] = defaultdict(list)
    for component in components:
        if component.set is not None:
            grouped[component.set].append(component)
    return tuple(
        SetView(id=set_id, elements=_elements(members, also_needed))
        for set_id, members in sorted(grouped.items())
    )


def _elements(members: list[Component], also_needed: tuple[KindId, ...]) -> tuple[ElementView, ...]:
    """View the members of one set element by element."""
    worn_with = _element_of(members)
    return tuple(
        _view(element, [one for one in members if worn_with[one.id] is element], also_needed)
        for element in Element
        if element in worn_with.values()
    )


def _element_of(members: list[Component]) -> dict[ComponentId, Element]:
    """Say to which element each member belongs; a coverall takes the drag device."""
    elements = {one.id: find_kind(one.kind).element for one in members}
    if Element.COVERALL in elements.values() and not any(
        one.kind == KindId("coat-shell") for one in members
    ):
        device = KindId("drag-device")
        elements |= {one.id: Element.COVERALL for one in members if one.kind == device}
    return elements


def _view(
    element: Element, members: list[Component], also_needed: tuple[KindId, ...]
) -> ElementView:
    """View one element of one set."""
    there = [one for one in members if _is_there(one)]
    wanted = tuple(kind for kind in also_needed if find_kind(kind).element is element)
    counts = Counter(one.kind for one in there)
    return ElementView(
        element=element,
        components=tuple(one.id for one in there),
        lacking=tuple(
            _lacking(kind, members)
            for kind in (*NEEDED.get(element, ()), *wanted)
            if kind not in counts
        ),
        doubled=tuple(kind for kind in NEEDED.get(element, ()) if counts[kind] > 1),
        governing=tuple(one.id for one in there if _governs(one.kind)),
    )


def _is_there(component: Component) -> bool:
    """Whether a component is where somebody saw it and not out for good."""
    gone = component.state.life in (Life.RETIRED, Life.DISPOSED)
    return not gone and component.state.custody is not Custody.NOT_SEEN


def _lacking(kind: KindId, members: list[Component]) -> Lacking:
    """Name what lacks, and which recorded component it would be."""
    recorded = next((one.id for one in members if one.kind == kind), None)
    return Lacking(kind=kind, component=recorded)


def _governs(kind_id: KindId) -> bool:
    """Whether its dates count: it governs its set, or is an element by itself (hood, helmet)."""
    return find_kind(kind_id).governs_set or kind_id not in _PARTS
