"""Who sits at the machine of a demonstration? Whoever opens the printed link; it opens once."""

import hashlib
import hmac
import os

from django.conf import settings
from django.core import signing
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_safe

_COOKIE = "door"
_LASTS_S = 12 * 3600


@require_safe
def come_in(request: HttpRequest, token: str) -> HttpResponse:
    """Open the door to whoever brings the link, and close it behind them."""
    if is_in(request):
        return redirect("front")
    brought = hashlib.sha256(token.encode()).hexdigest()
    if not settings.DEMO_DOOR or not hmac.compare_digest(brought, settings.DEMO_DOOR):
        return _closed(request)
    if not _first(brought):
        return _closed(request)
    response = redirect("front")
    response.set_cookie(
        _COOKIE, _signer().sign("in"), max_age=_LASTS_S, httponly=True, samesite="Lax"
    )
    return response


def keep_out(request: HttpRequest) -> HttpResponse | None:
    """Refuse whoever did not come in by the link; a demonstration without a door is open."""
    return None if not settings.DEMO_DOOR or is_in(request) else _closed(request)


def is_in(request: HttpRequest) -> bool:
    """Whether somebody came in by the link of this very run."""
    try:
        _signer().unsign(request.COOKIES.get(_COOKIE, ""), max_age=_LASTS_S)
    except signing.BadSignature:
        return False
    return True


def _signer() -> signing.TimestampSigner:
    return signing.TimestampSigner(salt=f"door.{settings.DEMO_DOOR}")


def _first(brought: str) -> bool:
    """Whether the link is opened for the first time, whichever process was asked."""
    used = settings.DATA_DIR / "doors"
    used.mkdir(mode=0o700, exist_ok=True)
    try:
        os.close(os.open(used / brought[:32], os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))
    except FileExistsError:
        return False
    return True


def _closed(request: HttpRequest) -> HttpResponse:
    return render(request, "entrance/closed.html", status=403)
