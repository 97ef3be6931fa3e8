"""Whoever sees what a person was exposed to: it is kept that they did, before they do."""

from collections.abc import Iterable

from django.conf import settings
from django.http import HttpRequest

from sootline.core.basis import MemberId
from sootline.web.reports import actor_of
from sootline.wiring.people import StationDevice, looks


def note_looks(request: HttpRequest, members: Iterable[str | None], what: str) -> None:
    """Keep who looks at whose data; a demonstration shows nobody's.

    Args:
        members: whose; None and empty are nobody's.
        what: on which screen ("call", "person").
    """
    if settings.DEMO:
        return
    user = request.user
    actor = user.id if isinstance(user, StationDevice) else actor_of(request)
    seen = [MemberId(one) for one in members if one]
    looks().note(MemberId(actor), list(dict.fromkeys(seen)), what)
