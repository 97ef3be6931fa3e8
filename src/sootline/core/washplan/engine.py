"""Who runs the kernel: the interpreter, or machine code made from the same text?"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from sootline.core.washplan.kernel.anneal import anneal
from sootline.core.washplan.kernel.arrays import Ints
from sootline.core.washplan.kernel.clock import run_clock


@dataclass(frozen=True, kw_only=True)
class Engine:
    """The two ways into the kernel, and what it keeps its numbers in.

    Args:
        ints: puts whole numbers into the sequence the functions work on.
        steps: how many item moves are made between two looks at the clock.
    """

    run_clock: Callable[..., int]
    anneal: Callable[..., None]
    ints: Callable[[Iterable[int]], Ints]
    steps: int


def interpreted() -> Engine:
    """Return the engine that is always there."""
    return Engine(run_clock=run_clock, anneal=anneal, ints=list, steps=1)
