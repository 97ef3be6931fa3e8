"""Whom does a recall mean, who wears it now, who has read it by eye, and is it done with?"""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from sootline.core.exposure.calls import Answer
from sootline.core.gear import KINDS
from sootline.core.upkeep.recalls import Affected, NoticeClosed, Step
from sootline.paper.recall_list import print_recall_list
from sootline.tasks.match_recall import Concerned, NoticeResult, RecallResult
from sootline.tasks.year_deeds import Fact, YearFact
from sootline.web.answers import Answers, answers_of
from sootline.web.entries.recall import ActionForm, NoticeForm, SightingForm
from sootline.web.reading.saying import Resting, resting
from sootline.web.reports import actor_of, report
from sootline.web.views.paper import as_pdf, page_of

_GET_POST = require_http_methods(["GET", "HEAD", "POST"])


@require_safe
def recalls(request: HttpRequest) -> HttpResponse:
    """List notices, open ones first."""
    answers = answers_of(request)
    closed = {one.notice: one for one in answers.job.upkeep.closed}
    listed = [(one, closed.get(one.notice.id)) for one in answers.recalls.notices]
    facts = {"notices": sorted(listed, key=lambda pair: pair[1] is not None)}
    return render(request, "recalls/recalls.html", facts)


@_GET_POST
def new(request: HttpRequest) -> HttpResponse:
    """Take a notice in as it is typed from its text."""
    form = NoticeForm([kind.id for kind in KINDS], request.POST or None)
    if request.method == "POST" and form.is_valid():
        notice = form.notice()
        if report(request, "year.recalls.came", YearFact(fact=notice),
                  values={"id": notice.id}):  # fmt: skip
            return redirect("recall", notice=notice.id)
    facts = {"form": form, "kinds": [kind.id for kind in KINDS]}
    return render(request, "recalls/new.html", facts, status=422 if form.errors else 200)


@require_safe
def recall(request: HttpRequest, notice: str) -> HttpResponse:
    """Show whom a notice means and what is left to see and to do."""
    answers = answers_of(request)
    found = _of(answers, notice)
    pieces = {one.id: one for one in answers.job.components}
    groups = [
        (affected.value, [
            (one, pieces[one.match.component], _reasons(one), _open(found, one))
            for one in found.concerned if one.match.affected is affected
        ])
        for affected in (Affected.AFFECTED, Affected.POSSIBLE, Affected.GONE)
    ]  # fmt: skip
    facts = {
        "result": found,
        "groups": [(name, listed) for name, listed in groups if listed],
        "counts": [(one.value, n) for one, n in found.counts],
        "others": found.others[:200] if request.GET.get("others") else (),
        "answers": [Answer.YES.value, Answer.NO.value, Answer.UNKNOWN.value],
        "steps": list(Step),
        "closed": next((one for one in answers.job.upkeep.closed if one.notice == notice), None),
        "by": actor_of(request),
    }
    return render(request, "recalls/recall.html", facts)


@require_safe
def sheet(request: HttpRequest, notice: str) -> HttpResponse:
    """Print whom a notice means, to walk the racks with."""
    answers = answers_of(request)
    result = RecallResult(notices=(_of(answers, notice),))
    return as_pdf(print_recall_list(result, page_of(request, answers)), f"recall-{notice}")


@require_POST
def seen(request: HttpRequest, notice: str) -> HttpResponse:
    """Keep what a named person read on a piece."""
    answers = answers_of(request)
    _of(answers, notice)
    form = SightingForm(request.POST)
    if form.is_valid():
        sighting = form.sighting(notice, answers.job)
        values = {"piece": sighting.component, "by": sighting.by}
        _keep(
            request, f"year.recalls.seen_{sighting.affected}", sighting, sighting.component, values
        )
    return redirect("recall", notice=notice)


@require_POST
def done(request: HttpRequest, notice: str) -> HttpResponse:
    """Keep what a named person did with a piece."""
    answers = answers_of(request)
    _of(answers, notice)
    form = ActionForm(request.POST)
    if form.is_valid():
        action = form.action(notice, answers.job)
        values = {"piece": action.component, "step": action.step.value, "by": action.by}
        _keep(request, "year.recalls.done", action, action.component, values)
    return redirect("recall", notice=notice)


@require_POST
def close(request: HttpRequest, notice: str) -> HttpResponse:
    """Close a notice by name; refused while anything is left to see or to do."""
    answers = answers_of(request)
    _of(answers, notice)
    by = request.POST.get("by", "").strip()[:40]
    if by:
        fact = NoticeClosed(notice=notice, by=by, at=answers.job.now)
        report(request, "year.recalls.closed", YearFact(fact=fact), values={"id": notice, "by": by})
    return redirect("recall", notice=notice)


def _keep(
    request: HttpRequest, message: str, fact: Fact, piece: str, values: dict[str, str]
) -> None:
    report(request, message, YearFact(fact=fact), about=(piece,), values=values)


def _of(answers: Answers, name: str) -> NoticeResult:
    for one in answers.recalls.notices:
        if one.notice.id == name:
            return one
    raise Http404


def _reasons(concerned: Concerned) -> tuple[Resting, ...]:
    return resting(concerned.match.reasons)


def _open(result: NoticeResult, one: Concerned) -> str:
    """Say what is left for a piece: to be seen, to be dealt with, or how it ended."""
    name, closure = one.match.component, result.closure
    if name in closure.unseen:
        return "unseen"
    if name in closure.waiting:
        return "waiting"
    if name in closure.cleared:
        return "cleared"
    return "gone" if one.match.affected is Affected.GONE else "dealt"
