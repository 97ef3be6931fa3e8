"""Who looked at what a person was exposed to? That is health data: every look is kept."""

import datetime as dt
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from typing import Protocol

from sootline.core.basis import MemberId


@dataclass(frozen=True, kw_only=True)
class Looked:
    """One look at a member's health data."""

    at: dt.datetime
    actor: MemberId
    member: MemberId
    what: str


class Looks(Protocol):
    """Keeps who looked."""

    def note(self, actor: MemberId, members: Collection[MemberId], what: str) -> None:
        """Keep that somebody looks, before anything is shown.

        Args:
            members: at whose data.
            what: on which screen ("call", "person").
        """
        ...

    def of(self, member: MemberId) -> Iterator[Looked]:
        """List who looked at a member's data, the newest first."""
        ...
