"""Fourteen sets after a warehouse fire, one washer, a drying cabinet of six places.

Minute 0 is 04:20, so that the first drum, loaded in 10 minutes, turns from 04:30. Weights are in
0.01 lb. The cabinet's places refill freely, which makes them a rack of six units; one shell set or
one liner set per place. Hoods go with the liners and dry elsewhere, so they only add weight.
Helpers do not limit; checks and rebuild take no time. Set 14 has blood on the coat: its shell and
its liner are families of their own, and come last.
"""

from sootline.core.basis import ComponentId, MachineId, MemberId
from sootline.core.washplan import Instance, Member, Piece, Programme, Washer

SETS = range(1, 15)
FIRST_TURN = 10  # 04:30
SIX_IN_THE_EVENING = 13 * 60 + 30 + FIRST_TURN
RUN = Programme(cap=4200, min=60, temp=40)


def tarn_hollow() -> Instance:
    """Return the neutral instance."""
    return Instance(
        name="Tarn Hollow",
        units={"time": "min", "weight": "0.01 lb"},
        members=tuple(Member(id=MemberId(f"set {n:02}")) for n in SETS),
        pieces=tuple(piece for n in SETS for piece in (_shell(n), _liner(n))),
        washers=(
            Washer(
                id=MachineId("washer"),
                programmes=dict.fromkeys(("shell", "liner", "shell 14", "liner 14"), RUN),
            ),
        ),
        load_min=10,
        unload_min=0,
        stations={},
        rack_units=6,
        helpers=((0, 1_000_000, 100),),
        late_families=("shell 14", "liner 14"),
    )


def _shell(n: int) -> Piece:
    return _piece(n, "shell", weight=720, minutes=150)


def _liner(n: int) -> Piece:
    hood = 25
    return _piece(n, "liner", weight=500 + hood, minutes=210)


def _piece(n: int, kind: str, *, weight: int, minutes: int) -> Piece:
    return Piece(
        id=ComponentId(f"{kind} {n:02}"), member=MemberId(f"set {n:02}"), type=kind, size="",
        weight=weight, family=f"{kind} 14" if n == 14 else kind, max_temp=40, prep=0, inspect=0,
        units=1, dry_rack=minutes,
    )  # fmt: skip
