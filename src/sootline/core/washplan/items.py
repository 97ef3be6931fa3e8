"""Which pieces are handled as one, and how far have they come when planning starts?

Pieces that always go the same way (same member, family, minutes and state) are one item; the grain
can be single pieces. Numbers stand for ids: positions in the instance's tuples.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import IntEnum

from sootline.core.washplan.facts import Piece
from sootline.core.washplan.instance import Instance

HAND = -1
NEVER = 10**9


class Stage(IntEnum):
    """How far a piece has come when planning starts."""

    RAW = 0
    PREPARED = 1
    IN_DRUM = 2
    WET = 3
    DRY = 4
    DONE = 5


@dataclass(frozen=True, kw_only=True)
class Item:
    """Some pieces of one member that are handled as one.

    Args:
        family: number of the family, HAND for pieces washed by hand.
        washers: numbers of the washers that may take it.
        cab: minutes in a cabinet, NEVER where not allowed.
        stage, since: how far it has come, and from when on it stands there [min].
        drum: number of the begun load it is in, or -1.
    """

    pieces: tuple[Piece, ...]
    member: int
    family: int
    weight: int
    prep: int
    inspect: int
    station: int
    hand: int
    units: int
    rack: int
    cab: int
    washers: frozenset[int]
    early: int
    stage: Stage
    since: int
    drum: int

    @property
    def count(self) -> int:
        """How many pieces it is."""
        return len(self.pieces)

    @property
    def drying(self) -> int:
        """The least drying minutes."""
        return min(self.rack, self.cab)

    @property
    def kind(self) -> tuple[str, str]:
        """Type and size, which a spare has to match."""
        return self.pieces[0].type, self.pieces[0].size


def form_items(instance: Instance, families: Iterable[str], *, single: bool) -> tuple[Item, ...]:
    """Form the items; `single` makes every piece an item of its own."""
    return _Grouping(instance, families).items(single=single)


_State = tuple[Stage, int, int]


def _states(instance: Instance) -> Callable[[Piece], _State]:
    begun = instance.begun
    prepared = {piece: task.end for task in begun.prep for piece in task.pieces}
    drums = {piece: (load, i) for i, load in enumerate(begun.loads) for piece in load.pieces}
    by_hand = {step.piece: step.end for step in begun.hand}
    dried = {step.piece: step.end for step in begun.dry}
    done = {piece: task.end for task in begun.inspect for piece in task.pieces}

    def state(piece: Piece) -> _State:
        one = piece.id
        for stage, ends in ((Stage.DONE, done), (Stage.DRY, dried), (Stage.WET, by_hand)):
            if one in ends:
                return stage, ends[one], -1
        if one in drums:
            load, i = drums[one]
            if load.unload_start < begun.minute:
                return Stage.WET, load.unload_end, -1
            return Stage.IN_DRUM, load.prog_end, i
        return (Stage.PREPARED, prepared[one], -1) if one in prepared else (Stage.RAW, 0, -1)

    return state


class _Grouping:
    """Puts pieces that always go the same way together."""

    def __init__(self, instance: Instance, families: Iterable[str]) -> None:
        self.instance = instance
        self.state = _states(instance)
        self.family = {family: f for f, family in enumerate(families)}
        self.member = {member.id: m for m, member in enumerate(instance.members)}
        self.station = {station: s for s, station in enumerate(instance.stations)}

    def items(self, *, single: bool) -> tuple[Item, ...]:
        """Form the items; what as a whole finds no drum or place stays in single pieces."""
        loanable = {(spare.type, spare.size) for spare in self.instance.spares}
        groups: dict[object, list[Piece]] = {}
        for piece in self.instance.pieces:
            alone = single or piece.hand_station or (piece.type, piece.size) in loanable
            key = (
                piece.id if alone else None, piece.member, piece.dry_rack, piece.dry_cab,
                piece.max_temp, piece.family, self.state(piece),
            )  # fmt: skip
            groups.setdefault(key, []).append(piece)
        return tuple(part for group in groups.values() for part in self._whole_or_single(group))

    def _whole_or_single(self, group: list[Piece]) -> list[Item]:
        whole = self._item(group)
        washable = whole.family == HAND or whole.stage > Stage.PREPARED or bool(whole.washers)
        if washable and whole.units <= self.instance.rack_units:
            return [whole]
        return [self._item([piece]) for piece in group]

    def _item(self, pieces: list[Piece]) -> Item:
        first = pieces[0]
        stage, since, drum = self.state(first)
        by_hand = first.hand_station is not None
        member = self.member[first.member]
        return Item(
            pieces=tuple(pieces),
            member=member,
            family=HAND if by_hand else self.family[first.family],
            weight=sum(piece.weight for piece in pieces),
            prep=sum(piece.prep for piece in pieces),
            inspect=sum(piece.inspect for piece in pieces),
            station=self.station[first.hand_station] if first.hand_station else -1,
            hand=first.hand_min if by_hand else 0,
            units=sum(piece.units for piece in pieces),
            rack=first.dry_rack,
            cab=NEVER if first.dry_cab is None else first.dry_cab,
            washers=frozenset() if by_hand else self._washers(pieces),
            early=max(self.instance.begun.minute, self.instance.members[member].release),
            stage=stage,
            since=since,
            drum=drum,
        )

    def _washers(self, pieces: list[Piece]) -> frozenset[int]:
        weight = sum(piece.weight for piece in pieces)
        return frozenset(
            w
            for w, washer in enumerate(self.instance.washers)
            if (run := washer.programmes.get(pieces[0].family))
            and run.temp <= pieces[0].max_temp
            and weight <= run.cap
            and len(pieces) <= (run.max_pieces or NEVER)
        )
