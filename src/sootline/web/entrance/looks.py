"""Who looked at what a person was exposed to?"""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from sootline.core.basis import MemberId
from sootline.wiring.people import User, looks, sees_member

_MOST = 500


@require_safe
def own(request: HttpRequest) -> HttpResponse:
    """List who looked at one's own data."""
    user = request.user
    assert isinstance(user, User)
    return _page(request, MemberId(user.member))


@require_safe
def of(request: HttpRequest, member: str) -> HttpResponse:
    """List for an auditor who looked at a member's data.

    Raises:
        Http404: the member is another station's.
    """
    if not sees_member(request.user, MemberId(member)):
        raise Http404
    return _page(request, MemberId(member))


def _page(request: HttpRequest, member: MemberId) -> HttpResponse:
    found = list(looks().of(member))
    facts = {"member": member, "looks": found[:_MOST], "many": len(found)}
    return render(request, "entrance/looks.html", facts)
