"""The page to keep open: everything that is written down in a night, for when no signal comes."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from sootline.core.exposure.calls import Answer
from sootline.core.gear import CareStage, find_kind
from sootline.core.job.jobs import Job
from sootline.core.rebuild import Flaw
from sootline.core.rulebook.contaminants import Knowledge
from sootline.tasks.load_cards import LoadCard
from sootline.web.answers import answers_of
from sootline.web.forms import PLACES
from sootline.web.later.forms import DECIDERS
from sootline.web.reading.calls import USUAL
from sootline.web.reading.clock import clock_of
from sootline.web.reading.questions import piece_of, read_question
from sootline.web.reports import actor_of
from sootline.web.tongue import language_of

# What somebody may come to feel tonight: everything that is not at rest.
_ON_ITS_WAY = frozenset(CareStage) - {CareStage.CHECKED}


@require_safe
def pocket(request: HttpRequest) -> HttpResponse:
    """Show every form of a night on one page."""
    answers, lang = answers_of(request), language_of(request)
    job = answers.job
    clock = clock_of(job, lang)
    facts = {
        "crews": _crews(job),
        "places": PLACES,
        "now": f"{clock.now:%H:%M}",
        "answers": list(Answer),
        "usual": [(name, _KNOWN) for name in USUAL],
        "loads": [(card, _pieces(card), _dries(card)) for card in answers.cards],
        "steps": ("start", "end", "hang", "by-hand"),
        "pieces": [one for one in job.components if one.state.stage in _ON_ITS_WAY],
        "points": _points(job),
        "flaws": [flaw.value for flaw in Flaw],
        "by": actor_of(request),
        "asked": [(read_question(one, clock), piece_of(one)) for one in answers.desk.questions],
        "deciders": [one.value for one in DECIDERS],
        "left": answers.handover.exceptions,
        "exceptions": sum(len(some) for _, some in answers.handover.exceptions),
    }
    return render(request, "later/pocket.html", facts)


_KNOWN = tuple(
    (word.value, False) for word in (Knowledge.KNOWN, Knowledge.SUSPECTED, Knowledge.UNKNOWN)
)


def _crews(job: Job) -> list[tuple[str, list[str]]]:
    names = dict.fromkeys(member.crew for member in job.members)
    return [(name, [one.id for one in job.members if one.crew == name]) for name in names]


def _pieces(card: LoadCard) -> list[str]:
    return [component.id for component in card.contents.components]


def _dries(card: LoadCard) -> str:
    return ", ".join(where for where, _ in card.contents.drying)


def _points(job: Job) -> list[tuple[str, list[str]]]:
    """List where a hand goes, kind by kind, of what is on its way."""
    kinds = dict.fromkeys(one.kind for one in job.components if one.state.stage in _ON_ITS_WAY)
    return [(kind, [str(point) for point in find_kind(kind).touch_points]) for kind in kinds]
