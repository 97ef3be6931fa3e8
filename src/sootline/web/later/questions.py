"""What was written down and does not fit together: who saw how it was?"""

from django import forms
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from sootline.core.basis import ComponentId
from sootline.core.ledger import component
from sootline.tasks.answer_question import Answered
from sootline.web.answers import answers_of
from sootline.web.reading.clock import clock_of
from sootline.web.reading.questions import read_question, told
from sootline.web.reports import actor_of, report
from sootline.web.tongue import language_of
from sootline.wiring.lives import life_of


class AnswerForm(forms.Form):
    """How it was, and who says so."""

    said = forms.CharField(max_length=200)
    by = forms.CharField(max_length=40)


@require_http_methods(["GET", "HEAD", "POST"])
def question(request: HttpRequest, piece: str) -> HttpResponse:
    """Show the question about one piece, and take in an answer."""
    answers = answers_of(request)
    found = next((one for one in answers.job.components if one.id == piece), None)
    if found is None:
        raise Http404
    item = component(ComponentId(piece))
    asked = [one for one in answers.desk.questions if one.item == item]
    form = AnswerForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        deed = Answered(
            piece=found.id,
            entries=tuple(entry for one in asked for entry in one.entries),
            by=form.cleaned_data["by"].strip(),
            said=form.cleaned_data["said"].strip(),
        )
        values = {"piece": piece, "by": deed.by}
        if report(request, "later.answered", deed, about=(piece,), values=values):
            return redirect("piece", piece=piece)
    clock = clock_of(answers.job, language_of(request))
    life = life_of(found.id)
    facts = {
        "piece": found,
        "asked": [read_question(one, clock) for one in asked],
        "told": told(life[0], clock) if life else (),
        "loads": life[1].items() if life else (),
        "form": form,
        "by": actor_of(request),
    }
    return render(request, "later/question.html", facts, status=422 if form.errors else 200)
