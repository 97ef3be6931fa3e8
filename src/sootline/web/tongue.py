"""In which language and by which light does somebody read?"""

from enum import StrEnum

from django.http import HttpRequest

from sootline.words import languages

LANGUAGE_COOKIE = "language"
LIGHT_COOKIE = "light"


class Light(StrEnum):
    """How a page is lit; by default as the device wishes."""

    DEVICE = "device"
    DAY = "day"
    NIGHT = "night"


def language_of(request: HttpRequest) -> str:
    """Return the language somebody chose, or the first of the browser's that there is."""
    known = languages()
    wished = [request.COOKIES.get(LANGUAGE_COOKIE, "")]
    accepted = request.headers.get("Accept-Language", "")
    wished += [part.partition(";")[0].strip() for part in accepted.split(",")[:10]]
    for wish in wished:
        short = wish.partition("-")[0].lower()
        if short in known:
            return short
    return known[0]


def light_of(request: HttpRequest) -> Light:
    """Return the light somebody chose."""
    chosen = request.COOKIES.get(LIGHT_COOKIE, "")
    return Light(chosen) if chosen in set(Light) else Light.DEVICE
