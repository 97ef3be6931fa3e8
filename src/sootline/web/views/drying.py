"""What can the drying room do tonight, and what was read and weighed there?"""

from collections.abc import Mapping

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from sootline.core.drying import Cloth, RoomAir
from sootline.core.job.jobs import Job
from sootline.web.answers import answers_of
from sootline.web.entries.readings import (
    DEGREES,
    FLOWS,
    MASSES,
    AirForm,
    FanForm,
    TakeDownForm,
    WeighInForm,
)
from sootline.web.kept_readings import Kept, ReadingForm, keep_reading
from sootline.web.reading.clock import clock_of
from sootline.web.reading.drying import read_drying
from sootline.web.reports import actor_of
from sootline.web.tongue import language_of
from sootline.wiring.practice import load_assumptions


@require_http_methods(["GET", "HEAD", "POST"])
def drying(request: HttpRequest) -> HttpResponse:
    """Show the drying room; take a reading of its air or a fan, a batch hung or taken down."""
    answers, lang = answers_of(request), language_of(request)
    job, what = answers.job, request.POST.get("what", "")
    form = _form(what, request, job)
    kept = (
        Kept() if form is None else keep_reading(request, form, job, f"drying.screen.kept_{what}")
    )
    if kept.done:
        return redirect("drying")
    clock = clock_of(job, lang)
    room = answers.drying_room
    facts = {
        "shown": room and read_drying(room, job, clock, load_assumptions(), lang),
        "air": job.readings.air,
        "known": _known(job.readings.air),
        "hanging": [(one, clock.at(one.began)) for one in job.readings.hanging],
        "places": [str(place.id) for place in job.wash_room.drying],
        "fans": job.readings.fans,
        "cloths": list(Cloth),
        "degrees": DEGREES,
        "masses": MASSES,
        "flows": FLOWS,
        "form": form,
        "what": what,
        "question": kept.question,
        "by": actor_of(request),
        "now": f"{clock.now:%H:%M}",
    }
    refused = form is not None
    return render(request, "drying/drying.html", facts, status=422 if refused else 200)


def _known(air: RoomAir | None) -> dict[str, object]:
    """Return what of a room does not change from night to night, to begin a form with."""
    if air is None:
        return dict.fromkeys(("volume", "altitude", "changes", "dehumidifier"))
    return {
        "volume": air.volume,
        "altitude": air.altitude,
        "changes": air.changes,
        "dehumidifier": air.dehumidifier_kg_h or None,
    }


def _form(what: str, request: HttpRequest, job: Job) -> ReadingForm | None:
    places = [str(place.id) for place in job.wash_room.drying]
    batches = [one.id for one in job.readings.hanging]
    forms: Mapping[str, ReadingForm] = {
        "air": AirForm(request.POST),
        "fan": FanForm(places, request.POST),
        "down": TakeDownForm(batches, request.POST),
    }
    if job.readings.air is not None:
        forms = {**forms, "in": WeighInForm(places, request.POST)}
    return forms.get(what)
