"""Which components travel through the wash room as one piece?"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from sootline.core.basis import ComponentId, PlaceId, Quantity
from sootline.core.gear.catalogue import find_kind
from sootline.core.gear.components import Component
from sootline.core.gear.kinds import Kind, WashMethod
from sootline.core.laundry.rooms import Hanging, WashRoom
from sootline.core.laundry.sorts import DryingChoice, Sort, Sorting


@dataclass(frozen=True, kw_only=True)
class Handled:
    """Components that are washed, dried and carried as one, and the sort they belong to.

    Args:
        drying: where it may dry; the same for all its components.
    """

    components: tuple[Component, ...]
    sort: Sort
    drying: DryingChoice

    @property
    def id(self) -> ComponentId:
        """The id it has in the plan: that of its components, joined."""
        return ComponentId("+".join(component.id for component in self.components))

    @property
    def kinds(self) -> tuple[Kind, ...]:
        """The kinds of its components."""
        return tuple(find_kind(component.kind) for component in self.components)

    @property
    def masses(self) -> tuple[Quantity, ...]:
        """What its components count in a drum; an unweighed one as the heaviest of its kind."""
        weighed = zip(self.components, self.kinds, strict=True)
        counted = (one.mass or (kind.mass[1] if kind.mass else None) for one, kind in weighed)
        return tuple(mass for mass in counted if mass is not None)


def handle(
    sorting: Sorting, components: Mapping[ComponentId, Component], room: WashRoom
) -> tuple[Handled, ...]:
    """List the pieces of a plan: single components, or a set's layer where places hold sets.

    Coat and trousers of one set go as one piece when every place that may dry them holds a set,
    and only as long as a drum they are permitted in can take them together.
    """
    drying = {choice.component: choice for choice in sorting.drying}
    set_places = {place.id for place in room.drying if place.holds is Hanging.SET}
    return tuple(
        piece
        for sort in sorting.sorts
        for piece in _of_sort(sort, components, drying, frozenset(set_places))
    )


def _of_sort(
    sort: Sort,
    components: Mapping[ComponentId, Component],
    drying: Mapping[ComponentId, DryingChoice],
    set_places: frozenset[PlaceId],
) -> Iterator[Handled]:
    together: dict[tuple[object, ...], list[Component]] = {}
    for one in (components[name] for name in sort.components):
        places = drying[one.id].places
        as_set = sort.method is WashMethod.MACHINE and places and set_places.issuperset(places)
        owner = one.set or one.owner
        key = (owner, places) if as_set and owner else (one.id,)
        together.setdefault(key, []).append(one)
    for group in together.values():
        whole = Handled(components=tuple(group), sort=sort, drying=drying[group[0].id])
        if len(group) == 1 or _fits(whole):
            yield whole
        else:
            for one in group:
                yield Handled(components=(one,), sort=sort, drying=drying[one.id])


def _fits(piece: Handled) -> bool:
    """Whether every setting of the sort takes the piece whole, by weight and by count."""
    mass = sum(one.base for one in piece.masses)
    count: Sequence[Component] = piece.components
    return all(
        mass <= setting.limit.base and (setting.pieces is None or len(count) <= setting.pieces)
        for setting in piece.sort.settings
    )
