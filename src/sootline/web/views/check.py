"""After the wash: is each piece dry to a named hand, what was seen, is it whole again?"""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods, require_safe

from sootline.core.basis import ComponentId
from sootline.core.care import Fate
from sootline.core.exposure.calls import Answer
from sootline.core.gear import CareStage, find_kind
from sootline.core.rebuild import Built, Next, Verdict
from sootline.tasks.deeds import Checked, PutTogether
from sootline.tasks.floor_deeds import Ruled
from sootline.web.answers import Answers, answers_of
from sootline.web.entries.floor import RULINGS, RulingForm
from sootline.web.forms import BuildForm, CheckForm
from sootline.web.reading.checks import (
    check_of,
    flaws_on,
    list_builds,
    read_check_room,
    read_points,
)
from sootline.web.reading.outlines import figures_of
from sootline.web.reports import actor_of, report
from sootline.web.views.photos import photo_of

_GET_POST = require_http_methods(["GET", "HEAD", "POST"])
_BEFORE = (CareStage.TO_WASH, CareStage.WORN, CareStage.CHECKED, CareStage.IN_WASHER)


@require_safe
def room(request: HttpRequest) -> HttpResponse:
    """List what waits for a hand, and what waits to be put together."""
    answers = answers_of(request)
    shown = read_check_room(
        answers.job, answers.decided.decisions, answers.rebuilt.pieces, _still_to_wash(answers)
    )
    return render(request, "check/room.html", {"room": shown})


@_GET_POST
def one(request: HttpRequest, piece: str) -> HttpResponse:
    """Ask what a hand felt and an eye saw on one piece."""
    job = answers_of(request).job
    component = next((one for one in job.components if one.id == piece), None)
    if component is None:
        raise Http404
    points = find_kind(component.kind).touch_points
    form = CheckForm([str(point) for point in points], request.POST or None)
    photo = photo_of(request, form) if request.method == "POST" and form.is_valid() else ""
    if request.method == "POST" and form.is_valid():
        check = check_of(component.id, points, form, job, photo=photo)
        values = {"kind": str(component.kind), "piece": str(component.id), "by": check.by}
        if report(request, "web.check.kept", Checked(check=check),
                  about=(piece,), values=values):  # fmt: skip
            return _after_check(request, piece)
    facts = {
        "piece": component,
        "form": form,
        "points": read_points(points, form),
        "answers": [Answer.YES.value, Answer.NO.value],
        "flaws": [flaw.value for flaw in flaws_on(component)],
        "figures": figures_of(component.kind),
        "by": form.data.get("by", actor_of(request)),
    }
    return render(request, "check/one.html", facts, status=422 if form.errors else 200)


@_GET_POST
def then(request: HttpRequest, piece: str) -> HttpResponse:
    """Ask a person what comes next for a piece whose check found something."""
    answers = answers_of(request)
    component = next((one for one in answers.job.components if one.id == piece), None)
    if component is None:
        raise Http404
    form = RulingForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        given = form.cleaned_data
        deed = Ruled(
            piece=component.id,
            next=Next(given["next"]),
            by=given["by"].strip(),
            said=given["said"].strip(),
        )
        values = {"kind": str(component.kind), "piece": piece, "next": given["next"],
                  "by": deed.by}  # fmt: skip
        if report(request, "web.then.kept", deed, about=(piece,), values=values):
            return redirect("check")
    verdict = _verdict(answers, piece)
    facts = {
        "piece": component,
        "form": form,
        "verdict": verdict,
        "proposed": verdict.next.value if verdict else request.GET.get("next", ""),
        "rulings": [one.value for one in RULINGS],
        "by": actor_of(request),
    }
    return render(request, "check/then.html", facts, status=422 if form.errors else 200)


def _verdict(answers: Answers, piece: str) -> Verdict | None:
    """Return what a check left open came to; none where it passed, or nobody checked."""
    checked = {one.component for one in answers.job.checks}
    found = next((one for one in answers.rebuilt.pieces if one.component == piece), None)
    if found is None or piece not in checked or found.next is Next.BACK:
        return None
    return found


def _after_check(request: HttpRequest, piece: str) -> HttpResponse:
    """Go on to what comes next where a person must decide it, else back to the room."""
    verdict = _verdict(answers_of(request), piece)
    if verdict is not None and verdict.next in (Next.REPAIR, Next.OUT, Next.DRY_ON):
        return redirect("check-then", piece=piece)
    return redirect("check")


@_GET_POST
def build(request: HttpRequest, key: str) -> HttpResponse:
    """Ask which parts were fitted together into one element."""
    answers = answers_of(request)
    found = next((one for one in list_builds(answers.job) if one.key == key), None)
    if found is None:
        raise Http404
    form = BuildForm([str(part.id) for part in found.parts], request.POST or None)
    if request.method == "POST" and form.is_valid():
        given = form.cleaned_data
        built = Built(
            element=found.element,
            parts=tuple(ComponentId(part) for part in given["parts"]),
            routed_by=given["routed_by"].strip() or None,
        )

        deed = PutTogether(built=built, by=given["by"].strip())
        values = {"element": found.element.value, "owner": found.owner}
        if report(request, "web.check.built", deed, about=tuple(given["parts"]), values=values):
            return redirect("check")
    verdicts = [one for one in answers.rebuilt.elements
                if set(one.built.parts) & {part.id for part in found.parts}]  # fmt: skip
    facts = {"found": found, "form": form, "verdicts": verdicts, "by": actor_of(request)}
    return render(request, "check/build.html", facts, status=422 if form.errors else 200)


def _still_to_wash(answers: Answers) -> int:
    stages = {one.id: one.state.stage for one in answers.job.components}
    return sum(
        one.fate is Fate.WASH and stages[one.component] in _BEFORE
        for one in answers.decided.decisions
    )
