"""Which steps does a plan consist of? Whole minutes; every interval is half-open."""

from dataclasses import dataclass

from sootline.core.basis import ComponentId, MachineId, PlaceId

RACK = PlaceId("rack")


@dataclass(frozen=True, kw_only=True)
class Load:
    """One drum of one family: loaded, washed, unloaded; it may wait in the drum after washing.

    Args:
        load_start: from here the washer is held [min].
        prog_start: loading is done and the programme begins [min].
        unload_end: from here the washer is free again [min].
    """

    washer: MachineId
    family: str
    load_start: int
    prog_start: int
    prog_end: int
    unload_start: int
    unload_end: int
    pieces: tuple[ComponentId, ...]


@dataclass(frozen=True, kw_only=True)
class Task:
    """One helper prepares or inspects some pieces, one after the other."""

    pieces: tuple[ComponentId, ...]
    start: int
    end: int


@dataclass(frozen=True, kw_only=True)
class HandWash:
    """One helper washes one piece by hand at one place of a station."""

    station: PlaceId
    piece: ComponentId
    start: int
    end: int


@dataclass(frozen=True, kw_only=True)
class Drying:
    """One piece dries on the rack or in a cabinet; same cabinet and start is one cabinet run."""

    piece: ComponentId
    where: PlaceId
    start: int
    end: int
