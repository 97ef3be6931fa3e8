"""What is drawn next? Chance that is the same everywhere, from a state of one whole number.

The minimal standard generator of Park and Miller, with the multiplier of their later advice.
Source: S. K. Park, K. W. Miller, Random number generators: good ones are hard to find,
Communications of the ACM 31 (1988) 1192-1201, and their answer of 1993 (from memory).
"""

from sootline.core.washplan.kernel.arrays import Ints

_PRIME = 2147483647
_FACTOR = 48271


def draw(chance: Ints, most: int) -> int:
    """Draw a number from 0 up to but without `most`."""
    chance[0] = chance[0] * _FACTOR % _PRIME
    return (chance[0] - 1) * most // (_PRIME - 1)
