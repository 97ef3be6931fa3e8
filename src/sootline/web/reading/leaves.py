"""Which crews stand together on one leaf of the grid? Whole crews, those that are short first."""

from collections import Counter
from collections.abc import Iterable, Iterator

from sootline.core.job.jobs import Member
from sootline.core.riding import CrewStatus

# A station's people fit on one leaf; a page stays small on a slow line.
_MOST_MEMBERS = 60

Leaf = tuple[str, ...]


def leaves_of(members: Iterable[Member], statuses: Iterable[CrewStatus]) -> tuple[Leaf, ...]:
    """Spread the crews over leaves of so many members; a larger crew has a leaf of its own."""
    counts = Counter(member.crew for member in members)
    short = frozenset(status.crew for status in statuses if not status.met)
    names = sorted(counts, key=lambda name: name not in short)
    return tuple(_spread(names, counts))


def _spread(names: Iterable[str], counts: Counter[str]) -> Iterator[Leaf]:
    leaf: list[str] = []
    for name in names:
        if leaf and sum(counts[one] for one in (*leaf, name)) > _MOST_MEMBERS:
            yield tuple(leaf)
            leaf = []
        leaf.append(name)
    if leaf:
        yield tuple(leaf)
