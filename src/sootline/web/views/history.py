"""What was reported, when, by whom; is the record whole; and how does it leave the program?"""

from collections.abc import Iterable

from django.http import Http404, HttpRequest, HttpResponse, StreamingHttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from sootline.core.basis import ComponentId
from sootline.tasks.desk import Report
from sootline.web.answers import Answers, answers_of
from sootline.web.reading.clock import Clock, clock_of
from sootline.web.tongue import language_of
from sootline.wiring.store_desk import report_of
from sootline.wiring.verifying import entries_about, export_record, verify_record
from sootline.words import say

_MOST = 200
Line = tuple[str, str, str, tuple[str, ...]]


@require_safe
def history(request: HttpRequest) -> HttpResponse:
    """List reports, the newest first; a piece's number finds its whole life."""
    answers, lang = answers_of(request), language_of(request)
    clock = clock_of(answers.job, lang)
    asked = request.GET.get("q", "").strip()
    whole = _whole_life(answers, asked)
    lines = list(_lines(whole or answers.desk.reports, clock))
    found = lines if whole else [line for line in lines if _names(line, asked)]
    return render(request, "history/history.html", {"asked": asked, "lines": found[:_MOST]})


@require_safe
def verify(request: HttpRequest) -> HttpResponse:
    """Read every entry again, and say what the chain and the anchors show."""
    found = verify_record()
    facts = {} if found is None else {"result": found[0], "anchors": found[1]}
    return render(request, "history/verify.html", facts)


@require_safe
def export(request: HttpRequest) -> StreamingHttpResponse:  # noqa: ARG001
    """Send the record as lines of JSON, with an anchor; `sootline ledger verify` reads it."""
    lines = export_record()
    if lines is None:
        raise Http404
    response = StreamingHttpResponse(lines, content_type="application/jsonl")
    response.headers["Content-Disposition"] = 'attachment; filename="record.jsonl"'
    return response


def _whole_life(answers: Answers, asked: str) -> tuple[Report, ...]:
    """Return everything that was ever reported of a piece, where its number was typed."""
    known = {str(one.id) for one in answers.job.components}
    if asked not in known:
        return ()
    return tuple(report_of(one) for one in entries_about(ComponentId(asked)))


def _lines(reports: Iterable[Report], clock: Clock) -> Iterable[Line]:
    return (
        (clock.day(one.at), one.by or "", say(one.message, one.values, lang=clock.lang), one.about)
        for one in reversed(tuple(reports))
    )


def _names(line: Line, asked: str) -> bool:
    return asked.casefold() in " ".join((*line[:3], *line[3])).casefold()
