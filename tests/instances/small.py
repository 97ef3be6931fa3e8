"""One washer, one member, one piece: the smallest instance, to be changed one fact at a time."""

from dataclasses import replace
from typing import Any

from sootline.core.basis import ComponentId, MachineId, MemberId, PlaceId
from sootline.core.washplan import Instance, Member, Piece, Programme, Washer

SHELL = Piece(
    id=ComponentId("shell"), member=MemberId("m1"), type="coat shell", size="M", weight=36,
    family="S", max_temp=40, prep=3, inspect=2, units=2, dry_rack=100, dry_cab=60,
)  # fmt: skip
GLOVES = Piece(
    id=ComponentId("gloves"), member=MemberId("m1"), type="gloves", size="M", weight=8,
    family="H", max_temp=30, prep=0, inspect=1, hand_station=PlaceId("sink"), hand_min=8, units=1,
    dry_rack=200,
)  # fmt: skip
WASHER = Washer(id=MachineId("w0"), programmes={"S": Programme(cap=100, min=60, temp=40)})


def piece(name: str, **facts: Any) -> Piece:  # noqa: ANN401 - any field
    """Make a shell under another name with some facts changed."""
    return replace(SHELL, id=ComponentId(name), **facts)


def small(**facts: Any) -> Instance:  # noqa: ANN401 - any field
    """Make the smallest instance with some facts changed."""
    plain: dict[str, Any] = {
        "name": "small",
        "members": (Member(id=MemberId("m1")),),
        "pieces": (SHELL,),
        "washers": (WASHER,),
        "load_min": 5,
        "unload_min": 5,
        "stations": {PlaceId("sink"): 1},
        "rack_units": 10,
        "helpers": ((0, 1_000_000, 1),),
    }
    return Instance(**plain | facts)
