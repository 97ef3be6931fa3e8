"""Whose desk does a request see: the demonstration's, or the record's?"""

from django.conf import settings

from sootline.core.basis import DeviceId, MemberId
from sootline.storage.devices import StationDevice
from sootline.storage.models import User
from sootline.tasks.desk import Desks
from sootline.wiring.demo_desk import demo_desks
from sootline.wiring.store_desk import StoreDesks


def desks_of(user: object) -> Desks:
    """Return where the desk of a user, or of a station device, is kept."""
    if settings.DEMO:
        return demo_desks()
    if isinstance(user, StationDevice):
        device = DeviceId(user.id)
        return StoreDesks(MemberId(user.id), user.station or None, device=device)
    assert isinstance(user, User)  # nobody else comes past the table of routes
    return StoreDesks(
        MemberId(user.member),
        user.station or None,
        established=user.established,
        device=user.device,
    )
