"""What was kept on a phone comes in: a call, a load, a check, a handover, in its order."""

import datetime as dt
from collections.abc import Iterator
from dataclasses import replace

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.middleware.csrf import get_token
from django.views.decorators.http import require_POST, require_safe

from sootline.core.basis import CallId, ComponentId, MemberId, PlaceId
from sootline.core.exposure.calls import Call, Presence
from sootline.core.gear import find_kind
from sootline.core.job.jobs import Job
from sootline.core.rulebook import Decider
from sootline.tasks.deeds import CallCame, Checked, HazardsSaid, PersonSaid, Washed
from sootline.tasks.floor_deeds import HandedOver
from sootline.tasks.hand_over import Left
from sootline.tasks.hold_said import HoldSaid
from sootline.web.answers import answers_of
from sootline.web.entries.floor import HandoverForm
from sootline.web.forms import CallForm, CheckForm, HazardsForm, PersonForm
from sootline.web.later.forms import STEPS, HoldForm, LoadForm, WhereForm
from sootline.web.later.taking import Taking
from sootline.web.later.told import local, told_of, true_moment
from sootline.web.reading.checks import check_of
from sootline.web.reports import actor_of, who_of
from sootline.web.tongue import language_of
from sootline.web.views.call import new_call
from sootline.web.views.photos import photo_of
from sootline.wiring.rules import RULES
from sootline.words import say


@require_safe
def knock(request: HttpRequest) -> HttpResponse:
    """Tell a page's script that there is a connection, who is signed in, and with what to send."""
    return JsonResponse({"token": get_token(request), "who": who_of(request)})


@require_POST
def call(request: HttpRequest) -> HttpResponse:
    """Take in a call with all that was said of it on one page."""
    taking = Taking(request, _then(request))
    form = CallForm([member.id for member in taking.job.members], request.POST)
    if not form.is_valid():
        taking.misses(form)
        return taking.answer()
    found = _same_or_new(taking.job, form.cleaned_data)
    if found in taking.job.calls or taking.keep(
        "web.call.kept", CallCame(call=found), about=(found.id,), values={"title": found.title}
    ):
        _people(taking, found)
        _hazards(taking, found.id, part="hazards")
    return taking.answer()


@require_POST
def person(request: HttpRequest) -> HttpResponse:
    """Take in where one person was."""
    taking, form = Taking(request, _then(request)), PersonForm(request.POST)
    found = _call(taking)
    member = request.POST.get("member", "")
    before = next((one for one in found.people if one.member == member), None) if found else None
    if not form.is_valid():
        taking.misses(form)
    elif found and before:
        deed = PersonSaid(call=found.id, presence=form.presence(before))
        taking.keep("web.call.person_kept", deed, about=(found.id, member),
                    values={"member": member})  # fmt: skip
    return taking.answer()


@require_POST
def hazards(request: HttpRequest) -> HttpResponse:
    """Take in what may have been at a call."""
    taking = Taking(request, _then(request))
    found = _call(taking)
    if found:
        _hazards(taking, found.id, empty=True)
    return taking.answer()


@require_POST
def load(request: HttpRequest) -> HttpResponse:
    """Take in how far a load came, with the pieces that its card named when it was read."""
    taking = Taking(request, _then(request))
    form = LoadForm([one.id for one in taking.job.components], request.POST)
    if not form.is_valid():
        taking.misses(form)
        return taking.answer()
    given = form.cleaned_data
    values = {"load": str(given["load"])}
    message = f"web.wash.did.{given['deed']}"
    washed = Washed(
        step=STEPS[given["deed"]],
        load=given["load"],
        pieces=tuple(ComponentId(one) for one in given["pieces"]),
        place=PlaceId((given["deed"] == "hang" and given["dries"]) or given["where"]),
        said=given["said"].strip() or say(message, values, lang=language_of(request)),
    )
    taking.keep(message, washed, about=washed.pieces, values=values)
    return taking.answer()


@require_POST
def check(request: HttpRequest) -> HttpResponse:
    """Take in what a hand felt and an eye saw on one piece."""
    taking = Taking(request, _then(request))
    name = request.POST.get("piece", "").strip()
    component = next((one for one in taking.job.components if one.id == name), None)
    if component is None:
        taking.refuse("tasks.no_such_component", id=name)
        return taking.answer()
    points = find_kind(component.kind).touch_points
    form = CheckForm([str(point) for point in points], _felt(request, points))
    photo = photo_of(request, form) if form.is_valid() else ""
    if not form.is_valid():
        taking.misses(form)
        return taking.answer()
    made = check_of(component.id, points, form, taking.job, photo=photo)
    values = {"kind": str(component.kind), "piece": name, "by": made.by}
    taking.keep("web.check.kept", Checked(check=made), about=(name,), values=values)
    return taking.answer()


@require_POST
def hold(request: HttpRequest) -> HttpResponse:
    """Take in that a piece waits for a decision, because somebody says so."""
    taking = Taking(request, _then(request))
    form = HoldForm([one.id for one in taking.job.components], request.POST)
    if not form.is_valid():
        taking.misses(form)
        return taking.answer()
    given = form.cleaned_data
    deed = HoldSaid(
        pieces=(ComponentId(given["piece"]),),
        said=given["said"].strip(),
        by=given["by"].strip(),
        decider=Decider(given["decider"]),
        at=taking.job.now,
    )
    values = {"piece": given["piece"], "decider": given["decider"], "by": deed.by}
    taking.keep("later.held", deed, about=deed.pieces, values=values)
    return taking.answer()


@require_POST
def handover(request: HttpRequest) -> HttpResponse:
    """Take in who handed over to whom."""
    taking, form = Taking(request, _then(request)), HandoverForm(request.POST)
    if not form.is_valid():
        taking.misses(form)
        return taking.answer()
    given = form.cleaned_data
    deed = HandedOver(
        giver=given["giver"].strip(),
        taker=given["taker"].strip(),
        exceptions=tuple(_left(request)),
        said=given["said"].strip(),
    )
    count = len({one for _, pieces in deed.exceptions for one in pieces})
    values = {"giver": deed.giver, "taker": deed.taker, "n": str(count)}
    taking.keep("web.handover.signed", deed, values=values)
    return taking.answer()


def _left(request: HttpRequest) -> Iterator[tuple[str, tuple[ComponentId, ...]]]:
    """Return what was not on its hook: as the page showed it, else as it is now."""
    if "left" not in request.POST:
        for why, some in answers_of(request).handover.exceptions:
            yield why.value, tuple(one.id for one in some)
    known = {one.id: one.id for one in answers_of(request).job.components}
    for text in request.POST.getlist("left"):
        name, _, pieces = text.partition(":")
        if name in set(Left):
            yield name, tuple(known[ComponentId(one)] for one in pieces.split(",") if one in known)


def _then(request: HttpRequest) -> Job:
    """Return the job with the clock put back to when the form was filled in."""
    job = answers_of(request).job
    told = told_of(request, job)
    moment = true_moment(told) if told else job.now
    return replace(job, now=local(moment, job).replace(second=0, microsecond=0))


def _felt(request: HttpRequest, points: object) -> object:
    """Let one answer for every point stand where it was given so."""
    given = request.POST.copy()
    for point in points:  # type: ignore[attr-defined]
        given.setdefault(str(point), given.get("every", ""))
    return given


def _call(taking: Taking) -> Call | None:
    name = taking.request.POST.get("call", "")
    found = next((one for one in taking.job.calls if one.id == name), None)
    if found is None:
        taking.refuse("tasks.no_such_thing", id=name)
    return found


def _same_or_new(job: Job, given: dict[str, object]) -> Call:
    """Return the call that is written down already under this name and moment, or a new one."""
    made = new_call(job, given)
    same = (
        one for one in job.calls if (one.title, _minute(one.at)) == (made.title, _minute(made.at))
    )
    return next(same, made)


def _minute(moment: dt.datetime) -> dt.datetime:
    return moment.astimezone(dt.UTC).replace(second=0, microsecond=0)


def _people(taking: Taking, found: Call) -> None:
    for one in found.people:
        form = WhereForm(taking.request.POST, prefix=f"at-{one.member}")
        if not form.is_valid():
            taking.misses(form)
            continue
        presence = form.presence(MemberId(one.member))
        if presence is not None:
            deed = PersonSaid(call=found.id, presence=_with_worn(presence, one))
            taking.keep("web.call.person_kept", deed, about=(found.id, one.member),
                        values={"member": one.member}, part=one.member)  # fmt: skip


def _with_worn(said: Presence, before: Presence) -> Presence:
    return replace(said, worn=before.worn, role=before.role)


def _hazards(taking: Taking, name: CallId, *, part: str = "", empty: bool = False) -> None:
    form = HazardsForm([str(rule.id) for rule in RULES.contaminants()], taking.request.POST)
    if not form.is_valid():
        taking.misses(form)
        return
    found = form.hazards(actor_of(taking.request))
    if found or empty:
        title = next((one.title for one in taking.job.calls if one.id == name), name)
        taking.keep("web.call.hazards_kept", HazardsSaid(call=name, hazards=found), about=(name,),
                    values={"title": title}, part=part)  # fmt: skip
