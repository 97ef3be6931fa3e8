"""In which column of the grid does a component stand?"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from itertools import groupby

from sootline.core.basis import KindId
from sootline.core.gear import Component, Element, Layer, find_kind

_LAYERED = (Element.COAT, Element.TROUSERS, Element.COVERALL)
_ORDER = (
    "coat-shell", "coat-liner", "coat-strap", "coat-soft",
    "trousers-shell", "trousers-liner", "trousers-strap", "trousers-pad",
    "coverall-shell", "coverall-liner",
    "hood", "gloves", "boots", "helmet", "helmet-inside", "escape", "other-wear", "mask",
)  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class Column:
    """One column.

    Args:
        key: names it, and the message of its heading.
        first: whether a group of columns begins here.
    """

    key: str
    first: bool

    @property
    def heading(self) -> str:
        """The message of its heading."""
        return f"web.column.{self.key}"


@dataclass(frozen=True, kw_only=True)
class Group:
    """Columns under one heading."""

    heading: str
    columns: tuple[Column, ...]

    @property
    def width(self) -> int:
        """How many columns it has."""
        return len(self.columns)


def key_of(component: Component) -> str:
    """Return the key of a component's column."""
    return _key_of(component.kind)


@cache
def _key_of(kind_id: KindId) -> str:
    kind = find_kind(kind_id)
    if kind.element in _LAYERED:
        return f"{kind.element}-{kind.layer}"
    if kind.element is Element.HELMET:
        return "helmet" if kind.layer is Layer.HARD else "helmet-inside"
    return kind.element.value


def groups_of(keys: Iterable[str]) -> tuple[Group, ...]:
    """Return the columns that are needed, in the order of dressing, grouped by garment."""
    present = set(keys)
    wanted = [key for key in _ORDER if key in present]
    wanted += sorted(present - set(_ORDER))
    return tuple(
        Group(
            heading=f"web.group.{group}",
            columns=tuple(
                Column(key=key, first=place == 0) for place, key in enumerate(keys_of_group)
            ),
        )
        for group, keys_of_group in groupby(wanted, key=_group)
    )


def _group(key: str) -> str:
    garment = key.partition("-")[0]
    return garment if garment in set(_LAYERED) else "rest"
