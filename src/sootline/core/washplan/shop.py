"""The instance as plain numbers: what the dispatcher and the search work on.

Pieces that always go the same way (same member, family, minutes and state) are handled as one
item; the grain can be single pieces. Numbers stand for ids: positions in the instance's tuples.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import IntEnum

from sootline.core.basis import ComponentId, MachineId
from sootline.core.washplan.facts import Piece
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.steps import RACK, Load

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


@dataclass(frozen=True, kw_only=True)
class Shop:
    """One instance in numbers, at one grain.

    Args:
        machine: per washer and family number the programme's (cap, minutes, most pieces),
            None where the washer does not wash the family.
        idle: per pair of family numbers the changeover minutes.
        free: per washer when it becomes available, begun loads apart [min].
        open_load: per washer the begun load whose unloading is open, or -1.
        last, emptied: per washer the family of its last begun load, or HAND, and when it is out.
        stock: spares still in stock by type and size.
    """

    instance: Instance
    items: tuple[Item, ...]
    families: tuple[str, ...]
    machine: tuple[tuple[tuple[int, int, int] | None, ...], ...]
    idle: dict[tuple[int, int], int]
    late: frozenset[int]
    free: tuple[int, ...]
    open_load: tuple[int, ...]
    last: tuple[int, ...]
    emptied: tuple[int, ...]
    now: int
    priority: tuple[int, ...]
    release: tuple[int, ...]
    stations: tuple[int, ...]
    cabinets: tuple[int, ...]
    stock: dict[tuple[str, str], int]
    given: frozenset[ComponentId]

    def fits(self, washer: int, family: int, items: Iterable[int]) -> bool:
        """Say whether a washer may run these items of a family as one load."""
        programme = self.machine[washer][family]
        weight = count = 0
        for one in items:
            item = self.items[one]
            weight += item.weight
            count += item.count
            if washer not in item.washers:
                return False
        return programme is not None and weight <= programme[0] and count <= programme[2]

    def to_wash(self) -> list[int]:
        """List the items that still have to go through a washer."""
        return [
            i
            for i, item in enumerate(self.items)
            if item.family != HAND and item.stage <= Stage.PREPARED
        ]


def open_shop(instance: Instance, *, single: bool = False) -> Shop:
    """Turn an instance into numbers; `single` makes every piece an item of its own."""
    families = tuple(
        dict.fromkeys(piece.family for piece in instance.pieces if piece.hand_station is None)
    )
    number = {family: f for f, family in enumerate(families)}
    begun = instance.begun
    newest = [_newest_load(instance, washer.id) for washer in instance.washers]
    return Shop(
        instance=instance,
        items=_Grouping(instance, families).items(single=single),
        families=families,
        machine=tuple(
            tuple(
                (run.cap, run.min, run.max_pieces or NEVER)
                if (run := washer.programmes.get(family))
                else None
                for family in families
            )
            for washer in instance.washers
        ),
        idle={
            (number[one.before], number[one.after]): one.minutes
            for one in instance.changeover
            if one.before in number and one.after in number
        },
        late=frozenset(number[family] for family in instance.late_families if family in number),
        free=tuple(
            max(begun.minute, instance.washer_free.get(washer.id, 0)) for washer in instance.washers
        ),
        open_load=tuple(
            one[0] if one and one[1].unload_start >= begun.minute else -1 for one in newest
        ),
        last=tuple(number.get(one[1].family, HAND) if one else HAND for one in newest),
        emptied=tuple(one[1].unload_end if one else 0 for one in newest),
        now=begun.minute,
        priority=tuple(member.priority for member in instance.members),
        release=tuple(member.release for member in instance.members),
        stations=tuple(instance.stations.values()),
        cabinets=tuple(cabinet.units for cabinet in instance.cabinets),
        stock=_stock(instance),
        given=frozenset(instance.begun.spares),
    )


def _stock(instance: Instance) -> dict[tuple[str, str], int]:
    stock = {(spare.type, spare.size): spare.count for spare in instance.spares}
    given = set(instance.begun.spares)
    for piece in instance.pieces:
        if piece.id in given:
            stock[piece.type, piece.size] = stock.get((piece.type, piece.size), 0) - 1
    return stock


def _newest_load(instance: Instance, washer: MachineId) -> tuple[int, Load] | None:
    """Find the last begun load of a washer, with its number among all begun ones."""
    mine = [(i, load) for i, load in enumerate(instance.begun.loads) if load.washer == washer]
    return max(mine, key=lambda pair: pair[1].load_start, default=None)


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


def busy_after(shop: Shop) -> tuple[list[int], list[tuple[int, int]], list[tuple[int, int]]]:
    """List what begun steps still hold at the start.

    Returns:
        ends of helpers' tasks; (station number, end); (units on the rack, end).
    """
    begun, now, instance = shop.instance.begun, shop.now, shop.instance
    helpers = [task.end for task in (*begun.prep, *begun.inspect)]
    helpers += [step.end for step in begun.hand]
    for load in begun.loads:
        helpers.append(load.prog_start)
        if load.unload_start < now:
            helpers.append(load.unload_end)
    names = list(instance.stations)
    stations = [(names.index(step.station), step.end) for step in begun.hand if step.end > now]
    units = {piece.id: piece.units for piece in instance.pieces}
    rack = [
        (units[step.piece], step.end) for step in begun.dry if step.where == RACK and step.end > now
    ]
    return [end for end in helpers if end > now], stations, rack


def cabinet_free(shop: Shop) -> list[int]:
    """Say when each cabinet's begun runs are over [min]."""
    return [
        max([shop.now, *(one.end for one in shop.instance.begun.dry if one.where == cabinet.id)])
        for cabinet in shop.instance.cabinets
    ]
