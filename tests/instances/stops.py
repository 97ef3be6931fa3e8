"""When does a search in a test stop? By counting, so that no test depends on a clock."""

from collections.abc import Callable
from itertools import count


def after(times: int) -> Callable[[], bool]:
    """Say stop once it has been asked so many times."""
    asked = count()
    return lambda: next(asked) >= times
