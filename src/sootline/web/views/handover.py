"""What does the next shift find that is not as usual?"""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from sootline.tasks.floor_deeds import HandedOver
from sootline.web.answers import answers_of
from sootline.web.entries.floor import HandoverForm
from sootline.web.reading.clock import clock_of
from sootline.web.reading.handover import read_handover, signed_handover
from sootline.web.reading.wash import read_wash_room
from sootline.web.reports import actor_of, report
from sootline.web.tongue import language_of

_GET_POST = require_http_methods(["GET", "HEAD", "POST"])


@_GET_POST
def handover(request: HttpRequest) -> HttpResponse:
    """Show the exceptions on one page, and take in who hands over to whom."""
    answers, lang = answers_of(request), language_of(request)
    clock = clock_of(answers.job, lang)
    plan = answers.desk.plan
    form = HandoverForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        given = form.cleaned_data
        deed = HandedOver(
            giver=given["giver"].strip(),
            taker=given["taker"].strip(),
            exceptions=tuple(
                (left.value, tuple(one.id for one in pieces))
                for left, pieces in answers.handover.exceptions
            ),
            said=given["said"].strip(),
        )
        count = len({one for _, pieces in deed.exceptions for one in pieces})
        values = {"giver": deed.giver, "taker": deed.taker, "n": str(count)}
        if report(request, "web.handover.signed", deed, values=values):
            return redirect("handover")
    room = read_wash_room(answers.desk, plan, answers.cards, clock, lang) if plan else None
    signed = signed_handover(answers.desk)
    facts = {
        "job": answers.job,
        "now": clock.day(clock.now),
        "handover": answers.handover,
        "exceptions": read_handover(answers.handover),
        "room": room,
        "form": form,
        "by": actor_of(request),
        "signed": signed,
    }
    return render(request, "handover/handover.html", facts, status=422 if form.errors else 200)
