"""What stands on the page of who can ride: crews, members, cells?"""

from dataclasses import dataclass

from sootline.core.basis import ComponentId, MemberId
from sootline.core.job.jobs import Member
from sootline.web.reading.columns import Column, Group
from sootline.web.reading.marks import Mark
from sootline.web.reading.saying import Said


@dataclass(frozen=True, kw_only=True)
class Spot:
    """Pieces of a cell that stand alike; a mask has no page of its own.

    Args:
        piece: the only one; None is several, or a mask.
        count: how many.
    """

    mark: Mark
    piece: ComponentId | None
    count: int = 1


@dataclass(frozen=True, kw_only=True)
class Cell:
    """What a member has in one column.

    Args:
        why: whether it is a reason for which the member cannot ride.
    """

    column: Column
    spots: tuple[Spot, ...]
    why: bool

    @property
    def rest(self) -> bool:
        """Whether nothing in it needs doing."""
        return all(spot.mark.at_rest for spot in self.spots)


@dataclass(frozen=True, kw_only=True)
class Row:
    """One member: what is where, and whether the member rides.

    Args:
        lines: more about it, the most important first.
    """

    member: Member
    can: bool
    away: bool
    verdict: Said
    lines: tuple[Said, ...]
    cells: tuple[Cell, ...]


@dataclass(frozen=True, kw_only=True)
class Crew:
    """One crew: what is said of it over the radio, and its members, who cannot ride first."""

    name: str
    short: bool
    spoken: tuple[Said, ...]
    left_out: tuple[MemberId, ...]
    rows: tuple[Row, ...]


@dataclass(frozen=True, kw_only=True)
class Floor:
    """The whole grid."""

    groups: tuple[Group, ...]
    crews: tuple[Crew, ...]
    names: tuple[str, ...]
    marks: tuple[Mark, ...]

    @property
    def width(self) -> int:
        """How many columns there are, with the member's and the verdict's."""
        return 2 + sum(group.width for group in self.groups)
