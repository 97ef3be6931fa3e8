"""When does a search in a test stop? By counting, so that no test depends on a clock."""

from collections.abc import Callable
from itertools import count


def after(times: int) -> Callable[[], bool]:
    """Say stop once it has been asked so many times."""
    asked = count()
    return lambda: next(asked) >= times


def paced(times: int) -> tuple[Callable[[], bool], Callable[[], float]]:
    """Stop after so many questions, and say how much of that is over, as a clock would."""
    asked = count()
    last = 0

    def stop() -> bool:
        nonlocal last
        last = next(asked)
        return last >= times

    return stop, lambda: last / times
