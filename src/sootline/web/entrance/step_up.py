"""Has this person shown a second factor since signing in? If not, it is asked for, once."""

import logging

from django.http import HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render

from sootline.web.entrance.carrying import carry
from sootline.wiring.people import (
    Established,
    MustWaitError,
    User,
    check_code,
    factor_of,
)
from sootline.wiring.store import now

_LOG = logging.getLogger(__name__)
_SHOWN = "second-factor"


def has_shown(request: HttpRequest) -> bool:
    """Whether the second factor the account has now was shown in this session."""
    assert isinstance(request.user, User)
    factor = factor_of(request.user)
    return factor is not None and request.session.get(_SHOWN) == factor.salt


def note_shown(request: HttpRequest) -> None:
    """Keep that the second factor was shown; the session goes on under another name."""
    assert isinstance(request.user, User)
    factor = factor_of(request.user)
    assert factor is not None  # it was just shown
    request.session.cycle_key()
    request.session[_SHOWN] = factor.salt


def ask_second_factor(request: HttpRequest) -> HttpResponse | None:
    """Return the page that asks for the second factor, with what was typed; None if it was shown.

    The page sends what was typed to the same address, together with the code.
    """
    user = request.user
    assert isinstance(user, User)
    if has_shown(request):
        user.established = Established.SECOND_FACTOR
        return None
    if factor_of(user) is None:
        return _page(request, "entrance/factor_missing.html")
    typed = request.POST.get("_code")
    fault = None if typed is None else _fault_of(user, typed)
    if fault != "":
        return _page(request, "entrance/step_up.html", fault=fault or "")
    note_shown(request)
    user.established = Established.SECOND_FACTOR
    if request.POST.get("_then") == "look":
        return HttpResponseRedirect(request.get_full_path())
    return None


def _fault_of(user: User, typed: str) -> str:
    """Return what is wrong with a code; nothing where it is right."""
    try:
        right = check_code(user, typed, now())
    except MustWaitError:
        return "accounts.factor.waits"
    if not right:
        _LOG.warning("a second factor did not match")
    return "" if right else "accounts.factor.no_match"


def _page(request: HttpRequest, template: str, *, fault: str = "") -> HttpResponse:
    facts = {"carried": carry(request), "fault": fault}
    return render(request, template, facts, status=403)
