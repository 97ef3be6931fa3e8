"""Something changed in the wash room: what is the plan from here, and whom does it move?"""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from sootline.core.basis import BadInputError
from sootline.tasks.change_wash import change_wash
from sootline.tasks.deeds import Planned
from sootline.web.answers import answers_of
from sootline.web.entries.wash import ChangedForm
from sootline.web.reading.changes import list_changes, read_moves
from sootline.web.reading.wash import how_good
from sootline.web.reports import report
from sootline.web.tongue import language_of
from sootline.wiring.plans import load_planning_times, stop_after
from sootline.wiring.rules import RULES
from sootline.words import say

# With the proof and the drawing the answer is there within two seconds.
_SECONDS = 1.0


@require_http_methods(["GET", "HEAD", "POST"])
def changed(request: HttpRequest) -> HttpResponse:
    """Ask what changed, plan the rest again, and say what moved."""
    answers, lang = answers_of(request), language_of(request)
    before = answers.desk.plan
    if before is None:
        return redirect("wash")
    choices = list_changes(answers.desk, before)
    form = ChangedForm([one.value for one in choices], request.POST or None)
    faults: list[str] = []
    if request.method == "POST" and form.is_valid():
        try:
            made = change_wash(
                RULES, answers.job, before, form.changed(),
                planning=load_planning_times(), stop=stop_after(_SECONDS),
            )  # fmt: skip
        except BadInputError as error:
            faults = [say(one.message, one.values, lang=lang) for one in error.faults]
        else:
            chosen = next(one for one in choices if one.value == form.cleaned_data["what"])
            what = say(chosen.line.message, chosen.line.values, lang=lang)
            deed = Planned(plan=made.result, because=what)
            if report(request, "web.changed.kept", deed, values={"what": what}):
                for line in (*read_moves(made), how_good(made.result)):
                    messages.info(request, say(line.message, line.values, lang=lang))
                return redirect("wash")
    bad = bool(form.errors or faults)
    facts = {"choices": choices, "form": form, "faults": faults,
             "chosen": form.data.get("what") or request.GET.get("what", "")}  # fmt: skip
    return render(request, "wash/changed.html", facts, status=422 if bad else 200)
