"""Does anything come over a network that others can read? Only where that was switched on."""

import ipaddress
from collections.abc import Callable

from django.conf import settings
from django.http import HttpRequest, HttpResponse

_SAID = (
    "This address answers over https only. Whoever runs it can serve it with a TLS file, or switch "
    "plain http on.\n"
)


class PlainHttpMiddleware:
    """Refuses plain http from beyond this machine, whichever server stands in front."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self._get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer what comes by https, from this machine, or where plain http was switched on."""
        # With TLS on, the framework itself sends plain http on to https.
        if settings.TLS or settings.PLAIN_HTTP or request.is_secure() or _is_local(request):
            return self._get_response(request)
        return HttpResponse(_SAID, status=403, content_type="text/plain; charset=utf-8")


def _is_local(request: HttpRequest) -> bool:
    """Whether it comes from this machine itself, and not through a proxy from another."""
    if "HTTP_X_FORWARDED_FOR" in request.META:
        return False
    try:
        return ipaddress.ip_address(address_of(request)).is_loopback
    except ValueError:
        return False


def address_of(request: HttpRequest) -> str:
    """Return from which address a request comes, without its port."""
    given = str(request.META.get("REMOTE_ADDR", ""))
    host, colon, port = given.rpartition(":")
    if colon and port.isdigit() and (host.startswith("[") or ":" not in host):
        return host.strip("[]")
    return given
