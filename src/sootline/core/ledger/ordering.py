"""Which of a component's facts certainly came before which?

By when they happened, then by their place in the record. Two spans that overlap, said by two
devices, have no certain order: then every order counts as possible.
"""

from collections.abc import Iterable, Iterator, Sequence

from sootline.core.ledger.correcting import Settled


def in_order(settled: Iterable[Settled]) -> list[Settled]:
    """Sort facts by their earliest time, then by their place in the record."""
    return sorted(settled, key=lambda one: (one.fact.earliest, one.fact.seq))


def clusters(ordered: Sequence[Settled]) -> Iterator[Sequence[Settled]]:
    """Split facts in order into runs within which the order is not certain."""
    first = 0
    for at in range(1, len(ordered)):
        if at == first + 1:
            latest = ordered[first].fact.latest
        if ordered[at].fact.earliest >= latest:
            yield ordered[first:at]
            first = at
        else:
            latest = max(latest, ordered[at].fact.latest)
    if ordered:
        yield ordered[first:]


def certainly_before(one: Settled, other: Settled) -> bool:
    """Whether one fact certainly came before another."""
    a, b = one.fact, other.fact
    if a.latest <= b.earliest:
        # Two at the very same moment: by their place in the record.
        return b.latest > a.earliest or a.seq < b.seq
    # What one device says happened in one span, it says in the order in which it was written.
    same = a.device == b.device and (a.earliest, a.latest) == (b.earliest, b.latest)
    return same and a.seq < b.seq
