"""What is in the wash room: washers, sinks, racks, cabinets, helpers, and their limits?

Limits are the department's local ones, in weight and in pieces: a drum's rating alone says little
about bulky gear.
"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import KindId, MachineId, MinuteSpan, PlaceId, Quantity
from sootline.core.gear.kinds import DryMethod


class Company(StrEnum):
    """Which goods a programme, a load or a drying place is for."""

    SHELLS = "shells"
    LINERS = "liners"
    OWN = "own"


@dataclass(frozen=True, kw_only=True)
class Programme:
    """One programme of a washer as it is set.

    Args:
        companies: the goods it is for; empty is any.
        bath_temp: the hottest bath it reaches; None is not known, and then not used.
        extraction: the hardest spin [G]; None is not known, and then not used.
        minutes: from start to end of the programme [min].
    """

    id: str
    companies: tuple[Company, ...] = ()
    bath_temp: Quantity | None = None
    extraction: Quantity | None = None
    minutes: MinuteSpan


@dataclass(frozen=True, kw_only=True)
class Washer:
    """One washer-extractor with its local limit.

    Args:
        limit: the most dry mass a load may have here; None is not known, and then not used.
        pieces: the most pieces a load may have here, where the department says so.
        front_loading: False refuses structural gear where the edition rules out top-loaders.
        free_from: minute of the plan from which it can be loaded [min].
        working: False when it is down.
    """

    id: MachineId
    limit: Quantity | None
    pieces: int | None = None
    front_loading: bool = True
    programmes: tuple[Programme, ...]
    free_from: int = 0
    working: bool = True


class SinkUse(StrEnum):
    """What else a sink is used for; food and hygiene sinks never see soiled gear."""

    GEAR = "gear"
    FOOD = "food"
    HYGIENE = "hygiene"


@dataclass(frozen=True, kw_only=True)
class Sink:
    """A sink or bench for hand cleaning.

    Args:
        bench: True for a bench (helmets, boots with a brush), False for a basin.
    """

    id: PlaceId
    use: SinkUse
    bench: bool = False


class Hanging(StrEnum):
    """What one drying place takes."""

    PIECE = "piece"
    SET = "set"


@dataclass(frozen=True, kw_only=True)
class DryingPlace:
    """A rack or cabinet.

    Args:
        method: RACK refills freely; CABINET is one run, closed until all in it are dry; HANG and
            FLAT are places elsewhere that are never short.
        places: how many it takes at a time.
        holds: whether a place takes one piece or one set's layer (coat and trousers together).
        kinds: the kinds it takes; empty is any.
        air_temp: the hottest air it reaches; None is unheated.
    """

    id: PlaceId
    method: DryMethod
    places: int
    holds: Hanging = Hanging.PIECE
    kinds: tuple[KindId, ...] = ()
    air_temp: Quantity | None = None


@dataclass(frozen=True, kw_only=True)
class DryingTime:
    """A row of the department's table of drying times.

    Args:
        place: where.
        kinds: for which kinds; empty is every kind not named in another row.
        minutes: how long [min], as an interval.
        measured: whether the department measured it here.
    """

    place: PlaceId
    kinds: tuple[KindId, ...] = ()
    minutes: MinuteSpan
    measured: bool = False


@dataclass(frozen=True, kw_only=True)
class WorkTime:
    """How long one kind takes by hand: to prepare, to clean by hand, to check and rebuild [min]."""

    kinds: tuple[KindId, ...] = ()
    prepare: int = 0
    hand: int = 0
    check: int = 0


@dataclass(frozen=True, kw_only=True)
class Shift:
    """How many helpers there are, from one minute of the plan to another [min]."""

    start: int
    end: int
    helpers: int


@dataclass(frozen=True, kw_only=True)
class WashRoom:
    """Everything the wash room has tonight.

    Args:
        load_min: a helper's minutes to load a drum.
        unload_min: a helper's minutes to empty it.
        between_min: minutes of flushing or wiping a drum between hazard classes.
        hazards_last: whether loads set apart by a hazard come after all others.
        shifts: helpers over time; empty is never short.
    """

    washers: tuple[Washer, ...] = ()
    sinks: tuple[Sink, ...] = ()
    drying: tuple[DryingPlace, ...] = ()
    drying_times: tuple[DryingTime, ...] = ()
    work_times: tuple[WorkTime, ...] = ()
    load_min: int = 10
    unload_min: int = 5
    between_min: int = 0
    hazards_last: bool = True
    shifts: tuple[Shift, ...] = ()
