"""Whose desk does a request see: the demonstration's, or the record's?"""

from django.conf import settings

from sootline.core.basis import MemberId
from sootline.storage.models import User
from sootline.tasks.desk import Desks
from sootline.wiring.demo_desk import demo_desks
from sootline.wiring.store_desk import StoreDesks


def desks_of(user: object) -> Desks:
    """Return where the desk of a user is kept."""
    if settings.DEMO:
        return demo_desks()
    assert isinstance(user, User)  # nobody else comes past the table of routes
    return StoreDesks(MemberId(user.member), user.station or None)
