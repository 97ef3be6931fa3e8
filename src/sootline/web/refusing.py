"""What does somebody see when a page cannot be drawn, or may not be seen?"""

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render

from sootline.core.basis import BadInputError


class FaultsMiddleware:
    """Shows what is wrong with the record instead of a page that cannot be drawn from it."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self._get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer as ever."""
        return self._get_response(request)

    def process_exception(self, request: HttpRequest, error: Exception) -> HttpResponse | None:
        """Show the faults of what was refused; anything else is our own mistake."""
        if not isinstance(error, BadInputError):
            return None
        return render(request, "frame/faults.html", {"faults": error.faults}, status=503)


def forbidden(request: HttpRequest, exception: object = None) -> HttpResponse:  # noqa: ARG001
    """Say that this is for others."""
    return render(request, "frame/forbidden.html", status=403)


def absent(request: HttpRequest, exception: object = None) -> HttpResponse:  # noqa: ARG001
    """Say that there is no such page."""
    return render(request, "frame/absent.html", status=404)
