"""What is written down when people come, get gear, try it on, exchange it, and leave?"""

from dataclasses import dataclass
from typing import TypeAlias

from sootline.core.basis import ComponentId, MemberId
from sootline.core.job.jobs import Member
from sootline.core.riding import ExchangeFacts


@dataclass(frozen=True, kw_only=True)
class MemberCame:
    """Somebody is new, measured as far as it was done."""

    member: Member


@dataclass(frozen=True, kw_only=True)
class GearGiven:
    """Pieces from the stores go to a member."""

    pieces: tuple[ComponentId, ...]
    member: MemberId
    by: str


@dataclass(frozen=True, kw_only=True)
class TriedOn:
    """A member tried pieces on while somebody watched.

    Args:
        fits: whether whoever watched signed that it fits.
        by: who watched.
    """

    pieces: tuple[ComponentId, ...]
    member: MemberId
    fits: bool
    by: str
    said: str = ""


@dataclass(frozen=True, kw_only=True)
class GearExchanged:
    """A member brings one piece back and takes another: both, or neither.

    Args:
        place: where the returned piece goes, where it needs no wash; blank sends it to be washed.
    """

    facts: ExchangeFacts
    by: str
    place: str = ""


@dataclass(frozen=True, kw_only=True)
class MemberLeft:
    """Somebody leaves.

    Args:
        returned: what came back; the rest stays written down as still out.
    """

    member: MemberId
    returned: tuple[ComponentId, ...]
    by: str


PeopleDeed: TypeAlias = MemberCame | GearGiven | TriedOn | GearExchanged | MemberLeft
