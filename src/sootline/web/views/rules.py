"""What does each text say, where was it read, and what would another edition change?"""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from sootline.core.basis import BadInputError, EditionId
from sootline.tasks.compare_rules import compare_rules
from sootline.tasks.show_rules import list_editions, show_rules
from sootline.web.answers import answers_of
from sootline.web.reading.rules import read_difference, read_topic
from sootline.web.tongue import language_of
from sootline.wiring.rules import RULES


@require_safe
def rules(request: HttpRequest) -> HttpResponse:
    """Show every number the department goes by, with its source."""
    department, lang = answers_of(request).job.department, language_of(request)
    shown = show_rules(RULES, department.edition, policy=department.policy)
    facts = {
        "shown": shown,
        "topics": [read_topic(topic, lang) for topic in shown.topics],
        "editions": list_editions(RULES),
        "adopted": department.edition,
    }
    return render(request, "rules/rules.html", facts)


@require_safe
def compare(request: HttpRequest) -> HttpResponse:
    """Show what another edition would change, and for which pieces."""
    job, lang = answers_of(request).job, language_of(request)
    other = request.GET.get("with", "")
    try:
        compared = compare_rules(RULES, job.department.edition, EditionId(other), job.components)
    except BadInputError as error:
        facts = {"editions": list_editions(RULES), "faults": error.faults,
                 "adopted": job.department.edition}  # fmt: skip
        return render(request, "rules/compare.html", facts, status=422)
    shown: dict[str, object] = {
        "compared": compared,
        "differences": [read_difference(one, lang) for one in compared.differences],
        "adopted": job.department.edition,
    }
    return render(request, "rules/compare.html", shown)
