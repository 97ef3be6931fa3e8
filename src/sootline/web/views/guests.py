"""Whose gear came along from elsewhere, and who took it back? And what was washed elsewhere?"""

from django.core.exceptions import PermissionDenied
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from sootline.core.basis import ComponentId, KindId, PlaceId, SetId
from sootline.core.exposure.calls import Call
from sootline.core.gear import CareStage, Component, Custody, State
from sootline.core.job.jobs import Job
from sootline.tasks.floor_deeds import GuestsCame, GuestsWent, WashedElsewhere
from sootline.tasks.rights import Right
from sootline.web.access import can
from sootline.web.answers import answers_of
from sootline.web.entries.floor import GUEST_KINDS, ElsewhereForm, GuestsBackForm, GuestsForm
from sootline.web.reports import actor_of, report
from sootline.web.views.fitting import with_member

_GET_POST = require_http_methods(["GET", "HEAD", "POST"])


@_GET_POST
def came(request: HttpRequest, call: str) -> HttpResponse:
    """Write down gear of another department that came in from a call."""
    job = answers_of(request).job
    found = next((one for one in job.calls if one.id == call), None)
    if found is None:
        raise Http404
    form = GuestsForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        pieces = _pieces(job, found, form.cleaned_data)
        names = tuple(one.id for one in pieces)
        values = {"n": str(len(pieces)), "department": str(pieces[0].guest)}
        deed = GuestsCame(call=found.id, pieces=pieces)
        if report(request, "web.guests.came", deed, about=(call, *names), values=values):
            return redirect("call-guests", call=call)
    facts = {
        "call": found,
        "form": form,
        "kinds": GUEST_KINDS,
        "here": _here(job),
        "departments": sorted({str(one.guest) for one in job.components if one.guest}),
    }
    return render(request, "call/guests.html", facts, status=422 if form.errors else 200)


@_GET_POST
def went(request: HttpRequest) -> HttpResponse:
    """List other departments' gear that is here, and take in who took it back."""
    answers = answers_of(request)
    here = _here(answers.job)
    form = GuestsBackForm([one.id for one in here], request.POST or None)
    if request.method == "POST" and form.is_valid():
        given = form.cleaned_data
        names = tuple(ComponentId(one) for one in given["pieces"])
        deed = GuestsWent(pieces=names, to=given["to"].strip(), by=given["by"].strip())
        values = {"n": str(len(names)), "to": deed.to}
        if report(request, "web.guests.went", deed, about=names, values=values):
            return redirect("guests")
    decisions = {one.component: one for one in answers.decided.decisions}
    facts = {
        "rows": [(one, decisions[one.id]) for one in here],
        "form": form,
        "by": actor_of(request),
    }
    return render(request, "call/guests_back.html", facts, status=422 if form.errors else 200)


@_GET_POST
def elsewhere(request: HttpRequest, member: str) -> HttpResponse:
    """Take in, without blame, that gear was washed at home or in a laundry.

    Raises:
        PermissionDenied: it is somebody else's, and the reader does not see gear.
    """
    job = answers_of(request).job
    if member not in [one.id for one in job.members]:
        raise Http404
    if actor_of(request) != member and not can(request.user, Right.SEE_GEAR):
        raise PermissionDenied
    found = next(one for one in job.members if one.id == member)
    pieces = [
        one for one in with_member(job, found.id) if one.state.stage is not CareStage.IN_WASHER
    ]
    form = ElsewhereForm([one.id for one in pieces], request.POST or None)
    if request.method == "POST" and form.is_valid():
        given = form.cleaned_data
        names = tuple(ComponentId(one) for one in given["pieces"])
        deed = WashedElsewhere(pieces=names, by=given["by"].strip(), said=given["said"].strip())
        values = {"member": member, "n": str(len(names))}
        if report(request, "web.elsewhere.kept", deed, about=(member, *names), values=values):
            see = can(request.user, Right.SEE_GEAR)
            return redirect("person", member=member) if see else redirect("front")
    facts = {"member": found, "pieces": pieces, "form": form, "by": actor_of(request)}
    return render(request, "people/elsewhere.html", facts, status=422 if form.errors else 200)


def _here(job: Job) -> list[Component]:
    return [one for one in job.components if one.guest and one.state.custody is not Custody.LOAN]


def _pieces(job: Job, call: Call, given: dict[str, object]) -> tuple[Component, ...]:
    """Make pieces of what was ticked, numbered after their call."""
    department, wearer = str(given["department"]).strip(), str(given["wearer"]).strip()
    bag, kinds = str(given["bag"]).strip(), given["kinds"]
    assert isinstance(kinds, list)
    prefix = f"G{call.id}-"
    begun = sum(one.id.startswith(prefix) for one in job.components)
    state = State(
        custody=Custody.BAG if bag else Custody.WASH_ROOM,
        place=PlaceId(bag) if bag else None,
        stage=CareStage.TO_WASH,
    )
    return tuple(
        Component(
            id=ComponentId(f"{prefix}{begun + at}"),
            kind=KindId(kind),
            set=SetId(f"{department} {wearer}".strip()),
            guest=department,
            state=state,
        )
        for at, kind in enumerate(kinds, start=1)
    )
