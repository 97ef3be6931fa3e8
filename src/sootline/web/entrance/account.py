"""One's own account: second factor, PIN, and an end to every session."""

from django.contrib import messages
from django.contrib.auth import logout
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_POST, require_safe

from sootline.core.basis import BadInputError
from sootline.tasks.rights import Right
from sootline.web.access import can
from sootline.web.tongue import language_of
from sootline.wiring.people import (
    MustWaitError,
    User,
    codes_left,
    count_guess,
    end_sessions,
    factor_of,
    forget_guesses,
    people_policy,
    set_pin,
)
from sootline.wiring.store import now
from sootline.words import say


@require_safe
def account(request: HttpRequest) -> HttpResponse:
    """Show how one is known, and what can be changed about it."""
    return _page(request)


@require_POST
def account_do(request: HttpRequest, deed: str) -> HttpResponse:
    """Set one's own PIN, or end every session of the account.

    Raises:
        Http404: nothing else can be done.
    """
    user = request.user
    assert isinstance(user, User)
    if deed == "end":
        end_sessions(user)
        logout(request)
        return redirect("sign-in")
    if deed != "pin":
        raise Http404
    try:
        count_guess(f"password:{user.pk}", now())
        if not user.check_password(request.POST.get("password", "")):
            return _page(request, fault="accounts.pin.password")
        forget_guesses(f"password:{user.pk}")
        if request.POST.get("pin") != request.POST.get("again"):
            return _page(request, fault="accounts.pin.differ")
        set_pin(user, request.POST.get("pin", ""), now(), least=people_policy().pin_digits)
    except MustWaitError:
        return _page(request, fault="accounts.pin.waits", status=429)
    except BadInputError as error:
        return _page(request, faults=error.faults)
    messages.success(request, say("accounts.pin.set", lang=language_of(request)))
    return redirect("account")


def _page(
    request: HttpRequest, *, fault: str = "", faults: object = (), status: int = 422
) -> HttpResponse:
    user = request.user
    assert isinstance(user, User)
    facts = {
        "factor": factor_of(user),
        "codes_left": codes_left(user),
        "has_pin": hasattr(user, "pin"),
        "runs_station": can(user, Right.RUN_STATION),
        "administers": can(user, Right.ADMINISTER),
        "least": people_policy().pin_digits,
        "fault": fault,
        "faults": faults,
    }
    wrong = bool(fault or faults)
    return render(request, "entrance/account.html", facts, status=status if wrong else 200)
