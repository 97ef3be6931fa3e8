"""What must each piece undergo, at the least, who decides, and why?"""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from sootline.web.answers import answers_of
from sootline.web.looking import note_looks
from sootline.web.reading.needs import read_needs


@require_safe
def needs(request: HttpRequest) -> HttpResponse:
    """Show the decisions with their reasons."""
    answers = answers_of(request)
    shown = read_needs(answers.job, answers.decided)
    note_looks(request, (member for member, _ in shown.members), "needs")
    return render(request, "needs/needs.html", {"needs": shown, "job": answers.job})
