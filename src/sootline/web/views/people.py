"""Who wears what, in which sizes, and what is theirs?"""

from collections import defaultdict

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_POST, require_safe

from sootline.core.care import Fate
from sootline.core.gear import find_kind
from sootline.tasks.deeds import LookedOver
from sootline.web.answers import answers_of
from sootline.web.looking import note_looks
from sootline.web.reading.clock import clock_of
from sootline.web.reading.marks import mark_of
from sootline.web.reading.needs import read_needs
from sootline.web.reading.ride import read_floor
from sootline.web.reports import report
from sootline.web.tongue import language_of


@require_safe
def people(request: HttpRequest) -> HttpResponse:
    """List members with their measures, and the fit limits of the department."""
    job = answers_of(request).job
    dimensions = list(dict.fromkeys(key for one in job.members for key, _ in one.measures))
    rows = [
        (member, [dict(member.measures).get(dimension, "") for dimension in dimensions])
        for member in job.members
    ]
    facts = {"rows": rows, "dimensions": dimensions, "fit": job.riding.fit,
             "one_size": job.riding.one_size}  # fmt: skip
    return render(request, "people/people.html", facts)


@require_safe
def person(request: HttpRequest, member: str) -> HttpResponse:
    """Show one member's gear, element by element, and whether the member rides."""
    answers = answers_of(request)
    found = next((one for one in answers.job.members if one.id == member), None)
    if found is None:
        raise Http404
    note_looks(request, [member], "person")
    decisions = {one.component: one for one in answers.decided.decisions}
    elements: dict[str, list[object]] = defaultdict(list)
    for one in answers.job.components:
        if member in (one.owner, one.state.holder):
            piece = (one, mark_of(one, decisions[one.id]))
            elements[find_kind(one.kind).element.value].append(piece)
    clock = clock_of(answers.job, language_of(request))
    floor = read_floor(answers.desk, answers.decided, answers.ride, clock, (found.crew,))
    rows = [row for crew in floor.crews for row in crew.rows if row.member.id == member]
    facts = {
        "member": found,
        "row": rows[0],
        "elements": dict(elements),
        "needs": read_needs(answers.job, answers.decided, member),
        "to_look": [one for one in answers.job.components if one.owner == member
                    and decisions[one.id].fate is Fate.LOOK],
    }  # fmt: skip
    return render(request, "people/person.html", facts)


@require_POST
def looked(request: HttpRequest, member: str) -> HttpResponse:
    """Record that a member looked own gear over after a call, and found nothing."""
    answers = answers_of(request)
    fates = {one.component: one.fate for one in answers.decided.decisions}
    names = tuple(
        one.id
        for one in answers.job.components
        if one.owner == member and fates[one.id] is Fate.LOOK
    )
    if not names:
        raise Http404
    values = {"member": member, "n": str(len(names))}
    report(
        request,
        "web.people.looked",
        LookedOver(pieces=names),
        about=names,
        values=values,
    )
    return redirect("person", member=member)
