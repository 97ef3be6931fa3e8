"""What is repaired, how far has it come, what does it cost, and who decided?"""

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from sootline.core.basis import DateSpan
from sootline.core.upkeep.repairs import Choice, Repair, Work
from sootline.tasks.weigh_repairs import RepairResult
from sootline.tasks.year_deeds import YearFact
from sootline.tasks.year_facts import is_over
from sootline.web.answers import Answers, answers_of
from sootline.web.entries.repair import STEPS, NewRepairForm
from sootline.web.reading.saying import resting
from sootline.web.reports import actor_of, report
from sootline.web.tongue import language_of
from sootline.words import say

_GET_POST = require_http_methods(["GET", "HEAD", "POST"])


@_GET_POST
def repairs(request: HttpRequest) -> HttpResponse:
    """List repairs, those nobody has decided first; begin another."""
    answers = answers_of(request)
    form = NewRepairForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        begun = form.repair()
        pieces = {one.id for one in answers.job.components}
        if begun.component not in pieces:
            messages.error(request, say("year.inspect.no_piece", {"piece": begun.component},
                                        lang=language_of(request)))  # fmt: skip
        elif report(request, "year.repairs.begun", YearFact(fact=begun), about=(begun.component,),
                    values={"piece": begun.component}):  # fmt: skip
            return redirect("repair", piece=begun.component)
    groups = {name: [one for one in answers.repairs if _stage(one.repair) == name]
              for name in ("undecided", "decided", "away", "over")}  # fmt: skip
    facts = {
        "form": form,
        "groups": [(name, found) for name, found in groups.items() if found],
        "works": list(Work),
        "kinds": {one.id: one.kind for one in answers.job.components},
    }
    return render(request, "repairs/repairs.html", facts, status=422 if form.errors else 200)


@_GET_POST
def repair(request: HttpRequest, piece: str) -> HttpResponse:
    """Show one piece's repair and what it comes to; take the next step of it."""
    answers = answers_of(request)
    found = _newest(answers, piece)
    if found is None:
        raise Http404
    step = request.POST.get("step", "")
    form = STEPS[step](request.POST) if step in STEPS else None
    if form is not None and form.is_valid():
        after = form.repair(found.repair, answers.job)
        if report(request, f"year.repairs.kept_{step}", YearFact(fact=after), about=(piece,),
                  values={"piece": piece}):  # fmt: skip
            return redirect("repair", piece=piece)
    component = next(one for one in answers.job.components if one.id == piece)
    facts = {
        "result": found,
        "piece": component,
        "stage": _stage(found.repair),
        "steps": _steps(found.repair),
        "reasons": resting(found.worth.reasons),
        "form": form,
        "step": step,
        "choices": list(Choice),
        "by": actor_of(request),
        "providers": list(dict.fromkeys(one.who for one in answers.job.upkeep.qualified)),
        "currency": found.repair.quote.currency if found.repair.quote else "USD",
    }
    refused = form is not None and bool(form.errors)
    return render(request, "repairs/repair.html", facts, status=422 if refused else 200)


def _newest(answers: Answers, piece: str) -> RepairResult | None:
    found = [one for one in answers.repairs if one.repair.component == piece]
    return next((one for one in reversed(found) if not is_over(one.repair)),
                found[-1] if found else None)  # fmt: skip


def _stage(repair: Repair) -> str:
    if is_over(repair):
        return "over"
    if repair.decided is None:
        return "undecided"
    return "decided" if repair.sent == DateSpan() else "away"


def _steps(repair: Repair) -> tuple[str, ...]:
    """List what can be written down next; the most likely first."""
    stage = _stage(repair)
    if stage == "undecided":
        return ("decide", "quote") if repair.quote else ("quote", "decide")
    return {"decided": ("sent",), "away": ("back",)}.get(stage, ())
