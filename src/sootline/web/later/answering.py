"""How does a page's script learn where an answer leads, without following it there?"""

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse

HEADER = "X-Later"


class LaterMiddleware:
    """Tells a script where it is sent instead of sending it: what is said there is then read."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self._get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer; a redirection becomes a header where the page's own script asks."""
        response = self._get_response(request)
        if HEADER in request.headers and "Location" in response.headers:
            response.status_code = 204
            response.content = b""
            response.headers["X-Next"] = response.headers["Location"]
            del response.headers["Location"]
        return response
