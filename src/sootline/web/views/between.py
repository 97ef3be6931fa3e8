"""What is to be done between calls, and where does one go for it?"""

from dataclasses import dataclass

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from sootline.core.intervals import Matter, Standing
from sootline.tasks.year_facts import is_over
from sootline.web.answers import Answers, answers_of
from sootline.web.reading.saying import Said, said

_LATE = (Standing.OVERDUE,)
_SOON = (Standing.OVERDUE, Standing.TODAY, Standing.SOON)
_NOW = (Standing.OVERDUE, Standing.TODAY)
_INSPECTED = (Matter.ADVANCED_INSPECTION, Matter.LINER_INSPECTION)


@dataclass(frozen=True, kw_only=True)
class Job:
    """One thing to do between calls.

    Args:
        route: where it is done.
        now: what waits.
        presses: whether somebody should look today.
    """

    route: str
    now: Said
    presses: bool


@require_safe
def between(request: HttpRequest) -> HttpResponse:
    """List what is done between calls, each with what waits."""
    return render(request, "between/between.html", {"jobs": list(_jobs(answers_of(request)))})


def _jobs(answers: Answers) -> list[Job]:
    year, today = answers.job.upkeep, answers.today
    notices = answers.recalls.notices
    unseen = sum(len(one.closure.unseen) + len(one.closure.waiting) for one in notices)
    out = sum(len(one.reconciled.missing) for one in answers.contractor.shipments)
    undecided = sum(1 for one in year.repairs if one.decided is None and not is_over(one))
    chores = sum(1 for one in today.chores if one.standing in _NOW)
    due = sum(
        1 for one in answers.due.items if one.due.matter in _INSPECTED and one.due.standing in _NOW
    )
    lines = (
        ("due-today", "due", len(_pieces(answers, _SOON))),
        ("inspect", "inspect", due),
        ("recalls", "recalls", unseen),
        ("contractor", "contractor", out),
        ("repairs", "repairs", undecided),
        ("stores", "stores", len(today.stores) + chores),
        ("fit", "fit", len(today.refits)),
        ("due-month", "month", len(_pieces(answers, _LATE))),
    )
    return [
        Job(route=route, now=said(f"year.now.{word}", n=n), presses=n > 0)
        for route, word, n in lines
    ]


def _pieces(answers: Answers, standings: tuple[Standing, ...]) -> frozenset[str]:
    """Return the pieces that have work due; whether each can be taken is a longer question."""
    return frozenset(
        one.component.id
        for one in answers.due.items
        if one.due.matter is not Matter.RETIREMENT and one.due.standing in standings
    )
