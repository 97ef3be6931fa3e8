"""By which light and in which language does somebody want to read?"""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.http import require_POST, require_safe

from sootline.web.tongue import LANGUAGE_COOKIE, LIGHT_COOKIE, Light
from sootline.words import languages

_YEAR_S = 365 * 24 * 3600


@require_safe
def more(request: HttpRequest) -> HttpResponse:
    """List what is looked up beside the way of the gear."""
    return render(request, "frame/more.html")


@require_POST
def choose(request: HttpRequest) -> HttpResponse:
    """Keep what somebody chose on this device, and go back to where that was."""
    back = request.POST.get("back", "")
    here = url_has_allowed_host_and_scheme(back, {request.get_host()}, request.is_secure())
    response = redirect(back if here and back.startswith("/") else "front")
    light, language = request.POST.get("light"), request.POST.get("language")
    if light in set(Light):
        _keep(response, LIGHT_COOKIE, light)
    if language in languages():
        _keep(response, LANGUAGE_COOKIE, language)
    return response


def _keep(response: HttpResponse, cookie: str, value: str) -> None:
    response.set_cookie(cookie, value, max_age=_YEAR_S, samesite="Lax", httponly=True)
