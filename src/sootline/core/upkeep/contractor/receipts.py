"""What of a shipment is back, what is missing, and what came that nobody sent?

Nothing is netted: a missing piece and a foreign one are two facts. A piece counts as back by its
own number, read as it stands, or because a named person says which it is; a similar number is a
question to a person, never a correction.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import ComponentId
from sootline.core.gear import Component
from sootline.core.upkeep.contractor.facts import Manifest, Receipt, Received
from sootline.core.upkeep.contractor.likeness import candidates_for


class Arrival(StrEnum):
    """What a piece that came is."""

    RETURNED = "returned"
    CONFIRMED = "confirmed"
    PROBABLE = "probable"
    UNIDENTIFIED = "unidentified"
    NOT_SENT = "not-sent"
    FOREIGN = "foreign"
    TWICE = "twice"


_BACK = (Arrival.RETURNED, Arrival.CONFIRMED)


@dataclass(frozen=True, kw_only=True)
class Arrived:
    """One piece that came.

    Args:
        receipt, line: where it stands, counted from 0.
        component: which sent component it is; None while that is not known.
        candidates: missing components it may be, for a person to look at.
        by: who confirmed it.
    """

    receipt: int
    line: int
    read: str
    arrival: Arrival
    component: ComponentId | None = None
    candidates: tuple[ComponentId, ...] = ()
    by: str = ""


@dataclass(frozen=True, kw_only=True)
class Reconciled:
    """A shipment against everything that came back for it.

    Args:
        back: sent components that are back, in the order of the manifest.
        missing: sent components that are not.
        arrived: every piece that came, in the order of the receipts.
    """

    manifest: Manifest
    back: tuple[ComponentId, ...]
    missing: tuple[ComponentId, ...]
    arrived: tuple[Arrived, ...]


def reconcile(
    manifest: Manifest, receipts: Sequence[Receipt], components: Iterable[Component]
) -> Reconciled:
    """Hold a shipment against its receipts; receipts of other shipments are passed over.

    Args:
        receipts: in any order; their place in the answer is the place given here.
        components: the register, to tell pieces of ours that were not sent from foreign ones.
    """
    desk = _Desk(manifest, components)
    items = [
        (number, line, piece)
        for number, receipt in sorted(enumerate(receipts), key=lambda pair: (pair[1].at, pair[0]))
        if receipt.manifest == manifest.id
        for line, piece in enumerate(receipt.pieces)
    ]
    found: dict[tuple[int, int], Arrived] = {}
    for judge in (desk.by_number, desk.by_word, desk.by_look):
        for number, line, piece in items:
            if (number, line) not in found:
                arrived = judge(piece, number, line)
                if arrived is not None:
                    found[number, line] = arrived
    here = {one.component for one in found.values() if one.arrival in _BACK}
    sent = tuple(dict.fromkeys(one.component for one in manifest.pieces))
    return Reconciled(
        manifest=manifest,
        back=tuple(one for one in sent if one in here),
        missing=tuple(one for one in sent if one not in here),
        arrived=tuple(found[number, line] for number, line, _ in items),
    )


class _Desk:
    """Says what each piece is: first those that name themselves, last those nobody can name."""

    def __init__(self, manifest: Manifest, components: Iterable[Component]) -> None:
        self._register = {component.id: component for component in components}
        self._sent = frozenset(one.component for one in manifest.pieces)
        self._back: set[ComponentId] = set()

    def by_number(self, piece: Received, receipt: int, line: int) -> Arrived | None:
        """Take a piece by its own number; another department's stays foreign whatever it reads."""
        read = piece.read.strip()
        name = ComponentId(read)
        if piece.marked.strip():
            return _as(Arrival.FOREIGN, piece, receipt, line)
        if not read or (name not in self._sent and name not in self._register):
            return None
        if not self._agrees(name, piece):
            return None
        if name not in self._sent:
            return _as(Arrival.NOT_SENT, piece, receipt, line, component=name)
        if name in self._back:
            return _as(Arrival.TWICE, piece, receipt, line, component=name)
        self._back.add(name)
        return _as(Arrival.RETURNED, piece, receipt, line, component=name)

    def by_word(self, piece: Received, receipt: int, line: int) -> Arrived | None:
        """Take a piece by a named person's word, if that component is still missing."""
        name = piece.confirmed
        if name is None or name not in self._sent:
            return None
        if name in self._back:
            return _as(Arrival.TWICE, piece, receipt, line, component=name)
        self._back.add(name)
        return _as(Arrival.CONFIRMED, piece, receipt, line, component=name)

    def by_look(self, piece: Received, receipt: int, line: int) -> Arrived:
        """Say what a piece nobody has named may be."""
        missing = [
            self._register[one] for one in sorted(self._sent - self._back) if one in self._register
        ]
        likely = candidates_for(piece, missing)
        if not piece.read.strip():
            arrival = Arrival.UNIDENTIFIED
        else:
            arrival = Arrival.PROBABLE if likely else Arrival.FOREIGN
        return _as(arrival, piece, receipt, line, candidates=likely)

    def _agrees(self, name: ComponentId, piece: Received) -> bool:
        """Whether what was written down of its looks does not speak against its number."""
        component = self._register.get(name)
        return component is None or piece.kind in (None, component.kind)


def _as(
    arrival: Arrival,
    piece: Received,
    receipt: int,
    line: int,
    *,
    component: ComponentId | None = None,
    candidates: tuple[ComponentId, ...] = (),
) -> Arrived:
    return Arrived(
        receipt=receipt,
        line=line,
        read=piece.read,
        arrival=arrival,
        component=component,
        candidates=candidates,
        by=piece.confirmed_by if arrival is Arrival.CONFIRMED else "",
    )
