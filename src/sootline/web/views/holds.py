"""What waits for a decision: who may end it, by which rule, and what is recorded of it?"""

from django.conf import settings
from django.core.exceptions import PermissionDenied
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods, require_POST

from sootline.core.basis import CallId, ComponentId, ContaminantId
from sootline.core.exposure.calls import Survey
from sootline.core.rulebook import Decider
from sootline.core.rulebook.contaminants import Knowledge
from sootline.tasks.floor_deeds import Disinfected, HoldLifted, SurveyCame
from sootline.tasks.offices import offices_of
from sootline.web.answers import answers_of
from sootline.web.entries.floor import FOUND, DisinfectedForm, HoldForm, SurveyForm
from sootline.web.reading.holds import HoldShown, read_hold
from sootline.web.reports import actor_of, report

_GET_POST = require_http_methods(["GET", "HEAD", "POST"])


@_GET_POST
def hold(request: HttpRequest, cause: str) -> HttpResponse:
    """Show a hold, and take in who ends it, in which office, with what was decided."""
    shown = _shown(request, cause)
    names = [one.id for one in shown.pieces]
    form = HoldForm(names, shown.offices, request.POST or None)
    if request.method == "POST" and not shown.offices:
        raise PermissionDenied
    if request.method == "POST" and form.is_valid():
        given = form.cleaned_data
        pieces = tuple(ComponentId(one) for one in given["pieces"])
        deed = HoldLifted(
            pieces=pieces,
            cause=cause,
            by=given["by"].strip(),
            office=Decider(given["office"]),
            said=given["said"].strip(),
        )
        values = {"n": str(len(pieces)), "by": deed.by, "office": deed.office.value}
        if report(request, "web.hold.ended", deed, about=pieces, values=values):
            return redirect("needs")
    return _page(request, shown, end=form)


@require_POST
def disinfected(request: HttpRequest, cause: str) -> HttpResponse:
    """Take in with what pieces were disinfected, how long it acted, and by whom."""
    shown = _shown(request, cause)
    form = DisinfectedForm([one.id for one in shown.pieces], request.POST)
    if form.is_valid():
        given = form.cleaned_data
        pieces = tuple(ComponentId(one) for one in given["pieces"])
        deed = Disinfected(
            pieces=pieces,
            product=given["product"].strip(),
            minutes=given["minutes"],
            by=given["by"].strip(),
        )
        values = {"n": str(len(pieces)), "product": deed.product, "minutes": str(deed.minutes)}
        if report(request, "web.hold.disinfected", deed, about=pieces, values=values):
            return redirect("hold", cause=cause)
    return _page(request, shown, wet=form)


@require_POST
def survey(request: HttpRequest, cause: str) -> HttpResponse:
    """Take in what a survey or a measurement found, and who signed it."""
    shown = _shown(request, cause)
    form = SurveyForm(request.POST)
    if shown.asks_survey and form.is_valid():
        given = form.cleaned_data
        found = Survey(
            contaminant=ContaminantId(shown.contaminant),
            found=Knowledge(given["found"]),
            signed_by=given["by"].strip(),
            signed_at=answers_of(request).job.now,
        )
        deed = SurveyCame(call=CallId(shown.call), survey=found)
        values = {"contaminant": shown.contaminant, "found": given["found"], "by": found.signed_by}
        if report(request, "web.hold.surveyed", deed, about=(shown.call,), values=values):
            return redirect("needs")
    return _page(request, shown, survey=form)


def _shown(request: HttpRequest, cause: str) -> HoldShown:
    answers = answers_of(request)
    shown = read_hold(answers.job, answers.decided, cause, _offices(request))
    if shown is None:
        raise Http404
    return shown


def _offices(request: HttpRequest) -> tuple[Decider, ...]:
    """Return the reader's offices; whoever sits at a demonstration may play any."""
    if settings.DEMO:
        return tuple(Decider)
    appointments = answers_of(request).job.department.care.appointments
    roles = tuple(getattr(request.user, "roles", ()))
    return offices_of(roles, actor_of(request), appointments)


def _page(request: HttpRequest, shown: HoldShown, **forms: object) -> HttpResponse:
    faulty = [form for form in forms.values() if getattr(form, "errors", None)]
    facts = {
        "shown": shown,
        "products": answers_of(request).job.department.care.products,
        "found": [one.value for one in FOUND],
        "by": actor_of(request),
        "form": faulty[0] if faulty else None,
        **forms,
    }
    return render(request, "holds/hold.html", facts, status=422 if faulty else 200)
