"""May this person see this address, or send something to it? Asked once, before every view."""

import logging
from collections.abc import Callable

from django.conf import settings
from django.contrib.auth.views import redirect_to_login
from django.core.exceptions import PermissionDenied
from django.http import Http404, HttpRequest, HttpResponse, HttpResponseNotAllowed
from django.urls import reverse

from sootline.tasks.rights import AT_A_DEVICE, GUARDED, Right, may
from sootline.web.entrance.at_device import ask_name
from sootline.web.entrance.device_cookie import device_of, renew
from sootline.web.entrance.door import keep_out
from sootline.web.entrance.step_up import ask_second_factor
from sootline.web.routes import ROUTES, Access
from sootline.wiring.people import StationDevice, User, people_policy

_LOG = logging.getLogger(__name__)
_SAFE = frozenset({"GET", "HEAD"})
_METHODS = _SAFE | {"POST"}
View = Callable[..., HttpResponse]


class AccessMiddleware:
    """Holds every request to the table of routes; what the table does not name is refused.

    A demonstration is open to whoever came in by its link: it shows an invented department.
    """

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self._get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer; nothing of it is to stay in anybody's cache, nor on a device left alone."""
        device = None if settings.DEMO else device_of(request)
        request.station_device = device  # type: ignore[attr-defined]
        response = self._get_response(request)
        response.headers.setdefault("Cache-Control", "no-store")
        if device is not None:
            _leave_alone(request, response, device)
        return response

    def process_view(
        self, request: HttpRequest, _view: View, _args: object, _kwargs: object
    ) -> HttpResponse | None:
        """Let a request through, or send it to the sign-in, or refuse it, or ask who it is.

        Raises:
            PermissionDenied: the person has not the right, or the route is nobody's.
            Http404: the page is about accounts, and a demonstration has none.
        """
        match = request.resolver_match
        route = (match.url_name if match else None) or ""
        access = ROUTES.get(route)
        if access is None:
            _LOG.error("a route is missing from the table", extra={"route": route})
            raise PermissionDenied
        methods = _METHODS if access.sends or _answers(request, access) else _SAFE
        if request.method not in methods:
            return HttpResponseNotAllowed(sorted(_METHODS if access.sends else _SAFE))
        if settings.DEMO and access.account:
            raise Http404
        if access.open:
            return None
        if settings.DEMO:
            return keep_out(request)
        device: StationDevice | None = request.station_device  # type: ignore[attr-defined]
        if request.user.is_authenticated:
            return _as_person(request, access, route)
        if device is not None and access.device:
            return _as_device(request, device, access, route)
        return redirect_to_login(request.get_full_path())


def _answers(request: HttpRequest, access: Access) -> bool:
    """Whether a request only brings a code to a page that is looked at."""
    return access.see in GUARDED and "_code" in request.POST


def _as_person(request: HttpRequest, access: Access, route: str) -> HttpResponse | None:
    rights = _rights(access, request)
    _check(_roles(request.user), rights, route)
    if access.whole and isinstance(request.user, User) and request.user.station:
        _LOG.warning("refused to an account of one station", extra={"route": route})
        raise PermissionDenied
    return ask_second_factor(request) if GUARDED & set(rights) else None


def _as_device(
    request: HttpRequest, device: StationDevice, access: Access, route: str
) -> HttpResponse | None:
    """Show a device what it may show; take an act from a person known by name and PIN."""
    if request.method != "POST":
        if access.see not in AT_A_DEVICE:
            raise PermissionDenied
        request.user = device  # type: ignore[assignment]
        return None
    rights = _rights(access, request)
    request.user = device  # type: ignore[assignment]
    person = ask_name(request, device, rights)
    if isinstance(person, HttpResponse):
        return person
    _check(tuple(person.roles), rights, route)
    request.user = person
    return None


def _leave_alone(request: HttpRequest, response: HttpResponse, device: StationDevice) -> None:
    """Close what is typed on a device after the idle time, and a person's own session too."""
    idle_s = int(people_policy().idle.total_seconds())
    if request.session.get("_auth_user_id"):
        request.session.set_expiry(idle_s)
    if response.headers.get("Content-Type", "").startswith("text/html"):
        response.headers.setdefault("Refresh", f"{idle_s}; url={reverse('front')}")
    if device.renew:
        renew(request, response)


def _roles(user: object) -> tuple[str, ...]:
    """Return the offices of an account; whoever is not signed in has none."""
    return tuple(getattr(user, "roles", ()))


def _rights(access: Access, request: HttpRequest) -> tuple[Right, ...]:
    asked = (access.see, access.send if request.method == "POST" else None)
    return tuple(right for right in asked if right is not None)


def _check(roles: tuple[str, ...], rights: tuple[Right, ...], route: str) -> None:
    for right in rights:
        if not may(roles, right):
            _LOG.warning("refused", extra={"route": route, "right": right.value})
            raise PermissionDenied


def can(user: object, right: Right) -> bool:
    """Whether somebody has a right, for what a page shows or leaves out."""
    if isinstance(user, StationDevice):
        return right in AT_A_DEVICE
    return settings.DEMO or may(_roles(user), right)
