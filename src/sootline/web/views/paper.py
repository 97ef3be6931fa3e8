"""Which sheets can be printed, and what is on them?"""

from collections.abc import Callable

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from sootline.paper.check_sheets import print_check_sheets
from sootline.paper.handover import print_handover
from sootline.paper.hold_labels import print_hold_labels
from sootline.paper.load_cards import print_load_cards
from sootline.paper.page import Page, PaperSize
from sootline.paper.radio import print_radio_sheet
from sootline.paper.tags import print_tags
from sootline.tasks.check_sheets import list_routine_look
from sootline.tasks.hold_labels import list_hold_labels
from sootline.web.answers import Answers, answers_of
from sootline.web.reading.handover import names_of
from sootline.web.tongue import language_of
from sootline.wiring.own_record import anchor_now
from sootline.words import languages


@require_safe
def paper(request: HttpRequest) -> HttpResponse:
    """List the sheets."""
    lang = language_of(request)
    facts = {
        "sheets": list(_SHEETS),
        "needs_plan": _NEEDS_PLAN,
        "plan": answers_of(request).desk.plan,
        "sizes": [size.value for size in PaperSize],
        "seconds": [one for one in languages() if one != lang],
    }
    return render(request, "paper/paper.html", facts)


@require_safe
def sheet(request: HttpRequest, sheet: str) -> HttpResponse:
    """Print one sheet as PDF."""
    answers = answers_of(request)
    if sheet not in _SHEETS or (sheet in _NEEDS_PLAN and answers.desk.plan is None):
        raise Http404
    return as_pdf(_SHEETS[sheet](answers, page_of(request, answers)), sheet)


def as_pdf(data: bytes, name: str) -> HttpResponse:
    """Return a PDF that a browser shows."""
    response = HttpResponse(data, content_type="application/pdf")
    response.headers["Content-Disposition"] = f'inline; filename="{name}.pdf"'
    return response


def page_of(request: HttpRequest, answers: Answers) -> Page:
    """Return the paper somebody asked for: size, language, a second language."""
    lang = language_of(request)
    size, second = request.GET.get("size", "a4"), request.GET.get("second", "")
    return Page(
        printed_at=answers.job.now,
        zone=answers.job.department.zone,
        department=answers.job.department.name,
        size=PaperSize(size) if size in set(PaperSize) else PaperSize.A4,
        languages=(lang, second) if second in languages() and second != lang else (lang,),
        record=anchor_now(),
    )


def _load_cards(answers: Answers, page: Page) -> bytes:
    return print_load_cards(answers.cards, page)


def _hold_labels(answers: Answers, page: Page) -> bytes:
    return print_hold_labels(list_hold_labels(answers.job, answers.decided), page)


def _handover(answers: Answers, page: Page) -> bytes:
    plan = answers.desk.plan
    assert plan is not None  # the sheet is not offered without one
    return print_handover(
        answers.handover, page, plan=plan, now=answers.job.now, names=names_of(answers.desk)
    )


def _check_sheets(answers: Answers, page: Page) -> bytes:
    routine = list_routine_look(answers.job, answers.decided)
    return print_check_sheets(answers.after_wash, routine, page)


def _radio(answers: Answers, page: Page) -> bytes:
    return print_radio_sheet(answers.ride.riding.now, answers.ride.now, page)


def _tags(answers: Answers, page: Page) -> bytes:
    return print_tags(answers.job.components, page)


_NEEDS_PLAN = ("load-cards", "handover")
_SHEETS: dict[str, Callable[[Answers, Page], bytes]] = {
    "load-cards": _load_cards,
    "hold-labels": _hold_labels,
    "check-sheets": _check_sheets,
    "handover": _handover,
    "radio": _radio,
    "tags": _tags,
}
