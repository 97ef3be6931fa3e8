"""An instance that cannot be is refused whole, with every fault in its place."""

from typing import Any

import pytest
from tests.instances.small import GLOVES, SHELL, WASHER, piece, small

from sootline.core.basis import BadInputError, ComponentId, MachineId, MemberId, PlaceId
from sootline.core.washplan import (
    Begun,
    Cabinet,
    Changeover,
    Drying,
    Load,
    Member,
    Programme,
    Spare,
    Task,
    Washer,
)

NOBODY = MemberId("nobody")
STRAY = ComponentId("stray")


def _cap(**facts: int) -> tuple[Washer, ...]:
    run = {"cap": 100, "min": 60, "temp": 40, **facts}
    return (Washer(id=MachineId("w0"), programmes={"S": Programme(**run)}),)


CASES: list[tuple[dict[str, Any], str, str]] = [
    ({"members": (Member(id=MemberId("m1")),) * 2}, "members", "twice"),
    ({"pieces": (SHELL, SHELL)}, "pieces", "twice"),
    ({"washers": (WASHER, WASHER)}, "washers", "twice"),
    ({"cabinets": (Cabinet(id=PlaceId("rack"), units=3),)}, "cabinets", "twice"),
    ({"spares": (Spare(type="hood", size="M", count=1),) * 2}, "spares", "twice"),
    ({"pieces": (piece("a", member=NOBODY),)}, "pieces[0].member", "unknown"),
    ({"pieces": (piece("a", weight=101),)}, "pieces[0].weight", "too_heavy"),
    ({"pieces": (piece("a", family="X"),)}, "pieces[0].family", "no_programme"),
    ({"pieces": (piece("a", max_temp=30),)}, "pieces[0].max_temp", "too_hot"),
    ({"pieces": (piece("a", units=11),)}, "pieces[0].units", "no_place"),
    ({"pieces": (GLOVES,), "stations": {}}, "pieces[0].hand_station", "unknown"),
    ({"pieces": (piece("a", prep=-1),)}, "pieces[0].prep", "amount"),
    ({"pieces": (piece("a", dry_cab=-1),)}, "pieces[0].dry_cab", "amount"),
    ({"load_min": -1}, "load_min", "amount"),
    ({"rack_units": 10**7}, "rack_units", "amount"),
    ({"stations": {PlaceId("sink"): -1}}, "stations.sink", "amount"),
    ({"members": (Member(id=MemberId("m1"), priority=-1),)}, "members[0].priority", "amount"),
    ({"members": (Member(id=MemberId("m1"), release=-1),)}, "members[0].release", "amount"),
    ({"washers": _cap(min=0)}, "washers[0].programmes.S.min", "amount"),
    ({"washers": _cap(max_pieces=0)}, "washers[0].programmes.S.max_pieces", "amount"),
    ({"cabinets": (Cabinet(id=PlaceId("d"), units=-1),)}, "cabinets[0].units", "amount"),
    ({"spares": (Spare(type="a", size="M", count=-1),)}, "spares[0].count", "amount"),
    ({"changeover": (Changeover(before="S", after="L", minutes=-1),)}, "changeover[0].minutes",
     "amount"),
    ({"washer_free": {MachineId("w0"): -1}}, "washer_free.w0", "amount"),
    ({"washer_free": {MachineId("w9"): 1}}, "washer_free", "unknown"),
    ({"helpers": ((0, 0, 1), (5, 9, 1))}, "helpers[0]", "shift"),
    ({"helpers": ((0, 9, 1), (5, 12, 1))}, "helpers[1]", "shift"),
    ({"helpers": ()}, "helpers", "nobody"),
    ({"begun": Begun(spares=(STRAY,))}, "begun.spares", "unknown"),
    ({"begun": Begun(prep=(Task(pieces=(STRAY,), start=0, end=1),))}, "begun.prep", "unknown"),
    ({"begun": Begun(dry=(Drying(piece=SHELL.id, where=PlaceId("x"), start=0, end=1),))},
     "begun.dry", "unknown"),
]  # fmt: skip


@pytest.mark.parametrize(("facts", "place", "message"), CASES)
def test_a_fault_is_named_in_its_place(facts: dict[str, Any], place: str, message: str) -> None:
    """Each impossible fact gives its own message at its own place."""
    with pytest.raises(BadInputError) as refused:
        small(**facts)

    assert (place, f"washplan.{message}") in [(f.place, f.message) for f in refused.value.faults]


def test_all_faults_are_listed_at_once() -> None:
    """Two wrong pieces give two faults, with value and limit."""
    with pytest.raises(BadInputError) as refused:
        small(pieces=(piece("a", weight=101), piece("b", weight=102)))

    values = [dict(fault.values) for fault in refused.value.faults]
    assert values == [{"value": "101", "limit": "100"}, {"value": "102", "limit": "100"}]


def test_a_piece_in_a_begun_load_needs_no_washer_any_more() -> None:
    """What is already turning is not refused because its washer is down for good."""
    load = Load(
        washer=MachineId("w0"), family="S", load_start=0, prog_start=5, prog_end=65,
        unload_start=65, unload_end=70, pieces=(SHELL.id,),
    )  # fmt: skip
    instance = small(
        washers=(Washer(id=MachineId("w0"), programmes={}),), begun=Begun(minute=30, loads=(load,))
    )

    assert instance.washers_for(SHELL) == ()


def test_an_endless_list_is_refused_before_it_is_looked_at() -> None:
    """More than 5,000 pieces give one fault, whatever else is wrong with them."""
    with pytest.raises(BadInputError) as refused:
        small(pieces=(piece("a", weight=-1),) * 5001)

    assert [fault.message for fault in refused.value.faults] == ["washplan.too_many"]


def test_washers_for_a_piece_are_those_that_suit_it() -> None:
    """Family, weight and temperature decide."""
    small_drum = Washer(id=MachineId("w1"), programmes={"S": Programme(cap=20, min=60, temp=40)})
    hot = Washer(id=MachineId("w2"), programmes={"S": Programme(cap=200, min=60, temp=60)})
    instance = small(washers=(WASHER, small_drum, hot))

    assert instance.washers_for(SHELL) == (WASHER,)
