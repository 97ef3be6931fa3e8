"""In which loads is it washed, in which order, and how far are they?"""

import datetime as dt

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.safestring import mark_safe
from django.views.decorators.http import require_POST, require_safe

from sootline.core.basis import BadInputError, PlaceId
from sootline.core.job.jobs import Job
from sootline.core.washplan.plan import Goal
from sootline.tasks.deeds import Planned, Washed, WashStep
from sootline.tasks.load_cards import LoadCard
from sootline.tasks.plan_wash import Aim, plan_wash
from sootline.web.answers import Answers, answers_of
from sootline.web.bettering import ask_better, bettering, mark_of_plan
from sootline.web.reading.card import read_card
from sootline.web.reading.clock import clock_of
from sootline.web.reading.wash import read_wash_room
from sootline.web.reports import report
from sootline.web.tongue import language_of
from sootline.wiring.plans import load_planning_times
from sootline.wiring.rules import RULES
from sootline.words import say


@require_safe
def room(request: HttpRequest) -> HttpResponse:
    """Show the plan the wash room works by, or ask for one."""
    answers, lang = answers_of(request), language_of(request)
    facts: dict[str, object] = {"goals": list(Goal), "plan": answers.desk.plan}
    if answers.desk.plan:
        clock = clock_of(answers.job, lang)
        wash = read_wash_room(answers.desk, answers.desk.plan, answers.cards, clock, lang)
        facts |= {"room": wash, "timeline": mark_safe(wash.timeline)}  # noqa: S308  # our drawing
        facts["better"] = bettering(request, answers.desk.plan)
    facts["drying"] = answers.drying_room
    return render(request, "wash/room.html", facts)


@require_safe
def load(request: HttpRequest, number: int) -> HttpResponse:
    """Show one load card, large, with the picture of each step."""
    answers, lang = answers_of(request), language_of(request)
    card = _card(answers, number)
    plan = answers.desk.plan
    assert plan is not None  # it has the card
    shown = read_card(card, plan, answers.job, clock_of(answers.job, lang))
    return render(request, "wash/load.html", {"shown": shown, "card": card})


@require_POST
def plan(request: HttpRequest) -> HttpResponse:
    """Plan the wash for the goal that was asked for."""
    answers, lang = answers_of(request), language_of(request)
    job = answers.job
    goal = request.POST.get("goal", "")
    by = _minutes(request.POST.get("by", ""), job) if goal == Goal.DEADLINE else None
    if goal not in set(Goal) or (goal == Goal.DEADLINE and by is None):
        facts = {"goals": list(Goal), "plan": None, "fault": "web.wash.no_goal"}
        return render(request, "wash/room.html", facts, status=422)
    aim = Aim(start=job.now, goal=Goal(goal), by=by)
    try:
        # The hand rules' best is there at once; what is better is looked for while people read it.
        made = plan_wash(RULES, job, planning=load_planning_times(), stop=lambda: True, aim=aim)
    except BadInputError as error:
        faults = [say(one.message, one.values, lang=lang) for one in error.faults]
        refused: dict[str, object] = {"goals": list(Goal), "plan": None, "faults": faults}
        return render(request, "wash/room.html", refused, status=422)
    kept = report(
        request,
        "web.wash.planned",
        Planned(plan=made),
        values={"n": str(len(made.worksheet.loads))},
    )
    if kept:
        ask_better(request)
    return redirect("wash")


@require_safe
def better(request: HttpRequest) -> HttpResponse:
    """Tell how far the search for a better plan is; a page that shows an older plan is redrawn."""
    plan = answers_of(request).desk.plan
    if plan is None or not request.headers.get("HX-Request"):
        return redirect("wash")
    facts = {"better": bettering(request, plan)}
    response = render(request, "wash/_better.html", facts)
    if request.GET.get("mark", "") != mark_of_plan(plan):
        response.headers["HX-Refresh"] = "true"
    return response


_STEPS = {
    "start": WashStep.STARTED,
    "end": WashStep.ENDED,
    "fail": WashStep.FAILED,
    "by-hand": WashStep.BY_HAND,
    "hang": WashStep.HUNG,
}


@require_POST
def advance(request: HttpRequest, number: int, deed: str) -> HttpResponse:
    """Record that a load was started, ended, went wrong, or hangs."""
    card = _card(answers_of(request), number)
    if deed not in _STEPS:
        raise Http404
    done = deed
    message = f"web.wash.did.{done}"
    dries = ", ".join(where for where, _ in card.contents.drying)
    washed = Washed(
        step=_STEPS[deed],
        load=number,
        pieces=tuple(component.id for component in card.contents.components),
        place=PlaceId(dries if deed == "hang" else card.where),
        said=say(message, {"load": str(number)}),
    )
    values = {"load": str(number)}
    report(request, message, washed, about=washed.pieces, values=values)
    return redirect("wash-load", number=number)


def _card(answers: Answers, number: int) -> LoadCard:
    card = next((one for one in answers.cards if one.number == number), None)
    if card is None:
        raise Http404
    return card


def _minutes(text: str, job: Job) -> int | None:
    """Return how many minutes from now the next such time of day is."""
    try:
        hour = dt.time.fromisoformat(text)
    except ValueError:
        return None
    now = job.now
    by = now.replace(hour=hour.hour, minute=hour.minute, second=0, microsecond=0)
    by += dt.timedelta(days=by <= now)
    return int((by - now) / dt.timedelta(minutes=1))
