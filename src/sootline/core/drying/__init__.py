"""Moist air, the time that gear takes to dry in it as an interval, and when it has ended.

Whoever only carries readings from one place to another needs no psychrometrics: the package gives
out what is read, each question its own module.
"""

from sootline.core.drying.cloths import Cloth
from sootline.core.drying.readings import (
    Fan,
    LoggedLoad,
    Readings,
    RoomAir,
    TakenDown,
    WeighedIn,
)

__all__ = ["Cloth", "Fan", "LoggedLoad", "Readings", "RoomAir", "TakenDown", "WeighedIn"]
