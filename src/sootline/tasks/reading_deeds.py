"""What can somebody read off and write down in the wash room? One reading at a time."""

from dataclasses import dataclass
from typing import TypeAlias

from sootline.core.drying import Fan, LoggedLoad, RoomAir, TakenDown, WeighedIn
from sootline.core.machines import BathReading, CostSheet, Drum, LabResult, WeighedSpin

Reading: TypeAlias = (
    "RoomAir | Fan | Drum | BathReading | WeighedSpin | LabResult | CostSheet | WeighedIn"
    " | TakenDown | LoggedLoad"
)


@dataclass(frozen=True, kw_only=True)
class ReadingTaken:
    """One reading of the wash room is written down; the newest of its kind counts.

    The air is one for the room, a fan one for its place, a drum one for its washer, a bath one for
    its programme; weighings and laboratory results stand beside each other.
    """

    reading: Reading
