"""Which station device does a request come from, by the cookie it holds?"""

from django.conf import settings
from django.http import HttpRequest, HttpResponse

from sootline.wiring.people import StationDevice, find_device
from sootline.wiring.store import now

# What browsers keep a cookie at the most; it is handed out anew each day it is used.
_AGE_S = 400 * 24 * 3600
_SALT = "station device"


def device_of(request: HttpRequest) -> StationDevice | None:
    """Return the enrolled device a request comes from, if it is one and was not revoked."""
    text = request.get_signed_cookie(settings.DEVICE_COOKIE_NAME, default="", salt=_SALT)
    identity, _, token = (text or "").partition(" ")
    return find_device(identity, token, now()) if token else None


def hand_out(response: HttpResponse, identity: str, token: str) -> None:
    """Put a device's cookie into a response."""
    response.set_signed_cookie(
        settings.DEVICE_COOKIE_NAME, f"{identity} {token}", salt=_SALT, max_age=_AGE_S,
        secure=settings.SESSION_COOKIE_SECURE, httponly=True, samesite="Lax",
    )  # fmt: skip


def renew(request: HttpRequest, response: HttpResponse) -> None:
    """Hand the cookie out anew, so that a device that is used stays signed in."""
    text = request.get_signed_cookie(settings.DEVICE_COOKIE_NAME, default="", salt=_SALT)
    identity, _, token = (text or "").partition(" ")
    hand_out(response, identity, token)
