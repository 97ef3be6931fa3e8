"""What is due, and which dates does nobody know?"""

from itertools import groupby

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from sootline.core.intervals import Standing
from sootline.tasks.list_due import DueItem
from sootline.web.answers import answers_of
from sootline.web.reading.paging import leaf_asked

_LINES = 60
_QUIET = (Standing.LATER, Standing.WAITS)


@require_safe
def due(request: HttpRequest) -> HttpResponse:
    """List what is due, the most pressing first, member by member and day by day."""
    listed = answers_of(request).due
    every = request.GET.get("all") == "1"
    items = [one for one in listed.items if every or one.due.standing not in _QUIET]
    lines = [
        (standing.value, key, list(same))
        for standing, of in groupby(items, key=lambda one: one.due.standing)
        for key, same in groupby(sorted(of, key=_line), _line)
    ]
    leaf = leaf_asked(
        request.GET.get("page", ""), -(-len(lines) // _LINES), "all=1&" if every else ""
    )
    shown = lines[(leaf.number - 1) * _LINES : leaf.number * _LINES]
    facts = {
        "groups": [
            (standing, [(key, same) for _, key, same in of])
            for standing, of in groupby(shown, key=lambda line: line[0])
        ],
        "listed": listed,
        "every": every,
        "leaf": leaf,
        "rest": len(listed.items) - len(items),
    }
    return render(request, "due/due.html", facts)


def _line(item: DueItem) -> tuple[str, str, str, int]:
    due = item.due
    return (
        (due.first_day.earliest or due.first_day.latest or "").__str__(),
        str(item.component.owner or item.component.set or ""),
        due.matter.value,
        due.days_over or 0,
    )
