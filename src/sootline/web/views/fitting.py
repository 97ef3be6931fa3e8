"""Somebody is new, tries gear on, exchanges a piece, or leaves: what goes where?"""

from collections.abc import Iterable

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from sootline.core.basis import ComponentId, MemberId
from sootline.core.exposure.calls import Answer
from sootline.core.gear import Component, Custody, Life
from sootline.core.job.jobs import Job, Member
from sootline.core.riding import ExchangeFacts
from sootline.tasks.first_day import FirstDay, first_day
from sootline.tasks.people_deeds import GearExchanged, GearGiven, MemberCame, MemberLeft, TriedOn
from sootline.web.answers import answers_of
from sootline.web.entries.floor import PiecesForm
from sootline.web.entries.people import (
    RACK,
    WASH,
    ExchangeForm,
    LeaveForm,
    MemberForm,
    TriedForm,
)
from sootline.web.reports import actor_of, report
from sootline.wiring.rules import RULES

_GET_POST = require_http_methods(["GET", "HEAD", "POST"])
_IN_USE = (Life.IN_SERVICE, Life.RESERVE, Life.TRAINING_ONLY)
_IN_STORE = (Custody.SPARE_RACK, Custody.HOOK)


@_GET_POST
def new(request: HttpRequest) -> HttpResponse:
    """Take in a new member with what was measured."""
    job = answers_of(request).job
    dimensions = list(dict.fromkeys(rule.dimension for rule in job.riding.fit))
    form = MemberForm(dimensions, request.POST or None)
    if request.method == "POST" and form.is_valid():
        member = form.member()
        values = {"member": str(member.id)}
        if report(request, "web.fitting.came", MemberCame(member=member), about=(member.id,),
                  values=values):  # fmt: skip
            return redirect("person-first-day", member=member.id)
    facts = {
        "form": form,
        "rows": [(one, form.data.get(f"d-{one}", "")) for one in dimensions],
        "crews": list(dict.fromkeys(one.crew for one in job.members if one.crew)),
    }
    return render(request, "fitting/new.html", facts, status=422 if form.errors else 200)


@_GET_POST
def first(request: HttpRequest, member: str) -> HttpResponse:
    """Propose gear from the stores, name what is missing, and give what was chosen."""
    job = answers_of(request).job
    found = _member(job, member)
    shown = first_day(RULES, job, found.id)
    form = PiecesForm(_units(shown), request.POST or None)
    if request.method == "POST" and form.is_valid():
        chosen = form.cleaned_data["pieces"]
        pieces = tuple(
            piece for one in shown.proposals if one.unit in chosen for piece in one.pieces
        )
        deed = GearGiven(pieces=pieces, member=found.id, by=form.cleaned_data["by"].strip())
        values = {"member": member, "n": str(len(pieces))}
        if report(request, "web.fitting.given", deed, about=(member, *pieces), values=values):
            return redirect("person-tried", member=member)
    facts = {"member": found, "shown": shown, "form": form, "by": actor_of(request)}
    return render(request, "fitting/first.html", facts, status=422 if form.errors else 200)


@_GET_POST
def tried(request: HttpRequest, member: str) -> HttpResponse:
    """Take in whether what somebody was given fits, and who watched."""
    job = answers_of(request).job
    found = _member(job, member)
    waiting = {one.component for one in job.riding.try_ons
               if one.member == found.id and one.signed_by is None}  # fmt: skip
    pieces = [one for one in job.components if one.id in waiting]
    form = TriedForm([one.id for one in pieces], request.POST or None)
    if request.method == "POST" and form.is_valid():
        given = form.cleaned_data
        names = tuple(ComponentId(one) for one in given["pieces"])
        fits = given["fits"] == Answer.YES
        deed = TriedOn(pieces=names, member=found.id, fits=fits, by=given["by"].strip(),
                       said=given["said"].strip())  # fmt: skip
        message = "web.fitting.fits" if fits else "web.fitting.fits_not"
        values = {"member": member, "n": str(len(names)), "by": deed.by}
        if report(request, message, deed, about=(member, *names), values=values):
            return redirect("person", member=member)
    facts = {"member": found, "pieces": pieces, "form": form, "by": actor_of(request),
             "answers": (Answer.YES.value, Answer.NO.value)}  # fmt: skip
    return render(request, "fitting/tried.html", facts, status=422 if form.errors else 200)


@_GET_POST
def exchange(request: HttpRequest, member: str) -> HttpResponse:
    """Let somebody bring one piece back and take another of its kind, in one step."""
    job = answers_of(request).job
    found = _member(job, member)
    own = list(with_member(job, found.id))
    asked = request.POST.get("returns") or request.GET.get("returns", "")
    returns = next((one for one in own if one.id == asked), None)
    spares = list(_spares(job, returns)) if returns else []
    form = ExchangeForm([one.id for one in own], [one.id for one in spares], request.POST or None)
    if request.method == "POST" and form.is_valid():
        given = form.cleaned_data
        facts_of = ExchangeFacts(member=found.id, returns=ComponentId(given["returns"]),
                                 takes=ComponentId(given["takes"]))  # fmt: skip
        place = "spare rack" if given["then"] == RACK else ""
        deed = GearExchanged(facts=facts_of, by=given["by"].strip(), place=place)
        values = {"member": member, "returns": given["returns"], "takes": given["takes"]}
        about = (member, given["returns"], given["takes"])
        if report(request, "web.fitting.exchanged", deed, about=about, values=values):
            return redirect("person-tried", member=member)
    facts = {"member": found, "own": own, "returns": returns, "spares": spares, "form": form,
             "thens": (WASH, RACK), "by": actor_of(request)}  # fmt: skip
    return render(request, "fitting/exchange.html", facts, status=422 if form.errors else 200)


@_GET_POST
def leaves(request: HttpRequest, member: str) -> HttpResponse:
    """Take in what came back from somebody who leaves; the rest stays named as still out."""
    job = answers_of(request).job
    found = _member(job, member)
    pieces = list(with_member(job, found.id))
    form = LeaveForm([one.id for one in pieces], request.POST or None)
    if request.method == "POST" and form.is_valid():
        names = tuple(ComponentId(one) for one in form.cleaned_data["pieces"])
        deed = MemberLeft(member=found.id, returned=names, by=form.cleaned_data["by"].strip())
        out = str(len(pieces) - len(names))
        values = {"member": member, "n": str(len(names)), "out": out}
        if report(request, "web.fitting.left", deed, about=(member, *names), values=values):
            return redirect("people")
    facts = {"member": found, "pieces": pieces, "form": form, "by": actor_of(request)}
    return render(request, "fitting/leaves.html", facts, status=422 if form.errors else 200)


def with_member(job: Job, member: MemberId) -> Iterable[Component]:
    """List what a member owns or has."""
    return (
        one
        for one in job.components
        if member in (one.owner, one.state.holder) and one.state.life in _IN_USE
    )


def _member(job: Job, member: str) -> Member:
    found = next((one for one in job.members if one.id == member), None)
    if found is None:
        raise Http404
    return found


def _units(shown: FirstDay) -> list[str]:
    return [one.unit for one in shown.proposals if one.unit]


def _spares(job: Job, returns: Component) -> Iterable[Component]:
    """List what nobody has, of the kind that comes back."""
    return (
        one
        for one in job.components
        if one.kind == returns.kind
        and one.guest is None
        and one.owner is None
        and one.state.holder is None
        and one.state.custody in _IN_STORE
        and one.state.life in _IN_USE
    )
