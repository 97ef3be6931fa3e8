"""When, on which device and over which page was something written down that comes in now?"""

import datetime as dt
import re
from zoneinfo import ZoneInfo

from django.http import HttpRequest

from sootline.core.basis import BadInputError, DeviceId, Fault, MessageId
from sootline.core.job.jobs import Job
from sootline.core.ledger import ClockSource
from sootline.tasks.desk import Told
from sootline.wiring.store import now

_DEVICE = re.compile(r"[a-z0-9-]{1,40}", re.ASCII)
_LONGEST = 120
# A page older than this was not kept open through a night; somebody set its clock.
_OLDEST = dt.timedelta(days=60)


def told_of(request: HttpRequest, job: Job) -> Told | None:
    """Return how a form reached us that was kept on a phone, or copied from paper.

    A phone says when the form was filled in and when it was sent, both by its own clock: what the
    second is ahead of ours is how wrong that clock is.

    Returns:
        None where the form came straight from its page.

    Raises:
        BadInputError: a time cannot be read.
    """
    given = request.POST
    device = given.get("device", "")
    device = device if _DEVICE.fullmatch(device) else "browser"
    position = given.get("position", "")[:_LONGEST]
    made, offset = None, None
    if given.get("made"):
        made, sent = _moment(given, "made"), _moment(given, "sent")
        offset = round((sent - now()).total_seconds())
    if given.get("when"):
        written = _last(given["when"], made or job.now, job)
        return Told(made=written, clock=ClockSource.PAPER, device=DeviceId(device),
                    position=position)  # fmt: skip
    if made is None:
        return None
    return Told(made=made, clock=ClockSource.DEVICE, device=DeviceId(device), offset_s=offset,
                position=position)  # fmt: skip


def local(moment: dt.datetime, job: Job) -> dt.datetime:
    """Return a moment as the department's clocks show it."""
    return moment.astimezone(ZoneInfo(job.department.zone))


def true_moment(told: Told) -> dt.datetime:
    """Return when it was written down, put right by what is known of the clock."""
    return told.made - dt.timedelta(seconds=told.offset_s or 0)


def _moment(given: "dict[str, str]", name: str) -> dt.datetime:
    text = given.get(name, "")
    try:
        moment = dt.datetime.fromisoformat(text)
    except ValueError:
        raise _unreadable(name, text) from None
    if moment.tzinfo is None or abs(moment - now()) > _OLDEST:
        raise _unreadable(name, text)
    return moment


def _last(text: str, before: dt.datetime, job: Job) -> dt.datetime:
    """Return the last time the clock on the wall showed this."""
    try:
        hour = dt.time.fromisoformat(text)
    except ValueError:
        raise _unreadable("when", text) from None
    end = local(before, job)
    moment = end.replace(hour=hour.hour, minute=hour.minute, second=0, microsecond=0)
    return moment - dt.timedelta(days=moment > end)


def _unreadable(name: str, text: str) -> BadInputError:
    values = (("value", text[:40]),)
    return BadInputError([Fault(place=name, message=MessageId("later.time"), values=values)])
