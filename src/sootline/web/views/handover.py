"""What does the next shift find that is not as usual?"""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from sootline.web.answers import answers_of
from sootline.web.reading.clock import clock_of
from sootline.web.reading.handover import read_handover
from sootline.web.reading.wash import read_wash_room
from sootline.web.tongue import language_of


@require_safe
def handover(request: HttpRequest) -> HttpResponse:
    """Show the exceptions, on one page."""
    answers, lang = answers_of(request), language_of(request)
    clock = clock_of(answers.job, lang)
    plan = answers.desk.plan
    room = read_wash_room(answers.desk, plan, answers.cards, clock, lang) if plan else None
    facts = {
        "job": answers.job,
        "now": clock.day(clock.now),
        "handover": answers.handover,
        "exceptions": read_handover(answers.handover),
        "room": room,
    }
    return render(request, "handover/handover.html", facts)
