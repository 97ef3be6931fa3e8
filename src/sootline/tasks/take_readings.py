"""What does the wash room know once somebody read something off, on paper or in the record?"""

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Any, assert_never, cast

from sootline.core.basis import BadInputError, Fault, MessageId, Quantity, UnreadableValueError
from sootline.core.drying import Fan, LoggedLoad, Readings, RoomAir, TakenDown, WeighedIn
from sootline.core.job.checks import check_job
from sootline.core.job.codec import decode, encode
from sootline.core.job.jobs import Job
from sootline.core.laundry.rooms import WashRoom
from sootline.core.ledger import Draft, EntryKind, ItemKind, item
from sootline.core.ledger.acts import Act
from sootline.core.machines import BathReading, CostSheet, Drum, LabResult, WeighedSpin
from sootline.tasks.ports import Register
from sootline.tasks.reading_deeds import Reading
from sootline.tasks.recording import Book

# Under which word each form of reading is written down.
READING_FORMS: Mapping[str, type[Any]] = MappingProxyType(
    {
        "air": RoomAir,
        "fan": Fan,
        "drum": Drum,
        "bath": BathReading,
        "spin": WeighedSpin,
        "laboratory": LabResult,
        "costs": CostSheet,
        "weighed-in": WeighedIn,
        "taken-down": TakenDown,
        "logged": LoggedLoad,
    }
)
_WORD_OF = {form: word for word, form in READING_FORMS.items()}


def with_reading(readings: Readings, reading: Reading) -> Readings:
    """Return the readings with one more.

    Raises:
        BadInputError: a batch weighed in twice, one taken down that does not hang, or weights
            that cannot be.
    """
    match reading:
        case RoomAir():
            after = replace(readings, air=reading)
        case CostSheet():
            after = replace(readings, costs=reading)
        case Fan():
            others = (one for one in readings.fans if one.place != reading.place)
            after = replace(readings, fans=(*others, reading))
        case WeighedIn():
            after = _hang(readings, reading)
        case TakenDown():
            after = _take_down(readings, reading)
        case LoggedLoad():
            after = replace(readings, logged=(*readings.logged, reading))
        case _:
            after = _with_machine(readings, reading)
    return after


def _with_machine(
    readings: Readings, reading: Drum | BathReading | WeighedSpin | LabResult
) -> Readings:
    match reading:
        case Drum():
            drums = (one for one in readings.drums if one.washer != reading.washer)
            return replace(readings, drums=(*drums, reading))
        case BathReading():
            named = (reading.washer, reading.programme)
            baths = (one for one in readings.baths if (one.washer, one.programme) != named)
            return replace(readings, baths=(*baths, reading))
        case WeighedSpin():
            return replace(readings, scales=(*readings.scales, reading))
        case LabResult():
            return replace(readings, laboratory=(*readings.laboratory, reading))
        case _:
            assert_never(reading)


def list_readings(readings: Readings) -> tuple[Reading, ...]:
    """List every reading by itself, as each is written down."""
    single = (one for one in (readings.air, readings.costs) if one is not None)
    return (
        *single,
        *readings.drums,
        *readings.baths,
        *readings.scales,
        *readings.fans,
        *readings.laboratory,
        *readings.logged,
        *readings.hanging,
    )


def take_reading(job: Job, reading: Reading) -> Job:
    """Return the job with one more reading.

    Raises:
        BadInputError: it names a washer or a place that is not there, or cannot be.
    """
    return check_job(replace(job, readings=with_reading(job.readings, reading)))


def write_reading(book: Book, act: Act, job: Job, reading: Reading) -> None:
    """Record a reading.

    Args:
        job: as the record has it now.

    Raises:
        BadInputError: it names a washer or a place that is not there, or cannot be.
    """
    draft = draft_reading(act, reading)
    if not book.answered(act, draft):
        take_reading(job, reading)
    book.ledger.append([draft])


def draft_reading(act: Act, reading: Reading) -> Draft:
    """Return the entry that holds a reading."""
    word = _WORD_OF[type(reading)]
    thing = item(ItemKind.READING, f"{word}-{act.idem}")
    # As text: figures with a fraction have no one way of being written in the record.
    said = {"form": word, "reading": encode(type(reading), reading, indent=None)}
    return act.entry(EntryKind.REGISTERED, thing, said)


def read_readings(register: Register, room: WashRoom) -> Readings:
    """Return the readings in the order they were written down.

    What a correction left without its other half (a batch taken down that was never hung) is
    none of them; nor is what was read at a washer or a place that is gone.

    Args:
        room: with the washers and places that are there.
    """
    readings = Readings()
    lives = sorted(register.things(ItemKind.READING), key=lambda one: one.last_seq)
    for life in lives:
        form = READING_FORMS[str(life.facts["form"])]
        reading = cast("Reading", decode(form, str(life.facts["reading"])))
        try:
            readings = with_reading(readings, reading)
        except BadInputError:
            continue
    washers = {washer.id for washer in room.washers}
    places = {place.id for place in room.drying}
    return replace(
        readings,
        drums=tuple(one for one in readings.drums if one.washer in washers),
        baths=tuple(one for one in readings.baths if one.washer in washers),
        scales=tuple(one for one in readings.scales if one.washer in washers),
        fans=tuple(one for one in readings.fans if one.place in places),
    )


def _hang(readings: Readings, batch: WeighedIn) -> Readings:
    if batch.id in [one.id for one in readings.hanging]:
        raise BadInputError([_fault("batch", "drying.log.hangs_already", id=batch.id)])
    return replace(readings, hanging=(*readings.hanging, batch))


def _take_down(readings: Readings, down: TakenDown) -> Readings:
    """Take a batch down; one that was weighed again is a load the model learns from."""
    batch = next((one for one in readings.hanging if one.id == down.id), None)
    if batch is None:
        raise BadInputError([_fault("batch", "drying.log.hangs_not", id=down.id)])
    left = tuple(one for one in readings.hanging if one.id != down.id)
    logged = readings.logged
    if down.end is not None:
        logged = (*logged, _logged(batch, down, down.end))
    return replace(readings, hanging=left, logged=logged)


def _logged(batch: WeighedIn, down: TakenDown, end: Quantity) -> LoggedLoad:
    minutes = round((down.at - batch.began).total_seconds() / 60)
    try:
        return LoggedLoad(
            place=batch.place,
            cloth=batch.cloth,
            dry=batch.dry,
            start=batch.start,
            end=end,
            lasted=Quantity.parse(f"{minutes} min"),
            air=batch.air,
            felt_dry_by=down.by if down.felt_dry else "",
        )
    except UnreadableValueError as error:
        fault = Fault(place="batch", message=error.message, values=error.values)
        raise BadInputError([fault]) from error


def _fault(place: str, message: str, **values: str) -> Fault:
    return Fault(place=place, message=MessageId(message), values=tuple(values.items()))
