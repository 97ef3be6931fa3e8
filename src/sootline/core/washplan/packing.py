"""How long are equal places, each drying one item at a time, in use at the least?"""

from bisect import bisect_left
from collections import Counter

_MOST_STATES = 5_000


def attainable(lengths: list[int], most: int) -> int:
    """Mark, bit by bit, which sums up to `most` can be made of lengths used any number of times."""
    marks = 1
    mask = (1 << (most + 1)) - 1
    for length in set(lengths):
        step = length
        # Doubling reaches every multiple in few shifts.
        while 0 < step <= most:
            marks |= (marks << step) & mask
            step *= 2
    return marks


def largest_sum(weights: list[int], most: int) -> int:
    """Return the largest sum up to `most` of some of the weights, each used at most once."""
    marks = 1
    mask = (1 << (most + 1)) - 1
    for weight in weights:
        marks |= (marks << weight) & mask
    return marks.bit_length() - 1


def rack_minutes(drying: tuple[int, ...], places: int) -> int:
    """Return a lower bound on the minutes from first hanging up to last taking down.

    Valid because items of one unit on so many units always can be told apart by place. Every
    duration is rounded down to one of two values, which can only shorten the whole; for two values
    the most that fits is counted exactly; the best pair of values is taken.
    """
    values = sorted(set(drying))
    if not values:
        return 0
    count = Counter(drying)
    least = max(values[-1], -(-sum(drying) // places))
    for low in values:
        for high in values:
            if low <= high:
                longs = sum(count[value] for value in values if value >= high)
                shorts = sum(count[value] for value in values if low <= value < high)
                least = max(least, _two_lengths((low, shorts), (high, longs), places))
    return least


def _two_lengths(short: tuple[int, int], long: tuple[int, int], places: int) -> int:
    """Return the least common end for so many short and long items on equal places, exactly.

    Args:
        short, long: minutes of one, and how many.
    """
    (low, shorts), (high, longs) = short, long
    if low == 0 or longs * places > _MOST_STATES:
        return 0
    # Hanging each item where it ends first stays within the mean plus one item.
    most = (low * shorts + high * longs) // places + high
    ends = sorted(
        {
            a * low + b * high
            for b in range(min(longs, most // high) + 1)
            for a in range(min(shorts, (most - b * high) // low) + 1)
        }
    )
    return ends[bisect_left(ends, True, key=lambda end: _fit(short, long, places, end))]


def _fit(short: tuple[int, int], long: tuple[int, int], places: int, end: int) -> bool:
    """Say whether all items fit: best[b] is the most shorts beside b longs on the places so far."""
    (low, shorts), (high, longs) = short, long
    best = [0] + [-1] * longs
    for _ in range(places):
        new = [-1] * (longs + 1)
        for placed, beside in enumerate(best):
            if beside < 0:
                continue
            for more in range(min(longs - placed, end // high) + 1):
                with_more = min(shorts, beside + (end - more * high) // low)
                new[placed + more] = max(new[placed + more], with_more)
        best = new
        if best[longs] >= shorts:
            return True
    return False
