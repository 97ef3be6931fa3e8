"""What was done against soil on one piece, and what can nobody claim of it?"""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from sootline.web.answers import answers_of
from sootline.web.looking import note_looks
from sootline.web.reading.soil import read_soil
from sootline.web.tongue import language_of
from sootline.wiring.practice import load_reductions


@require_safe
def soil(request: HttpRequest, piece: str) -> HttpResponse:
    """Show the record of one piece; what was done on scene tells that its wearer was there."""
    answers, lang = answers_of(request), language_of(request)
    component = next((one for one in answers.job.components if one.id == piece), None)
    if component is None:
        raise Http404
    note_looks(request, [component.owner], "piece")
    shown = read_soil(component, answers, load_reductions(), lang)
    return render(request, "piece/soil.html", {"shown": shown, "component": component})
