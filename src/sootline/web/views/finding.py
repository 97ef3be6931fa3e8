"""Which piece is it: by what is typed, by its code in a photo, or by what it is and whose?"""

from collections.abc import Iterable

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_POST, require_safe

from sootline.core.basis import BadInputError
from sootline.core.gear import Component
from sootline.core.job.jobs import Job
from sootline.core.job.tags import tag_of
from sootline.paper.codes import read_codes
from sootline.web.answers import answers_of
from sootline.web.reading.marks import mark_of
from sootline.web.tongue import language_of
from sootline.words import name, say

_MOST = 100


@require_safe
def find(request: HttpRequest) -> HttpResponse:
    """Find pieces by number, owner, kind, set, lot, serial, size; one alone opens by itself."""
    answers, lang = answers_of(request), language_of(request)
    job = answers.job
    asked = request.GET.get("q", "").strip()
    words = asked.casefold().split()
    chosen = {key: request.GET.get(key, "").strip() for key in ("kind", "size", "member", "crew")}
    decisions = {one.component: one for one in answers.decided.decisions}
    wanted = [one for one in job.components if _is_chosen(one, chosen, _crews(job))]
    texts = {one.id: _texts(one, lang) for one in wanted if words}
    found = [
        one for one in wanted if all(word in texts[one.id] for word in words)
    ] if words or any(chosen.values()) else []  # fmt: skip
    exact = [one for one in found if _is_named(one, asked)]
    if len(exact) == 1 or len(found) == 1:
        return redirect("piece", piece=(exact or found)[0].id)
    facts = {
        "asked": asked,
        "chosen": chosen,
        "looked": bool(words or any(chosen.values())),
        "found": [(one, mark_of(one, decisions[one.id])) for one in found[:_MOST]],
        "many": len(found),
        "kinds": sorted({one.kind for one in job.components}),
        "members": [one.id for one in job.members],
        "crews": list(dict.fromkeys(one.crew for one in job.members if one.crew)),
    }
    return render(request, "piece/find.html", facts)


@require_POST
def code(request: HttpRequest) -> HttpResponse:
    """Read the code in a photo and open its piece; the photo is not kept."""
    lang = language_of(request)
    photo = request.FILES.get("photo")
    try:
        texts = read_codes(photo.read()) if photo else ()
    except BadInputError as error:
        for fault in error.faults:
            messages.error(request, say(fault.message, fault.values, lang=lang))
        return redirect("pieces")
    job = answers_of(request).job
    found = [one for one in job.components if any(_is_named(one, text) for text in texts)]
    if len(found) == 1:
        return redirect("piece", piece=found[0].id)
    said = "find.no_code" if not texts else "find.several" if found else "find.unknown"
    values = {"codes": ", ".join(texts)[:120], "pieces": ", ".join(one.id for one in found)}
    messages.info(request, say(said, values, lang=lang))
    return redirect("pieces")


def _texts(component: Component, lang: str) -> str:
    label = component.label
    kind = name("kind", component.kind, lang=lang)
    sizes = [size for _, size in component.size]
    texts = (component.id, component.owner, component.set, label.lot, label.serial, kind, *sizes)
    return " ".join(text.casefold() for text in texts if text)


def _is_named(component: Component, text: str) -> bool:
    """Whether a text is a piece's number, its tag, or the serial number on its label."""
    names = (component.id, tag_of(component.id), component.label.serial)
    return text.strip().casefold() in [one.casefold() for one in names if one]


def _crews(job: Job) -> dict[str, str]:
    return {one.id: one.crew for one in job.members}


def _is_chosen(component: Component, chosen: dict[str, str], crews: dict[str, str]) -> bool:
    owner = component.owner or ""
    sizes: Iterable[str] = (size.casefold() for _, size in component.size)
    return (
        chosen["kind"] in ("", component.kind)
        and chosen["member"] in ("", owner)
        and chosen["crew"] in ("", crews.get(owner, ""))
        and (not chosen["size"] or chosen["size"].casefold() in sizes)
    )
