"""Which piece is it, where does it stand, and what was its life?"""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from sootline.core.basis import ComponentId
from sootline.web.answers import answers_of
from sootline.web.looking import note_looks
from sootline.web.reading.clock import clock_of
from sootline.web.reading.findings import read_findings
from sootline.web.reading.piece import read_piece
from sootline.web.reading.soil import read_washes
from sootline.web.tongue import language_of
from sootline.wiring.lives import checks_of


@require_safe
def one(request: HttpRequest, piece: str) -> HttpResponse:
    """Show one piece and its life."""
    answers = answers_of(request)
    judged = answers.judged
    dues = judged.dues.get(ComponentId(piece), ())
    shown = read_piece(answers.desk, piece, judged.decisions, dues, lang=language_of(request))
    if shown is None:
        raise Http404
    # Why it needs what it needs tells what its owner was in.
    note_looks(request, [shown.component.owner], "piece")
    washes = read_washes(shown.component, answers.decided.rulebook)
    clock = clock_of(answers.job, language_of(request))
    findings = read_findings(checks_of(shown.component.id, answers.job), clock)
    facts = {"shown": shown, "washes": washes, "findings": findings}
    return render(request, "piece/piece.html", facts)
