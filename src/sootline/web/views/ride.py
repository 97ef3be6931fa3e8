"""Who can ride, and what is where?"""

from collections.abc import Iterable, Iterator
from itertools import groupby
from typing import cast

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.template.loader import render_to_string
from django.views.decorators.http import require_safe

from sootline.core.basis import Finding
from sootline.web.answers import answers_of
from sootline.web.reading.clock import clock_of
from sootline.web.reading.leaves import leaves_of
from sootline.web.reading.paging import Leaf, leaf_asked
from sootline.web.reading.ride import read_floor
from sootline.web.tongue import language_of
from sootline.words import say

_WALL_SECONDS = "60"


@require_safe
def grid(request: HttpRequest) -> HttpResponse:
    """Show the grid of members by components."""
    return render(request, "ride/grid.html", _floor(request))


@require_safe
def wall(request: HttpRequest) -> HttpResponse:
    """Show the grid on a wall: large, alone, drawn anew every minute, leaf after leaf."""
    floor = _floor(request)
    response = render(request, "ride/wall.html", floor)
    leaf = cast("Leaf", floor["leaf"])
    further = f"; url=?page={leaf.after or 1}" if leaf.of > 1 else ""
    response.headers["Refresh"] = _WALL_SECONDS + further
    return response


@require_safe
def radio(request: HttpRequest) -> HttpResponse:
    """Give the radio room its words, and nothing else."""
    answers, lang = answers_of(request), language_of(request)
    clock = clock_of(answers.job, lang)
    lines = [
        answers.job.department.name,
        say("web.radio.as_of", {"time": clock.day(clock.now)}, lang=lang),
        "",
        *_spoken(answers.ride.spoken, lang),
        "",
        say("riding.cli.defer", lang=lang),
    ]
    return HttpResponse("\n".join(lines) + "\n", content_type="text/plain; charset=utf-8")


def _spoken(spoken: Iterable[Finding], lang: str) -> Iterator[str]:
    """Say a crew on a line, and everything about one member on the next."""
    for member, said in groupby(spoken, key=lambda one: dict(one.values).get("member")):
        sentences = [say(one.message, one.values, lang=lang) for one in said]
        if member is not None:
            sentences.insert(0, say("riding.cli.cannot", {"member": member}, lang=lang))
        yield " ".join(sentences)


def _floor(request: HttpRequest) -> dict[str, object]:
    answers = answers_of(request)
    clock = clock_of(answers.job, language_of(request))
    crew = request.GET.get("crew", "")
    statuses = answers.ride.riding.now.crews
    leaves = leaves_of(answers.job.members, statuses) or ((),)
    leaf = leaf_asked(request.GET.get("page", ""), 1 if crew else len(leaves))
    names = {member.crew for member in answers.job.members}
    crews = leaves[leaf.number - 1] if not crew else (crew,) if crew in names else ()
    lang = language_of(request)
    floor = answers.kept(
        ("floor", lang, *crews),
        lambda: read_floor(answers.desk, answers.decided, answers.ride, clock, crews),
    )
    return {
        "job": answers.job,
        "floor": floor,
        # The same for everybody who sees this desk, until something changes.
        "grid": answers.kept(
            ("grid", lang, *crews),
            lambda: render_to_string("ride/_grid.html", {"floor": floor, "lang": lang}),
        ),
        "crew": crew,
        "leaf": leaf,
        "short": sum(not status.met for status in statuses),
        "now": clock.day(clock.now),
        "lately": [(call.title, clock.at(call.back_at or call.at)) for call in answers.job.calls],
    }
