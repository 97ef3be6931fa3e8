"""How does a person set up an authenticator, and go on with what waited for it?"""

import re

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils.safestring import mark_safe
from django.views.decorators.http import require_http_methods

from sootline.paper.codes import qr_code
from sootline.tasks.second_factor import RecoveryCode, address_of, shown_secret
from sootline.web.entrance.carrying import carry, local_path
from sootline.web.entrance.step_up import ask_second_factor, note_shown
from sootline.wiring.people import (
    MustWaitError,
    User,
    count_guess,
    draw_salt,
    factor_of,
    forget_guesses,
    secret_of,
    set_up,
)
from sootline.wiring.store import now

_SALT = "second-factor-salt"
_ISSUER = "Sootline"
_SIZE = re.compile(r'width="(\d+)" height="\d+"')


@require_http_methods(["GET", "HEAD", "POST"])
def second_factor(request: HttpRequest) -> HttpResponse:
    """Show a new secret, take in the first code it makes, and show the recovery codes once.

    Whoever has one already shows that first. The password is asked for again: a screen somebody
    left must not become another's.
    """
    user = request.user
    assert isinstance(user, User)
    if factor_of(user) is not None:
        asked = ask_second_factor(request)
        if asked is not None:
            return asked
    code = request.POST.get("_new_code")
    if code is None or _SALT not in request.session:
        request.session[_SALT] = draw_salt()
        return _page(request, fault="" if code is None else "accounts.factor.began_anew")
    return _take(request, user, code)


def _take(request: HttpRequest, user: User, code: str) -> HttpResponse:
    codes: tuple[RecoveryCode, ...] = ()
    try:
        if _is_password(user, request.POST.get("_password", "")):
            codes = set_up(user, request.session[_SALT], code, now())
            fault = "" if codes else "accounts.factor.no_match"
        else:
            fault = "accounts.factor.password"
    except MustWaitError:
        fault = "accounts.factor.waits"
    if fault:
        return _page(request, fault=fault)
    del request.session[_SALT]
    note_shown(request)
    facts = {"codes": codes, "carried": _waiting(request)}
    return render(request, "entrance/recovery_codes.html", facts)


def _is_password(user: User, typed: str) -> bool:
    """Whether it is the account's password; guesses are counted.

    Raises:
        MustWaitError: too many wrong guesses in a row.
    """
    subject = f"password:{user.pk}"
    count_guess(subject, now())
    right = user.check_password(typed)
    if right:
        forget_guesses(subject)
    return right


def _page(request: HttpRequest, *, fault: str = "") -> HttpResponse:
    user = request.user
    assert isinstance(user, User)
    secret = secret_of(request.session[_SALT])
    picture = _SIZE.sub(r'viewBox="0 0 \1 \1"', qr_code(address_of(secret, user.name, _ISSUER)))
    facts = {
        "picture": mark_safe(picture),  # noqa: S308  # our own drawing
        "secret": shown_secret(secret),
        "fault": fault,
        "carried": _waiting(request),
    }
    return render(request, "entrance/set_up.html", facts, status=422 if fault else 200)


def _waiting(request: HttpRequest) -> object:
    """Return what waits for the second factor: an act, a page, or the person's own account."""
    back = local_path(request, request.POST.get("_back", ""), "")
    return carry(request, path=back) if back else None
