"""What is on the shelf, what was done to the machines, and what is due on them?"""

from collections import defaultdict
from collections.abc import Mapping

from django.forms import Form
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from sootline.core.job.jobs import Job
from sootline.core.upkeep.stores import Chore, LogEntry, Supply
from sootline.tasks.year_deeds import YearFact
from sootline.web.answers import answers_of
from sootline.web.entries.store import CountForm, LogForm, NewSupplyForm
from sootline.web.reports import actor_of, report

_SHOWN = 20


@require_http_methods(["GET", "HEAD", "POST"])
def stores(request: HttpRequest) -> HttpResponse:
    """Show stock and machine log; take a count, a new thing, or a line of the log."""
    answers = answers_of(request)
    job, machines = answers.job, _machines(answers.job)
    what = request.POST.get("what", "")
    forms: Mapping[str, Form] = {
        "count": CountForm(request.POST if what == "count" else None),
        "new": NewSupplyForm(request.POST if what == "new" else None),
        "log": LogForm(machines, request.POST if what == "log" else None),
    }
    form = forms.get(what)
    if form is not None and form.is_valid():
        fact = _fact(form, job)
        values = {"what": str(getattr(fact, "name", "") or getattr(fact, "machine", "")),
                  "by": str(form.cleaned_data["by"])}  # fmt: skip
        if fact is not None and report(request, f"year.stores.kept_{what}", YearFact(fact=fact),
                                       values=values):  # fmt: skip
            return redirect("stores")
    named: dict[str, list[Supply]] = defaultdict(list)
    for one in job.upkeep.supplies:
        named[one.name].append(one)
    facts = {
        "today": answers.today,
        "supplies": dict(named),
        "log": list(reversed(job.upkeep.machine_log))[:_SHOWN],
        "machines": machines,
        "chores": list(Chore),
        "form": form,
        "what": what,
        "by": actor_of(request),
    }
    refused = form is not None and bool(form.errors)
    return render(request, "stores/stores.html", facts, status=422 if refused else 200)


def _fact(form: Form, job: Job) -> Supply | LogEntry | None:
    if isinstance(form, LogForm):
        return form.entry(job)
    if isinstance(form, NewSupplyForm):
        return form.supply(job)
    assert isinstance(form, CountForm)
    counted = form.cleaned_data["supply"]
    found = next((one for one in job.upkeep.supplies if one.id == counted), None)
    return form.counted(found, job) if found else None


def _machines(job: Job) -> list[str]:
    """List the washers and drying places, and whatever a routine or the log names."""
    room, year = job.wash_room, job.upkeep
    return list(
        dict.fromkeys(
            (
                *(one.id for one in room.washers),
                *(one.id for one in room.drying),
                *(one.machine for one in year.routines),
                *(one.machine for one in year.machine_log),
            )
        )
    )
