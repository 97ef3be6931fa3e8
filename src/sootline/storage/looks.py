"""Who looked at what a person was exposed to? Every look is kept."""

import datetime as dt
from collections.abc import Callable, Collection, Iterator

from sootline.core.basis import MemberId
from sootline.storage.models import Look
from sootline.tasks.looks import Looked

# Drawing the same page again within so long is the same look.
_ONE_LOOK = dt.timedelta(minutes=15)


def note_look(actor: MemberId, member: MemberId, what: str, *, at: dt.datetime) -> None:
    """Keep that somebody looks; before anything is shown.

    Args:
        what: on which screen ("call", "person").
    """
    Look.objects.create(at=at, actor=actor, member=member, what=what)


def looks_at(member: MemberId) -> Iterator[Looked]:
    """List who looked at a member's data, the newest first: the member may see that."""
    for row in Look.objects.filter(member=member).order_by("-at", "-pk"):
        actor, whose = MemberId(row.actor), MemberId(row.member)
        yield Looked(at=row.at, actor=actor, member=whose, what=row.what)


class LookStore:
    """The looks of a database.

    Args:
        now: what the machine's clock reads.
    """

    def __init__(self, now: Callable[[], dt.datetime]) -> None:
        self._now = now

    def note(self, actor: MemberId, members: Collection[MemberId], what: str) -> None:
        """Keep who looks at whose data; nobody's look at their own is noted."""
        at = self._now()
        lately = Look.objects.filter(
            actor=actor, member__in=members, what=what, at__gt=at - _ONE_LOOK
        )
        noted = set(lately.values_list("member", flat=True))
        Look.objects.bulk_create(
            Look(at=at, actor=actor, member=one, what=what)
            for one in dict.fromkeys(members)
            if one not in noted and one != actor
        )

    def of(self, member: MemberId) -> Iterator[Looked]:
        """List who looked at a member's data, the newest first."""
        return looks_at(member)
