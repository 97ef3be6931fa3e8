"""May this person see this address, or send something to it? Asked once, before every view."""

import logging
from collections.abc import Callable

from django.conf import settings
from django.contrib.auth.views import redirect_to_login
from django.core.exceptions import PermissionDenied
from django.http import HttpRequest, HttpResponse, HttpResponseNotAllowed

from sootline.tasks.rights import Right, may
from sootline.web.routes import ROUTES, Access

_LOG = logging.getLogger(__name__)
_SAFE = frozenset({"GET", "HEAD"})
_METHODS = _SAFE | {"POST"}
View = Callable[..., HttpResponse]


class AccessMiddleware:
    """Holds every request to the table of routes; what the table does not name is refused.

    A demonstration is open to whoever sits at the machine: it shows an invented department.
    """

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self._get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer; nothing of it is to stay in anybody's cache."""
        response = self._get_response(request)
        response.headers.setdefault("Cache-Control", "no-store")
        return response

    def process_view(
        self, request: HttpRequest, _view: View, _args: object, _kwargs: object
    ) -> HttpResponse | None:
        """Let a request through, or send it to the sign-in, or refuse it.

        Raises:
            PermissionDenied: the person has not the right, or the route is nobody's.
        """
        match = request.resolver_match
        route = (match.url_name if match else None) or ""
        access = ROUTES.get(route)
        if access is None:
            _LOG.error("a route is missing from the table", extra={"route": route})
            raise PermissionDenied
        if request.method not in (_METHODS if access.sends else _SAFE):
            return HttpResponseNotAllowed(sorted(_METHODS if access.sends else _SAFE))
        if access.open or settings.DEMO:
            return None
        if not request.user.is_authenticated:
            return redirect_to_login(request.get_full_path())
        _check(_roles(request.user), access, route, sending=request.method == "POST")
        return None


def _roles(user: object) -> tuple[str, ...]:
    """Return the offices of an account; whoever is not signed in has none."""
    return tuple(getattr(user, "roles", ()))


def _check(roles: tuple[str, ...], access: Access, route: str, *, sending: bool) -> None:
    rights = [access.see, access.send if sending else None]
    for right in filter(None, rights):
        if not may(roles, right):
            _LOG.warning("refused", extra={"route": route, "right": right.value})
            raise PermissionDenied


def can(user: object, right: Right) -> bool:
    """Whether somebody has a right, for what a page shows or leaves out."""
    return settings.DEMO or may(_roles(user), right)
