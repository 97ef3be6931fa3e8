"""Which due pieces can be taken today, what is overdue and why, and where is the calendar?"""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_safe

from sootline.files.calendar_out import CalendarEntry, calendar_text
from sootline.paper.month import print_month
from sootline.web.answers import answers_for, answers_of
from sootline.web.tongue import language_of
from sootline.web.views.paper import as_pdf, page_of
from sootline.wiring.calendar_links import link_of, owner_of
from sootline.words import say


@require_safe
def today(request: HttpRequest) -> HttpResponse:
    """Show which due pieces can be taken today, and the swap that keeps each seat filled."""
    answers = answers_of(request)
    address = reverse("calendar", args=[link_of(request.user)])
    facts = {"day": answers.today, "feed": request.build_absolute_uri(address)}
    return render(request, "due/today.html", facts)


@require_safe
def month(request: HttpRequest) -> HttpResponse:
    """Show what is overdue by cause, each cause with its written definition."""
    answers = answers_of(request)
    facts = {
        "sheet": answers.today.overdue,
        "kinds": {one.id: one.kind for one in answers.job.components},
        "department": answers.job.department.name,
    }
    return render(request, "due/month.html", facts)


@require_safe
def month_sheet(request: HttpRequest) -> HttpResponse:
    """Print the table for the chief."""
    answers = answers_of(request)
    return as_pdf(print_month(answers.today.overdue, page_of(request, answers)), "overdue")


@require_safe
def calendar(request: HttpRequest, token: str) -> HttpResponse:
    """Answer a calendar program that has somebody's private address, and nobody else."""
    owner = owner_of(token)
    if owner is None:
        raise Http404
    answers, lang = answers_for(owner), language_of(request)
    entries = [
        CalendarEntry(
            uid=f"{one.id}@sootline",
            day=one.day,
            summary=say(
                "year.calendar.entry",
                {"matter": one.matter.value, "kind": one.kind, "piece": one.component},
                lang=lang,
            ),
            description=one.owner,
        )
        for one in answers.today.calendar
    ]
    job = answers.job
    text = calendar_text(entries, name=job.department.name, stamp=job.now)
    return HttpResponse(text, content_type="text/calendar; charset=utf-8")
