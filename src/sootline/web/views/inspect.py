"""Who looks at which piece today, point by point, and what came of it?"""

from dataclasses import replace

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.http import urlencode
from django.views.decorators.http import require_http_methods, require_safe

from sootline.core.basis import BadInputError, Fault
from sootline.core.gear import Component, Life, find_kind
from sootline.core.job.jobs import Job
from sootline.core.upkeep.inspections import (
    Absent,
    Inspection,
    InspectionDay,
    InspectionKind,
    Judged,
    list_points,
)
from sootline.core.upkeep.inspections.rows import TypedDay
from sootline.paper.inspection_sheet import print_inspection_sheet
from sootline.tasks.inspect_gear import CheckList, judge_one, list_checks
from sootline.tasks.inspection_sheet import list_inspections, rows_of, type_in_inspections
from sootline.tasks.list_due import civil_day
from sootline.tasks.year_deeds import YearFact
from sootline.web.answers import Answers, answers_of
from sootline.web.entries.inspection import DayForm, InspectionForm, TypedForm
from sootline.web.reading.checks import flaws_on
from sootline.web.reading.inspections import (
    asked_of,
    read_days,
    read_due,
    read_one_day,
)
from sootline.web.reading.outlines import figures_of
from sootline.web.reports import actor_of, report
from sootline.web.tongue import language_of
from sootline.web.views.paper import as_pdf, page_of
from sootline.web.views.photos import photo_of
from sootline.wiring.rules import RULES
from sootline.words import say

_GET_POST = require_http_methods(["GET", "HEAD", "POST"])
_SPARES = "-"


@require_safe
def inspect(request: HttpRequest) -> HttpResponse:
    """Show the days there are, what is due, and a field for any one piece."""
    answers = answers_of(request)
    asked, kind = request.GET.get("q", "").strip(), request.GET.get("kind", "routine")
    if asked:
        found = _piece(answers.job, asked)
        if found is not None and kind in set(InspectionKind):
            return redirect("inspect-one", kind=kind, piece=found.id)
        messages.error(request, say("year.inspect.no_piece", {"piece": asked},
                                    lang=language_of(request)))  # fmt: skip
    facts = {
        "days": read_days(answers),
        "due": read_due(answers.due),
        "single": _single(answers),
        "kinds": list(InspectionKind),
        "kind": kind,
        "asked": asked,
    }
    return render(request, "inspect/inspect.html", facts)


@_GET_POST
def one(request: HttpRequest, kind: str, piece: str) -> HttpResponse:
    """Ask what a named person saw at each point of one piece."""
    answers = answers_of(request)
    job, component = answers.job, _piece(answers.job, piece)
    asked = _asked(job, kind, component)
    if component is None or asked is None:
        raise Http404
    form = InspectionForm(asked, flaws_on(component), request.POST or None)
    photo = photo_of(request, form) if request.method == "POST" and form.is_valid() else ""
    if request.method == "POST" and form.is_valid():
        made = form.inspection(component, job.now, photo)
        judged = judge_one(RULES, job, made)
        if report(request, _kept(judged), YearFact(fact=made), about=(piece,),
                  values=_values(component, made, judged)):  # fmt: skip
            return _onwards(job, kind, piece)
    facts = {
        "piece": component,
        "form": form,
        "kind": kind,
        "questions": asked.questions,
        "points": list(form.points()),
        "tests": list(form.tests()),
        "flaws": [flaw.value for flaw in flaws_on(component)],
        "figures": figures_of(component.kind),
        "asked": asked_of(answers, InspectionKind(kind), component),
        "by": form.data.get("by", actor_of(request)),
    }
    return render(request, "inspect/one.html", facts, status=422 if form.errors else 200)


@_GET_POST
def plan_day(request: HttpRequest) -> HttpResponse:
    """Ask for a day on which many pieces are inspected, each by itself."""
    job = answers_of(request).job
    owners = list(dict.fromkeys(one.owner or _SPARES for one in job.components))
    elements = list(dict.fromkeys(find_kind(one.kind).element.value for one in job.components))
    form = DayForm(owners, elements, request.POST or None)
    if request.method == "POST" and form.is_valid():
        day = _day(job, form)
        values = {"kind": day.kind.value, "n": str(len(day.planned))}
        if day.planned and report(request, "year.inspect.planned", YearFact(fact=day),
                                  values=values):  # fmt: skip
            return redirect("inspect-day", kind=day.kind.value, on=day.on.isoformat())
        if not day.planned:
            messages.error(request, say("year.inspect.nothing_of_it", lang=language_of(request)))
    facts = {"form": form, "owners": owners, "elements": elements, "kinds": list(InspectionKind)}
    return render(request, "inspect/plan.html", facts, status=422 if form.errors else 200)


@_GET_POST
def day(request: HttpRequest, kind: str, on: str) -> HttpResponse:
    """Show one day's pieces in a row; take a number, or a piece that is not there."""
    answers = answers_of(request)
    planned = _planned(answers.job, kind, on)
    asked = request.GET.get("q", "").strip()
    if asked:
        found = _piece(answers.job, asked)
        if found is not None:
            return redirect("inspect-one", kind=kind, piece=found.id)
        messages.error(request, say("year.inspect.no_piece", {"piece": asked},
                                    lang=language_of(request)))  # fmt: skip
    if request.method == "POST":
        piece = _piece(answers.job, request.POST.get("piece", ""))
        if piece is None or piece.id not in planned.planned:
            raise Http404
        why = request.POST.get("why", "").strip()[:80]
        others = tuple(one for one in planned.absent if one.component != piece.id)
        said = replace(planned, absent=(*others, Absent(component=piece.id, why=why)))
        values = {"kind": str(piece.kind), "piece": str(piece.id), "why": why or "-"}
        report(request, "year.inspect.absent", YearFact(fact=said), about=(piece.id,),
               values=values)  # fmt: skip
        return redirect("inspect-day", kind=kind, on=on)
    is_today = planned.on == civil_day(answers.job)
    facts = {"day": read_one_day(answers, planned), "asked": asked, "is_today": is_today}
    return render(request, "inspect/day.html", facts)


@require_safe
def sheet(request: HttpRequest, kind: str, on: str) -> HttpResponse:
    """Print today's pieces to tick off, point by point, on paper."""
    answers = answers_of(request)
    planned = _of_today(answers.job, kind, on)
    groups = list_inspections(RULES, answers.job, planned.kind)
    pdf = print_inspection_sheet(planned.kind, groups, page_of(request, answers))
    return as_pdf(pdf, f"{kind}-{on}")


@_GET_POST
def typed(request: HttpRequest, kind: str, on: str) -> HttpResponse:
    """Take in what was ticked on paper, a row for each piece; no row stands for many."""
    job = answers_of(request).job
    planned = _of_today(job, kind, on)
    form = TypedForm(request.POST or None)
    faults: tuple[Fault, ...] = ()
    if request.method == "POST" and form.is_valid():
        given = form.cleaned_data
        try:
            day = type_in_inspections(RULES, job, given["rows"], planned.kind,
                                      by=given["by"].strip(), at=job.now)  # fmt: skip
        except BadInputError as error:
            faults = error.faults
        else:
            _keep_rows(request, job, planned, day)
            return redirect("inspect-day", kind=kind, on=on)
    facts = {
        "day": planned,
        "form": form,
        "faults": faults,
        "rows": rows_of(list_inspections(RULES, job, planned.kind)),
        "by": actor_of(request),
    }
    refused = bool(form.errors or faults)
    return render(request, "inspect/typed.html", facts, status=422 if refused else 200)


def _keep_rows(request: HttpRequest, job: Job, planned: InspectionDay, typed: TypedDay) -> None:
    """Keep each row by itself, so that each can be taken back by itself."""
    pieces = {one.id: one for one in job.components}
    absent = {one.component: one for one in (*planned.absent, *typed.day.absent)}
    if typed.day.absent:
        said = replace(planned, absent=tuple(absent.values()))
        values = {"n": str(len(typed.day.absent))}
        report(request, "year.inspect.absent_many", YearFact(fact=said), values=values,
               mark="-a")  # fmt: skip
    for place, made in enumerate(typed.inspections):
        component = pieces[made.component]
        judged = judge_one(RULES, job, made)
        report(request, _kept(judged), YearFact(fact=made), about=(made.component,),
               values=_values(component, made, judged), mark=f"-{place}")  # fmt: skip


def _of_today(job: Job, kind: str, on: str) -> InspectionDay:
    planned = _planned(job, kind, on)
    if planned.on != civil_day(job):
        raise Http404
    return planned


def _single(answers: Answers) -> list[tuple[Inspection, Judged]]:
    """List the inspections outside of any day, the newest first."""
    judged = list(answers.inspected.single)
    planned = {(one.kind, one.on) for one in answers.job.upkeep.inspection_days}
    made = [one for one in answers.job.upkeep.inspections
            if (one.kind, civil_day(replace(answers.job, now=one.at))) not in planned]  # fmt: skip
    return list(reversed(list(zip(made, judged, strict=False))))[:20]


def _asked(job: Job, kind: str, component: Component | None) -> CheckList | None:
    if component is None or kind not in set(InspectionKind):
        return None
    return next((one for one in list_checks(RULES, job, component.id) if one.kind == kind), None)


def _kept(judged: Judged) -> str:
    return "year.inspect.kept_next" if judged.next_due else "year.inspect.kept"


def _values(component: Component, made: Inspection, judged: Judged) -> dict[str, str]:
    return {
        "kind": str(component.kind),
        "piece": str(component.id),
        "by": made.by,
        "result": judged.result.value,
        "next": str(judged.next_due or "-"),
    }


def _onwards(job: Job, kind: str, piece: str) -> HttpResponse:
    """Go to the next piece of today's day, or back to the list."""
    today = civil_day(job)
    for planned in job.upkeep.inspection_days:
        if planned.kind == kind and planned.on == today and piece in planned.planned:
            return redirect("inspect-day", kind=kind, on=today.isoformat())
    response: HttpResponse = redirect("inspect")
    response["Location"] += "?" + urlencode({"kind": kind})
    return response


def _day(job: Job, form: DayForm) -> InspectionDay:
    given = form.cleaned_data
    kind = InspectionKind(given["kind"])
    return InspectionDay(
        kind=kind,
        on=civil_day(job),
        planned=tuple(
            one.id
            for one in job.components
            if (one.owner or _SPARES) in given["owners"]
            and find_kind(one.kind).element.value in given["elements"]
            and one.state.life not in (Life.RETIRED, Life.DISPOSED)
            and list_points(one.kind, kind)
        ),
    )


def _planned(job: Job, kind: str, on: str) -> InspectionDay:
    for planned in job.upkeep.inspection_days:
        if planned.kind == kind and planned.on.isoformat() == on:
            return planned
    raise Http404


def _piece(job: Job, asked: str) -> Component | None:
    """Return the piece of a number as it is typed or scanned."""
    plain = asked.strip().casefold()
    return next((one for one in job.components if one.id.casefold() == plain), None)
