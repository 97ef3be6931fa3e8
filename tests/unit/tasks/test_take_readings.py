"""Whether readings of the wash room are kept one by one, on paper and in the record."""

import datetime as dt
import json
from typing import cast

import pytest
from tests.unit.drying.drying_cases import room

from sootline.core.basis import (
    BadInputError,
    DateSpan,
    DeviceId,
    MachineId,
    MemberId,
    PlaceId,
    UnreadableValueError,
    quantity,
)
from sootline.core.drying import Cloth, Fan, LoggedLoad, Readings, TakenDown, WeighedIn
from sootline.core.gear.kinds import DryMethod
from sootline.core.laundry.rooms import DryingPlace, Washer, WashRoom
from sootline.core.ledger import ClockSource, Established, ItemKind, Occurred
from sootline.core.ledger.acts import Act
from sootline.core.ledger.things import ThingLife
from sootline.core.machines import BathReading, CostSheet, Drum, LabResult, WeighedSpin
from sootline.tasks.ports import Register
from sootline.tasks.reading_deeds import Reading
from sootline.tasks.take_readings import (
    draft_reading,
    list_readings,
    read_readings,
    with_reading,
)

HUNG = dt.datetime(2026, 3, 11, 22, 0, tzinfo=dt.UTC)
ACT = Act(
    idem="x", occurred=Occurred.at(HUNG, ClockSource.SERVER), device=DeviceId("d"),
    actor=MemberId("228"), established=Established.SIGNED_IN,
)  # fmt: skip
CABINET, RACK = PlaceId("cabinet"), PlaceId("rack")
DRUM, OTHER = MachineId("drum 1"), MachineId("drum 2")


def weighed_in(dry: str = "20 lb", wet: str = "31 lb", name: str = "a") -> WeighedIn:
    """Hang a batch of shells."""
    return WeighedIn(
        id=name, place=CABINET, cloth=Cloth.SHELL, dry=quantity(dry), start=quantity(wet),
        began=HUNG, air=room(),
    )  # fmt: skip


def down(end: str | None = "20.4 lb", hours: float = 4, name: str = "a", **more: bool) -> TakenDown:
    """Take it down some hours later."""
    at = HUNG + dt.timedelta(hours=hours)
    weight = None if end is None else quantity(end)
    return TakenDown(id=name, at=at, by="228", end=weight, **more)


def fan(place: PlaceId, flow: str) -> Fan:
    """Read a fan."""
    return Fan(place=place, flow=quantity(flow))


def bath(washer: MachineId, programme: str, temp: str) -> BathReading:
    """Read a bath."""
    return BathReading(washer=washer, programme=programme, bath=quantity(temp))


def drum(washer: MachineId, across: str) -> Drum:
    """Measure a drum."""
    return Drum(washer=washer, diameter=quantity(across))


def spin() -> WeighedSpin:
    """Weigh a load dry and after the spin."""
    return WeighedSpin(washer=DRUM, dry=quantity("30 lb"), wet=quantity("47 lb"),
                       scale_error=quantity("0.2 lb"))  # fmt: skip


def result() -> LabResult:
    """Take what a laboratory reported."""
    return LabResult(on=DateSpan.parse("2026-02-02"), by="a laboratory", text="kit 12")


def prices() -> CostSheet:
    """Write prices down."""
    return CostSheet(dated=DateSpan.parse("2026-02-01"), currency="$", items=(), sets=4)


def kept(*given: Reading) -> Readings:
    """Keep readings one after the other."""
    readings = Readings()
    for one in given:
        readings = with_reading(readings, one)
    return readings


def test_the_newest_reading_of_a_thing_counts() -> None:
    """Of the air, a place's fan, a washer's drum, a programme's bath, the prices."""
    newest = (
        room("20 °C"), prices(), drum(OTHER, "30 in"), drum(DRUM, "42 in"),
        bath(DRUM, "2", "98 °F"), bath(OTHER, "1", "97 °F"), bath(DRUM, "1", "99 °F"),
        fan(RACK, "900 cfm"), fan(CABINET, "700 cfm"),
    )  # fmt: skip
    older = (room("25 °C"), prices(), drum(DRUM, "40 in"), bath(DRUM, "1", "120 °F"),
             fan(CABINET, "1 cfm"))  # fmt: skip
    readings = kept(*older, *newest)

    assert list_readings(readings) == newest


def test_weighings_and_results_stand_beside_each_other() -> None:
    """Two of each are two of each."""
    log = LoggedLoad(
        place=RACK, cloth=Cloth.LINER, dry=quantity("10 lb"), start=quantity("16 lb"),
        end=quantity("10.2 lb"), lasted=quantity("5 h"), air=room(),
    )  # fmt: skip
    readings = kept(spin(), result(), log, weighed_in(), spin(), result(), log)

    assert (len(readings.scales), len(readings.laboratory), len(readings.logged)) == (2, 2, 2)
    assert len(list_readings(readings)) == 7


def test_a_batch_weighed_out_is_a_logged_load() -> None:
    """Four hours from the one weighing to the other, in the air as it was hung."""
    readings = kept(weighed_in(), down(felt_dry=True))
    (load,) = readings.logged

    assert not readings.hanging
    assert (load.lasted, load.felt_dry_by) == (quantity("240 min"), "228")
    assert load.air == room()


def test_a_batch_only_felt_dry_is_down_and_no_load() -> None:
    """Without a second weight the model learns nothing; nobody's hand is named where none felt."""
    assert kept(weighed_in(), down(None, felt_dry=True)) == Readings()
    assert kept(weighed_in(), down()).logged[0].felt_dry_by == ""


@pytest.mark.parametrize(
    ("given", "message"),
    [
        ((weighed_in(), weighed_in()), "drying.log.hangs_already"),
        ((down(),), "drying.log.hangs_not"),
        ((weighed_in(), down("32 lb")), "drying.log.weights"),
        ((weighed_in(), down(hours=0)), "drying.log.lasted"),
    ],
)
def test_what_cannot_be_is_refused(given: tuple[Reading, ...], message: str) -> None:
    """Hung twice, taken down without hanging, heavier than when hung, or at once."""
    with pytest.raises(BadInputError) as refused:
        kept(*given)

    assert refused.value.faults[0].message == message


@pytest.mark.parametrize(
    ("dry", "wet", "message"),
    [
        ("20 lb", "20 lb", "lighter"),
        ("31 lb", "20 lb", "lighter"),
        ("0 lb", "20 lb", "lighter"),
        ("20 kg", "31 lb", "lighter"),
        ("20 lb", "31 kg", "soaked"),
    ],
)
def test_weights_in_the_other_unit_are_asked_about(dry: str, wet: str, message: str) -> None:
    """Wet no heavier than dry, or heavier than dripping gear is."""
    with pytest.raises(UnreadableValueError) as asked:
        weighed_in(dry, wet)

    assert asked.value.message == f"drying.log.{message}"


def life(seq: int, reading: Reading) -> ThingLife:
    """Make what the record holds of one reading."""
    draft = draft_reading(ACT, reading)
    facts = json.loads(draft.payload)
    return ThingLife(item=draft.item, facts=facts, registered=True, last_seq=seq)


class Things:
    """A record that holds these lives and nothing else."""

    def __init__(self, *lives: ThingLife) -> None:
        self._lives = lives

    def things(self, kind: ItemKind) -> tuple[ThingLife, ...]:
        """Return them when readings are asked for."""
        return self._lives if kind is ItemKind.READING else ()


def test_the_record_gives_readings_back_in_their_order() -> None:
    """Whatever order they come in; what is read at a place or washer that is gone is left out."""
    room_now = WashRoom(
        washers=(Washer(id=DRUM, limit=None, programmes=()),),
        drying=(DryingPlace(id=CABINET, method=DryMethod.CABINET, places=4),),
    )
    record = Things(
        life(3, down()), life(1, weighed_in()), life(2, fan(CABINET, "700 cfm")),
        life(4, fan(RACK, "900 cfm")), life(5, drum(OTHER, "30 in")), life(6, spin()),
        life(7, bath(OTHER, "1", "99 °F")),
    )  # fmt: skip
    readings = read_readings(cast("Register", record), room_now)

    assert list_readings(readings) == (spin(), fan(CABINET, "700 cfm"), *readings.logged)
    assert len(readings.logged) == 1


def test_half_of_a_withdrawn_weighing_is_none() -> None:
    """Taken down, but the hanging was withdrawn: nothing is learned from it."""
    record = Things(life(1, down()), life(2, prices()))
    readings = read_readings(cast("Register", record), WashRoom())

    assert readings == Readings(costs=prices())


def test_nothing_comes_down_without_a_weight_or_a_hand() -> None:
    """Never by the clock, and never by nobody."""
    with pytest.raises(UnreadableValueError):
        down(None)
    with pytest.raises(UnreadableValueError):
        TakenDown(id="a", at=HUNG, by=" ", felt_dry=True)
