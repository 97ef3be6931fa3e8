"""What had somebody typed before being asked who they are? It comes along, and nothing is lost."""

from dataclasses import dataclass

from django.http import HttpRequest
from django.utils.http import url_has_allowed_host_and_scheme

# Fields of the questions asked on the way begin with it, and are not carried on.
OURS = "_"
_NOT_CARRIED = ("csrfmiddlewaretoken",)


@dataclass(frozen=True, kw_only=True)
class Carried:
    """A request that waits for an answer.

    Args:
        path: where it goes.
        sends: whether it sends something; otherwise it only looks.
        fields: what was typed, by field, in its order.
    """

    path: str
    sends: bool
    fields: tuple[tuple[str, str], ...] = ()


def carry(request: HttpRequest, *, path: str | None = None) -> Carried:
    """Return what a request brought, to be sent again with the answer.

    Args:
        path: None is the request's own.
    """
    fields = tuple(
        (name, value)
        for name, values in request.POST.lists()
        if not name.startswith(OURS) and name not in _NOT_CARRIED
        for value in values
    )
    looked = request.method != "POST" or request.POST.get("_then") == "look"
    return Carried(path=path or request.get_full_path(), sends=not looked, fields=fields)


def local_path(request: HttpRequest, text: str, otherwise: str) -> str:
    """Return a path of this app, or the other one where it leads elsewhere."""
    here = url_has_allowed_host_and_scheme(text, {request.get_host()}, request.is_secure())
    return text if here and text.startswith("/") else otherwise
