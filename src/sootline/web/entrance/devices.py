"""Which devices of the station stay signed in, and who may act at them?"""

import logging

from django.contrib import messages
from django.contrib.auth import logout
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods, require_POST

from sootline.core.basis import BadInputError
from sootline.web.entrance.device_cookie import hand_out
from sootline.web.tongue import language_of
from sootline.wiring.people import (
    Device,
    User,
    enrol_device,
    find_account,
    list_accounts,
    list_devices,
    people_policy,
    revoke_device,
    set_pin,
)
from sootline.wiring.store import now
from sootline.words import say

_LOG = logging.getLogger(__name__)


@require_http_methods(["GET", "HEAD", "POST"])
def devices(request: HttpRequest) -> HttpResponse:
    """List devices, and enrol the one this page is open on.

    Whoever enrols it is signed out there: from then on it is the device, and nobody's account.
    """
    if request.method != "POST":
        return _page(request)
    user = request.user
    assert isinstance(user, User)
    given = [request.POST.get(name, "") for name in ("name", "place", "station")]
    # An officer of one station enrols devices for that station alone.
    station = user.station or given[2]
    try:
        device, token = enrol_device(given[0], given[1], station, by=user.member, now=now())
    except BadInputError as error:
        return _page(request, faults=error.faults, status=422)
    _LOG.warning("a station device was enrolled")
    logout(request)
    response = redirect("front")
    hand_out(response, device.pk, token)
    return response


@require_POST
def revoke(request: HttpRequest, device: str) -> HttpResponse:
    """Let a device count no more.

    Raises:
        Http404: there is none that counts, among those the account sees.
    """
    user = request.user
    assert isinstance(user, User)
    seen = {one.pk for one in _seen_by(user)}
    if device not in seen or not revoke_device(device, by=user.member, now=now()):
        raise Http404
    _LOG.warning("a station device was revoked")
    done = say("accounts.device.revoked", {"name": device}, lang=language_of(request))
    messages.success(request, done)
    return redirect("devices")


@require_POST
def first_pin(request: HttpRequest) -> HttpResponse:
    """Give somebody of the station a first PIN, which must be changed when it is first used."""
    user = request.user
    assert isinstance(user, User)
    try:
        person = find_account(request.POST.get("account", ""))
        if person not in _people_of(user):
            raise Http404
        pin = request.POST.get("pin", "")
        set_pin(person, pin, now(), least=people_policy().pin_digits, first=True)
    except BadInputError as error:
        return _page(request, faults=error.faults, status=422)
    done = say("accounts.pin.first_set", {"name": person.member}, lang=language_of(request))
    messages.success(request, done)
    return redirect("devices")


def _page(request: HttpRequest, *, faults: object = (), status: int = 200) -> HttpResponse:
    user = request.user
    assert isinstance(user, User)
    facts = {
        "devices": _seen_by(user),
        "people": _people_of(user),
        "least": people_policy().pin_digits,
        "typed": request.POST,
        "own_station": user.station,
        "faults": faults,
    }
    return render(request, "entrance/devices.html", facts, status=status)


def _seen_by(user: User) -> list[Device]:
    return [one for one in list_devices() if not user.station or one.station == user.station]


def _people_of(user: User) -> list[User]:
    found = [one for one in list_accounts() if one.is_active]
    return [one for one in found if not user.station or one.station == user.station]
