"""What is decided before the clock runs?"""

from dataclasses import dataclass

DrumLoad = tuple[int, tuple[int, ...]]  # family, items


@dataclass(frozen=True, kw_only=True)
class Choice:
    """Loads, cabinet runs, spares, and who comes first.

    Args:
        loads: per washer its loads in order.
        runs: per cabinet its runs in order, each with its items; all others dry on the rack.
        covered: items for which a spare is handed out.
        target: per member the minute aimed at; the earlier, the sooner its tasks come.
        reserve: keep the last free helper for a drum that ends soon.
    """

    loads: tuple[tuple[DrumLoad, ...], ...]
    runs: tuple[tuple[tuple[int, ...], ...], ...]
    covered: frozenset[int]
    target: tuple[int, ...]
    reserve: bool = False
