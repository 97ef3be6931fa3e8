"""Who is it that does something at a station device? Asked at every act: a name, then a PIN."""

import logging
from collections.abc import Iterator
from itertools import groupby

from django.contrib import messages
from django.core import signing
from django.core.exceptions import PermissionDenied
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render

from sootline.core.basis import BadInputError, DeviceId
from sootline.tasks.rights import Right, may
from sootline.web.answers import answers_of
from sootline.web.entrance.carrying import carry
from sootline.web.tongue import language_of
from sootline.wiring.people import (
    Established,
    MustWaitError,
    StationDevice,
    User,
    is_first,
    is_pin,
    people_at,
    people_policy,
    set_pin,
)
from sootline.wiring.store import now
from sootline.words import say

_LOG = logging.getLogger(__name__)
_BEGUN = signing.TimestampSigner(salt="begun at a station device")


def ask_name(
    request: HttpRequest, device: StationDevice, rights: tuple[Right, ...]
) -> HttpResponse | User:
    """Return whoever acts, known by name and PIN, or the page that asks for the next of the two.

    What was typed comes along on every page; after the policy's idle time it is closed.

    Args:
        rights: what the act takes; only those who have it are offered.

    Raises:
        PermissionDenied: nobody there may do it.
    """
    people = [one for one in people_at(device) if all(may(one.roles, right) for right in rights)]
    if not people:
        _LOG.warning("nobody at this device may do that")
        raise PermissionDenied
    begun = request.POST.get("_begun")
    if begun is None:
        return _tiles(request, people, _BEGUN.sign(device.id))
    if not _is_open(begun, device):
        messages.info(request, say("accounts.device.closed", lang=language_of(request)))
        return redirect("front")
    chosen = next((one for one in people if str(one.pk) == request.POST.get("_name")), None)
    if chosen is None:
        return _tiles(request, people, begun)
    return _ask_pin(request, device, chosen, begun)


def _ask_pin(
    request: HttpRequest, device: StationDevice, person: User, begun: str
) -> HttpResponse | User:
    typed = request.POST.get("_pin", "") + request.POST.get("_digit", "")[:1]
    if "_wipe" in request.POST:
        typed = ""
    if "_go" not in request.POST:
        return _pad(request, person, begun, typed)
    try:
        if not is_pin(person, typed, now()):
            _LOG.warning("a PIN did not match")
            return _pad(request, person, begun, fault="accounts.pin.no_match", status=403)
    except MustWaitError:
        return _pad(request, person, begun, fault="accounts.pin.waits", status=429)
    if is_first(person):
        refused = _change(request, person, begun, typed)
        if refused is not None:
            return refused
    person.established = Established.PIN
    person.device = DeviceId(device.id)
    # A device shows one station at the most, whoever stands before it.
    person.station = person.station or device.station
    return person


def _change(request: HttpRequest, person: User, begun: str, typed: str) -> HttpResponse | None:
    """Let the person choose an own PIN in place of the first one; None once that is done."""
    fresh, again = request.POST.get("_new"), request.POST.get("_again")
    facts: dict[str, object] = {"person": person, "begun": begun, "first": typed,
                                "carried": carry(request)}  # fmt: skip
    if fresh is None:
        return render(request, "entrance/own_pin.html", facts, status=403)
    if fresh != again:
        return render(
            request, "entrance/own_pin.html", {**facts, "fault": "accounts.pin.differ"}, status=422
        )
    try:
        set_pin(person, fresh, now(), least=people_policy().pin_digits)
    except BadInputError as error:
        return render(
            request, "entrance/own_pin.html", {**facts, "faults": error.faults}, status=422
        )
    return None


def _tiles(request: HttpRequest, people: list[User], begun: str) -> HttpResponse:
    facts = {"crews": list(_by_crew(request, people)), "begun": begun, "carried": carry(request)}
    return render(request, "entrance/names.html", facts, status=403)


def _pad(
    request: HttpRequest, person: User, begun: str, typed: str = "", *, fault: str = "",
    status: int = 403,
) -> HttpResponse:  # fmt: skip
    facts = {"person": person, "begun": begun, "typed": typed, "fault": fault,
             "digits": [*"123456789"], "carried": carry(request)}  # fmt: skip
    return render(request, "entrance/pin.html", facts, status=status)


def _by_crew(request: HttpRequest, people: list[User]) -> Iterator[tuple[str, list[User]]]:
    """Group people by crew, in the order of the roster; whoever is on none comes last."""
    job = answers_of(request).job
    places = {str(member.id): at for at, member in enumerate(job.members)}
    crews = {str(member.id): member.crew for member in job.members}
    ranked = sorted(people, key=lambda one: (places.get(one.member, len(places)), one.member))
    for crew, some in groupby(ranked, key=lambda one: crews.get(one.member, "")):
        yield crew, list(some)


def _is_open(begun: str, device: StationDevice) -> bool:
    try:
        return _BEGUN.unsign(begun, max_age=people_policy().idle) == device.id
    except signing.BadSignature:
        return False
