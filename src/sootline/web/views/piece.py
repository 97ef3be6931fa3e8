"""Which piece is it, where does it stand, and what was its life?"""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_safe

from sootline.core.basis import ComponentId
from sootline.web.answers import answers_of
from sootline.web.looking import note_looks
from sootline.web.reading.marks import mark_of
from sootline.web.reading.piece import read_piece
from sootline.web.reading.soil import read_washes
from sootline.web.tongue import language_of
from sootline.words import name

_MOST = 100


@require_safe
def find(request: HttpRequest) -> HttpResponse:
    """Find pieces by number, owner, kind, set, lot or serial; one alone opens by itself."""
    answers, lang = answers_of(request), language_of(request)
    asked = request.GET.get("q", "").strip()
    words = asked.casefold().split()
    decisions = {one.component: one for one in answers.decided.decisions}
    found = []
    for one in answers.job.components if words else ():
        label = one.label
        texts = (
            one.id,
            one.owner,
            one.set,
            label.lot,
            label.serial,
            name("kind", one.kind, lang=lang),
        )
        whole = " ".join(text.casefold() for text in texts if text)
        if all(word in whole for word in words):
            found.append((one, mark_of(one, decisions[one.id])))
    exact = [one for one, _ in found if one.id.casefold() == asked.casefold()]
    if len(exact) == 1 or len(found) == 1:
        return redirect("piece", piece=(exact or [found[0][0]])[0].id)
    facts = {"asked": asked, "found": found[:_MOST], "many": len(found)}
    return render(request, "piece/find.html", facts)


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
    return render(request, "piece/piece.html", {"shown": shown, "washes": washes})
