"""Who is it? Asked with patience, but not without end."""

import datetime as dt
from collections.abc import Mapping

from axes.models import AccessAttempt
from django.contrib.auth.forms import AuthenticationForm
from django.contrib.auth.views import LoginView
from django.db.models import Sum
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils import timezone

from sootline.web.plain_http import address_of
from sootline.wiring.people import people_policy
from sootline.wiring.store import now

_MOST_FROM_ONE_ADDRESS = 30
_WITHIN = dt.timedelta(minutes=15)


class SignIn(LoginView):
    """The sign-in page; one account and one address may each fail only so often."""

    template_name = "entrance/sign_in.html"
    redirect_authenticated_user = True

    def post(self, request: HttpRequest, *args: str, **kwargs: object) -> HttpResponse:
        """Sign somebody in, or say that it did not match; too many failures must wait."""
        if _failures_from(address_of(request)) >= _MOST_FROM_ONE_ADDRESS:
            return self.render_to_response(self.get_context_data(waits=True), status=429)
        return super().post(request, *args, **kwargs)

    def form_valid(self, form: AuthenticationForm) -> HttpResponse:
        """Begin a session under a new name, which ends at a set moment whatever is done in it."""
        response = super().form_valid(form)
        self.request.session.set_expiry(now() + people_policy().session)
        return response

    def form_invalid(self, form: object) -> HttpResponse:
        """Answer with a status that says so."""
        return self.render_to_response(self.get_context_data(form=form), status=422)


def locked(request: HttpRequest, *_args: object, **_kwargs: object) -> HttpResponse:
    """Answer an account that failed too often: it opens by itself."""
    view = SignIn()
    view.setup(request)
    context = {**view.get_context_data(), "waits": True}
    return render(request, view.template_name, context, status=429)


def account_meant(request: HttpRequest, credentials: Mapping[str, str] | None = None) -> str:
    """Return the account somebody tries: its name in capitals is the same account."""
    given = credentials or {}
    typed = given.get("username") or given.get("name") or request.POST.get("username", "")
    return str(typed).strip().casefold()


def _failures_from(address: str) -> int:
    since = timezone.now() - _WITHIN
    tries = AccessAttempt.objects.filter(ip_address=address, attempt_time__gte=since)
    return tries.aggregate(n=Sum("failures_since_start"))["n"] or 0
