"""Which pieces are likely the same one written twice? Suggested, never merged."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from sootline.core.basis import ComponentId, KindId
from sootline.core.gear.components import Component
from sootline.core.roster.text import skeleton


@dataclass(frozen=True, kw_only=True)
class LikelyDuplicate:
    """Pieces of one kind whose serials a reader would take for the same.

    Args:
        pieces: their ids, in the order of the list; recorded ones first.
        written: how each writes the serial.
    """

    kind: KindId
    pieces: tuple[ComponentId, ...]
    written: tuple[str, ...]


def likely_duplicates(components: Iterable[Component]) -> tuple[LikelyDuplicate, ...]:
    """Group components of one kind by what their serials look like; groups of one are left out."""
    alike: dict[tuple[KindId, str], list[Component]] = defaultdict(list)
    for component in components:
        if component.label.serial:
            alike[component.kind, skeleton(component.label.serial)].append(component)
    return tuple(
        LikelyDuplicate(
            kind=kind,
            pieces=tuple(piece.id for piece in pieces),
            written=tuple(piece.label.serial or "" for piece in pieces),
        )
        for (kind, _), pieces in alike.items()
        if len(pieces) > 1
    )
