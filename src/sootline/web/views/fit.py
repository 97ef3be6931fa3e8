"""Who is due to be measured again, and what must be ordered in which size, by when?"""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from sootline.core.upkeep.people import Change
from sootline.tasks.year_deeds import YearFact
from sootline.web.answers import answers_of
from sootline.web.entries.fit import ChangedForm, MeasuredForm
from sootline.web.reports import actor_of, report

_GET_POST = require_http_methods(["GET", "HEAD", "POST"])


@_GET_POST
def fit(request: HttpRequest) -> HttpResponse:
    """Show refits and orders; take a change somebody reports."""
    answers = answers_of(request)
    members = [str(one.id) for one in answers.job.members]
    form = ChangedForm(members, request.POST or None)
    if request.method == "POST" and form.is_valid():
        changed = form.changed(answers.job)
        values = {"member": changed.member, "change": changed.change.value}
        if report(request, "year.fit.changed", YearFact(fact=changed), values=values):
            return redirect("fit")
    facts = {
        "today": answers.today,
        "form": form,
        "members": members,
        "changes": list(Change),
    }
    return render(request, "fit/fit.html", facts, status=422 if form.errors else 200)


@_GET_POST
def measure(request: HttpRequest, member: str) -> HttpResponse:
    """Take somebody's measures, as far as they were taken."""
    job = answers_of(request).job
    found = next((one for one in job.members if one.id == member), None)
    if found is None:
        raise Http404
    known = dict(found.measures)
    dimensions = list(dict.fromkeys(key for one in job.members for key, _ in one.measures))
    form = MeasuredForm(dimensions, request.POST or None)
    if request.method == "POST" and form.is_valid():
        measured = form.measured(found.id, job)
        if report(request, "year.fit.measured", YearFact(fact=measured),
                  values={"member": member, "by": measured.by}):  # fmt: skip
            return redirect("fit")
    facts = {
        "member": found,
        "form": form,
        "rows": [(one, known.get(one, "")) for one in dimensions],
        "by": actor_of(request),
    }
    return render(request, "fit/measure.html", facts, status=422 if form.errors else 200)
