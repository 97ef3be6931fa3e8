"""The tables, by what they are for."""

from sootline.storage.models.accounts import Look, User
from sootline.storage.models.errands import ErrandRow
from sootline.storage.models.people import (
    Device,
    Guesses,
    Pin,
    RecoveryCodeRow,
    SecondFactor,
)
from sootline.storage.models.projections import ComponentRow, Link, Thing
from sootline.storage.models.record import Attachment, EntryRow, Installation, PayloadRow

__all__ = [
    "Attachment",
    "ComponentRow",
    "Device",
    "EntryRow",
    "ErrandRow",
    "Guesses",
    "Installation",
    "Link",
    "Look",
    "PayloadRow",
    "Pin",
    "RecoveryCodeRow",
    "SecondFactor",
    "Thing",
    "User",
]
