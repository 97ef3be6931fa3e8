"""Who looked at what a person was exposed to? Every look is kept."""

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from sootline.core.basis import MemberId
from sootline.storage.models import Look


@dataclass(frozen=True, kw_only=True)
class Looked:
    """One look at a member's health data."""

    at: dt.datetime
    actor: MemberId
    member: MemberId
    what: str


def note_look(actor: MemberId, member: MemberId, what: str, *, at: dt.datetime) -> None:
    """Keep that somebody looks; before anything is shown.

    Args:
        what: the kind of data ("exposures").
    """
    Look.objects.create(at=at, actor=actor, member=member, what=what)


def looks_at(member: MemberId) -> Iterator[Looked]:
    """List who looked at a member's data, the newest first: the member may see that."""
    for row in Look.objects.filter(member=member).order_by("-at", "-pk"):
        actor, whose = MemberId(row.actor), MemberId(row.member)
        yield Looked(at=row.at, actor=actor, member=whose, what=row.what)
