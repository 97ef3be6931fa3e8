"""What was the newest report, and away with it?"""

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.http import require_POST

from sootline.web.tongue import language_of
from sootline.wiring.desks import desks_of
from sootline.words import say


@require_POST
def undo(request: HttpRequest) -> HttpResponse:
    """Take the newest report back and say which it was."""
    lang = language_of(request)
    taken = desks_of(request.user).undo()
    if taken is None:
        messages.info(request, say("web.nothing_to_undo", lang=lang))
    else:
        what = say(taken.message, taken.values, lang=lang)
        messages.info(request, say("web.undone", {"what": what}, lang=lang))
    back = request.POST.get("back", "")
    here = url_has_allowed_host_and_scheme(back, {request.get_host()}, request.is_secure())
    return redirect(back if here and back.startswith("/") else "front")
