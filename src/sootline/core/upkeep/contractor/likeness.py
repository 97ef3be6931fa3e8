"""Which missing components may a piece be that nobody could name for certain?"""

from collections.abc import Iterable

from sootline.core.basis import ComponentId
from sootline.core.gear import Component
from sootline.core.roster.text import skeleton
from sootline.core.upkeep.contractor.facts import Received
from sootline.core.upkeep.recalls.lots import could_read


def candidates_for(piece: Received, missing: Iterable[Component]) -> tuple[ComponentId, ...]:
    """List the missing components a piece may be, for a person to look at, in order.

    With a number on it: those whose number or serial a reader would take for it, or that differ
    by one sign. Without: those of its kind and size, as far as these were written down. A kind
    that was written down and differs rules out only a piece without a number: a number and a
    kind that contradict each other are shown to a person.
    """
    read = piece.read.strip()
    if read:
        return tuple(one.id for one in missing if _like(read, one))
    if piece.kind is None:
        return ()
    return tuple(one.id for one in missing if one.kind == piece.kind and _sized(piece, one))


def _like(read: str, component: Component) -> bool:
    marks = (str(component.id), component.label.serial or "")
    return any(mark and _near(read, mark) for mark in marks)


def _near(read: str, mark: str) -> bool:
    one, other = skeleton(read), skeleton(mark)
    return one == other or could_read(read, mark) or _one_apart(one, other)


def _one_apart(one: str, other: str) -> bool:
    """Whether two texts differ by one sign: changed, left out, or swapped with its neighbour."""
    if abs(len(one) - len(other)) > 1:
        return False
    start = next((n for n, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), None)
    if start is None:
        return True
    rest, others = one[start:], other[start:]
    changed = rest[1:] == others[1:]
    left_out = rest[1:] == others or rest == others[1:]
    swapped = rest[:2] == others[1::-1] and rest[2:] == others[2:]
    return changed or left_out or swapped


def _sized(piece: Received, component: Component) -> bool:
    """Whether a size that was written down is one the component has; none speaks against none."""
    if not piece.size.strip() or not component.size:
        return True
    written = set(skeleton(piece.size).split("-"))
    return any(skeleton(size) in written for _, size in component.size)
