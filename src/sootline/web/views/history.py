"""What was reported, when, by whom?"""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from sootline.web.answers import answers_of
from sootline.web.reading.clock import clock_of
from sootline.web.tongue import language_of
from sootline.words import say

_MOST = 200


@require_safe
def history(request: HttpRequest) -> HttpResponse:
    """List reports, the newest first, those alone that name what is searched for."""
    answers, lang = answers_of(request), language_of(request)
    clock = clock_of(answers.job, lang)
    asked = request.GET.get("q", "").strip()
    lines = [
        (clock.day(one.at), one.by or "", say(one.message, one.values, lang=lang), one.about)
        for one in reversed(answers.desk.reports)
    ]
    found = [
        line for line in lines if asked.casefold() in " ".join((*line[:3], *line[3])).casefold()
    ]
    return render(request, "history/history.html", {"asked": asked, "lines": found[:_MOST]})
