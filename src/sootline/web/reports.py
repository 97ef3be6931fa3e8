"""Who reports, and how does a report reach the desk and the reader?"""

from collections.abc import Mapping

from django.contrib import messages
from django.http import HttpRequest

from sootline.core.basis import BadInputError, MemberId, MessageId
from sootline.tasks.deeds import Deed
from sootline.tasks.desk import Report
from sootline.web.tongue import language_of
from sootline.wiring.desks import desks_of
from sootline.words import say


def actor_of(request: HttpRequest) -> str:
    """Return who reports: the member whose account it is."""
    return str(getattr(request.user, "member", "") or "")


def who_of(request: HttpRequest) -> str:
    """Return whose entries a page keeps: a person's, or those of a station device."""
    return actor_of(request) or str(getattr(request.user, "id", "") or "")


def report(
    request: HttpRequest,
    message: str,
    deed: Deed,
    *,
    about: tuple[str, ...] = (),
    values: Mapping[str, str] | None = None,
    mark: str = "",
) -> bool:
    """Keep what somebody reported and say so; say why not where it is refused.

    Args:
        mark: sets one report apart from others that the same request makes.

    Returns:
        whether it was kept.
    """
    lang, desks = language_of(request), desks_of(request.user)
    by = actor_of(request)
    kept = Report(
        at=desks.look().job.now,
        by=MemberId(by) if by else None,
        message=MessageId(message),
        values=tuple((values or {}).items()),
        about=about,
        key=(key + mark)[:64] if (key := request.POST.get("key", "")) else "",
    )
    try:
        desks.keep(kept, deed)
    except BadInputError as error:
        messages.error(request, say("web.refused", lang=lang))
        for fault in error.faults[:8]:
            sentence = say(fault.message, fault.values, lang=lang)
            messages.error(request, f"{fault.place}: {sentence}")
        return False
    messages.success(request, say(message, kept.values, lang=lang), extra_tags="undo")
    return True
