"""Tiny instances with their best values, found once for all tests by trying everything."""

from functools import cache

from sootline.core.basis import BadInputError
from sootline.core.washplan import Instance
from tests.instances.exhaustive import Optimum, optimum
from tests.instances.generate import tiny

BY, BLOCK, SEEDS = 9, 20, 200


@cache
def solved(first: int) -> tuple[tuple[Instance, Optimum], ...]:
    """Return a block of tiny instances; a draw whose pieces fit no drum or place is passed over."""
    made = []
    for seed in range(first, first + BLOCK):
        try:
            instance = tiny(seed)
        except BadInputError:
            continue
        made.append((instance, optimum(instance, BY)))
    return tuple(made)
