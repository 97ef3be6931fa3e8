"""Whose accounts are there, in which offices, and is one to be signed out or changed?"""

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_POST, require_safe

from sootline.core.basis import BadInputError
from sootline.tasks.rights import Role
from sootline.web.tongue import language_of
from sootline.wiring import accounts as kept
from sootline.wiring.people import (
    User,
    end_sessions,
    factor_of,
    find_account,
    list_accounts,
    remove_factor,
)
from sootline.words import say


@require_safe
def accounts(request: HttpRequest) -> HttpResponse:
    """List accounts with their offices and how each is known."""
    return _page(request)


@require_POST
def accounts_do(request: HttpRequest, name: str, deed: str) -> HttpResponse:
    """End an account's sessions, give it other offices, or take its second factor away.

    Raises:
        Http404: there is no such account, or nothing of that kind to do.
    """
    try:
        user = find_account(name)
    except BadInputError as error:
        raise Http404 from error
    if deed == "end":
        end_sessions(user)
    elif deed == "factor":
        # Nobody takes away their own on a screen: a stolen session would only have to ask.
        if user == request.user:
            return _page(request, fault="accounts.factor.own", status=422)
        remove_factor(user)
        end_sessions(user)
    elif deed == "offices":
        try:
            kept.set_roles(name, request.POST.getlist("roles"))
        except BadInputError as error:
            return _page(request, faults=error.faults, status=422)
        kept.note_offices(name, by=request.user)
    else:
        raise Http404
    done = say(f"accounts.done.{deed}", {"name": name}, lang=language_of(request))
    messages.success(request, done)
    return redirect("accounts")


def _page(
    request: HttpRequest, *, fault: str = "", faults: object = (), status: int = 200
) -> HttpResponse:
    facts = {
        "rows": [_row(user) for user in list_accounts()],
        "roles": [role.value for role in Role],
        "fault": fault,
        "faults": faults,
    }
    return render(request, "entrance/accounts.html", facts, status=status)


def _row(user: User) -> dict[str, object]:
    return {"account": user, "factor": factor_of(user), "has_pin": hasattr(user, "pin")}
