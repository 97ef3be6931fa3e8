"""Who works on the bound while the search runs? A thread: the compiled search leaves it room."""

import threading
import time

from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Goal
from sootline.core.washplan.priced import price_out
from sootline.core.washplan.search import Beside, Helps
from sootline.wiring.engines import find_engine


class BoundThread:
    """Bounds in a thread until it is told to end."""

    def __init__(self, instance: Instance, goal: Goal, by: int, known: tuple[int, int]) -> None:
        self._best: float | None = None
        self._over = threading.Event()
        self._thread = threading.Thread(
            target=price_out,
            args=(instance,),
            kwargs={
                "goal": goal, "by": by, "known": known, "stop": self._over.is_set,
                "tell": self._tell,
            },
            daemon=True,
        )  # fmt: skip
        self._thread.start()

    def _tell(self, bound: float) -> None:
        self._best = bound

    def newest(self) -> float | None:
        """Return the best bound so far."""
        return self._best

    def end(self) -> None:
        """Stop bounding and wait for the step that is under way."""
        self._over.set()
        self._thread.join()


def _begin(instance: Instance, goal: Goal, by: int, known: tuple[int, int]) -> Beside:
    return BoundThread(instance, goal, by, known)


def helps_for(seconds: float, *, tie: float = 0.0) -> Helps:
    """Return what helps a search of so many seconds from now, on this machine."""
    began = time.monotonic()
    return Helps(
        engine=find_engine(),
        share=(lambda: (time.monotonic() - began) / seconds) if seconds else None,
        bounder=_begin if seconds else None,
        tie=tie,
    )
