"""The tables, by what they are for."""

from sootline.storage.models.accounts import Look, User
from sootline.storage.models.projections import ComponentRow, Link, Thing
from sootline.storage.models.record import Attachment, EntryRow, Installation, PayloadRow

__all__ = [
    "Attachment",
    "ComponentRow",
    "EntryRow",
    "Installation",
    "Link",
    "Look",
    "PayloadRow",
    "Thing",
    "User",
]
