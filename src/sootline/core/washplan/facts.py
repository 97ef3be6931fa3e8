"""Which people, pieces, machines and places does a wash plan deal with?

Times are whole minutes from the instance's minute 0, weights whole units of its unit of weight.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from sootline.core.basis import ComponentId, MachineId, MemberId, PlaceId
from sootline.core.washplan.steps import Drying, HandWash, Load, Task


@dataclass(frozen=True, kw_only=True)
class Member:
    """Somebody who waits for gear.

    Args:
        priority: weight of this member's readiness, at least 0.
        release: no step for this member's pieces starts before [min].
    """

    id: MemberId
    crew: str = ""
    priority: int = 1
    release: int = 0


@dataclass(frozen=True, kw_only=True)
class Piece:
    """One component (or a set that is handled as one) on its way through the wash room.

    Args:
        weight: dry weight, in the instance's unit of weight.
        family: what may share a drum; a programme of this name washes it.
        max_temp: highest programme temperature, on the programmes' own scale.
        prep: helper minutes before washing.
        inspect: helper minutes after drying.
        hand_station: where it is washed by hand; None means a washer.
        hand_min: helper and station minutes by hand.
        units: hanger units taken on the rack or in a cabinet.
        dry_rack: minutes to dry on the rack.
        dry_cab: minutes to dry in a cabinet; None means not allowed there.
    """

    id: ComponentId
    member: MemberId
    type: str
    size: str
    weight: int
    family: str
    max_temp: int
    prep: int
    inspect: int
    hand_station: PlaceId | None = None
    hand_min: int = 0
    units: int
    dry_rack: int
    dry_cab: int | None = None


@dataclass(frozen=True, kw_only=True)
class Programme:
    """How a washer washes one family.

    Args:
        cap: the most weight in one load.
        min: running minutes without loading and unloading.
        temp: temperature, on the pieces' own scale.
        max_pieces: the most pieces in one load, None where only weight limits.
    """

    cap: int
    min: int
    temp: int
    max_pieces: int | None = None


@dataclass(frozen=True, kw_only=True)
class Washer:
    """A machine and its programme per family; one without programmes is down for good."""

    id: MachineId
    programmes: Mapping[str, Programme]


@dataclass(frozen=True, kw_only=True)
class Cabinet:
    """A drying cabinet that holds so many hanger units and runs one closed run at a time."""

    id: PlaceId
    units: int


@dataclass(frozen=True, kw_only=True)
class Spare:
    """How many loan pieces of exactly this type and size stand ready from minute 0."""

    type: str
    size: str
    count: int


@dataclass(frozen=True, kw_only=True)
class Changeover:
    """Minutes a washer stands idle between a load of one family and the next of another."""

    before: str
    after: str
    minutes: int


@dataclass(frozen=True, kw_only=True)
class Begun:
    """What has happened already when planning starts in the middle.

    Args:
        minute: nothing else may start before it.
        loads: loads begun; where `unload_start` is at or after `minute` the unloading is open.
        prep, hand, dry, inspect: steps begun, kept to the minute.
        spares: pieces for which a loan piece is handed out.
    """

    minute: int = 0
    loads: tuple[Load, ...] = ()
    prep: tuple[Task, ...] = ()
    hand: tuple[HandWash, ...] = ()
    dry: tuple[Drying, ...] = ()
    inspect: tuple[Task, ...] = ()
    spares: tuple[ComponentId, ...] = ()
