"""After a call: who rode, where was each, what was there? Every step is kept by itself."""

import datetime as dt
from dataclasses import replace
from itertools import chain, count

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods, require_safe

from sootline.core.basis import CallId, DateSpan, MemberId
from sootline.core.exposure.calls import Answer, Building, Call, Presence
from sootline.core.job.jobs import Job
from sootline.tasks.deeds import CallCame, HazardsSaid, PersonSaid
from sootline.web.answers import answers_of
from sootline.web.forms import KINDS, TRAINING, CallForm, HazardsForm, PersonForm
from sootline.web.looking import note_looks
from sootline.web.reading.calls import read_call, read_calls, read_hazards, read_person
from sootline.web.reading.clock import clock_of
from sootline.web.reports import actor_of, report
from sootline.web.tongue import language_of
from sootline.wiring.rules import RULES
from sootline.words import say

_GET_POST = require_http_methods(["GET", "HEAD", "POST"])


@_GET_POST
def calls(request: HttpRequest) -> HttpResponse:
    """List the calls whose gear is still to be seen to, and take in a new one."""
    answers = answers_of(request)
    job, clock = answers.job, clock_of(answers.job, language_of(request))
    form = CallForm([member.id for member in job.members], request.POST or None)
    if request.method == "POST" and form.is_valid():
        call = new_call(job, _titled(form.cleaned_data, language_of(request)))
        if report(request, "web.call.kept", CallCame(call=call), about=(call.id,),
                  values={"title": call.title}):  # fmt: skip
            return redirect("call-person", call=call.id, member=call.people[0].member)
    facts = {
        "calls": read_calls(job, clock),
        "crews": _crews(job),
        "form": form,
        "now": f"{clock.now:%H:%M}",
        "answers": list(Answer),
        "kinds": KINDS,
    }
    return render(request, "call/calls.html", facts, status=422 if form.errors else 200)


@require_safe
def one(request: HttpRequest, call: str) -> HttpResponse:
    """Show what is known of a call, person by person."""
    answers = answers_of(request)
    found = _call(answers.job, call)
    clock = clock_of(answers.job, language_of(request))
    note_looks(request, (one.member for one in found.people), "call")
    return render(request, "call/one.html", {"shown": read_call(found, clock), "call": found})


@_GET_POST
def person(request: HttpRequest, call: str, member: str) -> HttpResponse:
    """Ask where one person was, then go on to the next."""
    found = _call(answers_of(request).job, call)
    before = next((one for one in found.people if one.member == member), None)
    if before is None:
        raise Http404
    note_looks(request, [member], "call-person")
    like = _like(found, before, request.POST.get("like", ""))
    form = PersonForm(None if like else request.POST or None)
    if request.method == "POST" and (like or form.is_valid()):
        deed = PersonSaid(call=found.id, presence=like or form.presence(before))
        values = {"member": member}
        if report(request, "web.call.person_kept", deed, about=(call, member), values=values):
            return _next(found, member)
    shown = read_person(found, before, form)
    return render(request, "call/person.html", shown, status=422 if form.errors else 200)


@_GET_POST
def hazards(request: HttpRequest, call: str) -> HttpResponse:
    """Ask what may have been at a call."""
    found = _call(answers_of(request).job, call)
    note_looks(request, (one.member for one in found.people), "call-hazards")
    listed = [str(rule.id) for rule in RULES.contaminants()]
    form = HazardsForm(listed, request.POST or None)
    if request.method == "POST" and form.is_valid():
        deed = HazardsSaid(call=found.id, hazards=form.hazards(actor_of(request)))
        values = {"title": found.title}
        if report(request, "web.call.hazards_kept", deed, about=(call,), values=values):
            return redirect("needs")
    shown = read_hazards(found, listed, form)
    return render(request, "call/hazards.html", shown, status=422 if form.errors else 200)


def _titled(given: dict[str, object], lang: str) -> dict[str, object]:
    """Call a call by its kind where nobody typed anything."""
    if str(given["title"]).strip():
        return given
    return {**given, "title": say(f"web.call.what.{given['what']}", lang=lang)}


def _like(call: Call, before: Presence, name: str) -> Presence | None:
    """Return what was said of somebody else, for who was with them; bags stay each one's own."""
    other = next((one for one in call.people if one.member == name and one.zones), None)
    if other is None:
        return None
    return replace(
        other, member=before.member, worn=before.worn, role=before.role, bags=before.bags
    )


def _next(call: Call, member: str) -> HttpResponse:
    members = [one.member for one in call.people]
    after = members[members.index(MemberId(member)) + 1 :]
    if after:
        return redirect("call-person", call=call.id, member=after[0])
    return redirect("call-hazards", call=call.id)


def _call(job: Job, name: str) -> Call:
    found = next((call for call in job.calls if call.id == name), None)
    if found is None:
        raise Http404
    return found


def _crews(job: Job) -> list[tuple[str, list[MemberId]]]:
    names = dict.fromkeys(member.crew for member in job.members)
    return [(name, [one.id for one in job.members if one.crew == name]) for name in names]


def new_call(job: Job, given: dict[str, object]) -> Call:
    """Make a call of what was typed; times of day are the last such times before now."""
    began, back = given["began"], given["back"]
    assert isinstance(began, dt.time)
    at = _before(job.now, began)
    built = given["built"]
    rode = given["rode"]
    assert isinstance(rode, list)
    return Call(
        id=CallId(_number(job, at)),
        at=at,
        back_at=max(at, _before(job.now, back)) if isinstance(back, dt.time) else None,
        title=str(given["title"]).strip(),
        training=bool(given["training"]) or given["what"] == TRAINING,
        building=Building(
            built=DateSpan.parse(str(built)) if built else DateSpan(),
            opened=Answer(str(given["opened"] or Answer.UNKNOWN)),
        ),
        people=tuple(Presence(member=MemberId(name)) for name in rode),
    )


def _before(now: dt.datetime, time: dt.time) -> dt.datetime:
    moment = now.replace(hour=time.hour, minute=time.minute, second=0, microsecond=0)
    return moment - dt.timedelta(days=moment > now)


def _number(job: Job, at: dt.datetime) -> str:
    """Return a number for a call: its moment; further ones of the same minute get a mark."""
    number = at.strftime("%y%m%d-%H%M")
    taken = {call.id for call in job.calls}
    marks = chain(("", *"bcdefghij"), (f"-{n}" for n in count(11)))
    return str(next(number + mark for mark in marks if number + mark not in taken))
