"""What can somebody read off and write down in the wash room? One reading at a time."""

from dataclasses import dataclass
from typing import TypeAlias

from sootline.core.drying import Fan, RoomAir, TakenDown, WeighedIn
from sootline.core.machines import BathReading, CostSheet, LabResult

Reading: TypeAlias = "RoomAir | Fan | BathReading | LabResult | CostSheet | WeighedIn | TakenDown"


@dataclass(frozen=True, kw_only=True)
class ReadingTaken:
    """One reading of the wash room is written down; the newest of its kind counts.

    The air is one for the room, a fan one for its place, a bath one for its programme; laboratory
    results and weighed batches stand beside each other.
    """

    reading: Reading
