"""Who works on the bound while the search runs? A thread: the compiled search leaves it room."""

import threading
import time
from collections.abc import Callable
from typing import TYPE_CHECKING

from sootline.core.washplan.helps import Beside, Helps
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Goal, Plan
from sootline.core.washplan.priced import price_out
from sootline.wiring.engines import find_engine

if TYPE_CHECKING:
    from sootline.core.washplan.exact import Proof


class BoundThread:
    """Bounds in a thread until it is told to end: by prices, then, if the call suits, by proof."""

    def __init__(self, instance: Instance, goal: Goal, by: int, newest: Callable[[], Plan]) -> None:
        self._instance, self._goal, self._by, self._newest_plan = instance, goal, by, newest
        self._best: float | None = None
        self._proof: Proof | None = None
        self._plan: Plan | None = None
        self._over = threading.Event()
        self._thread = threading.Thread(target=self._work, daemon=True)
        self._thread.start()

    def _work(self) -> None:
        instance, known, missed = self._instance, self._newest_plan(), self._goal is Goal.DEADLINE
        priority = {member.id: member.priority for member in instance.members}
        in_time = sum(priority[one] for one, minute in known.ready.items() if minute <= self._by)
        price_out(
            instance, goal=self._goal, by=self._by, stop=self._over.is_set, tell=self._tell,
            known=(in_time if missed else known.objective, known.makespan),
        )  # fmt: skip
        if not missed and not self._over.is_set():
            self._prove()

    def _prove(self) -> None:
        try:
            # Only here: it takes a second, and large calls do without; so does who lacks it.
            from sootline.core.washplan.exact import Proof  # noqa: PLC0415
        except ImportError:
            return
        if not Proof.suits(self._instance):
            return
        self._proof = Proof(self._instance, self._newest_plan(), self._best or 0.0)
        # Whoever told this thread to end meanwhile has seen no proof to stop.
        if not self._over.is_set():
            self._plan = self._proof.run(self._tell)

    def _tell(self, bound: float) -> None:
        worse = min if self._goal is Goal.DEADLINE else max
        self._best = bound if self._best is None else worse(self._best, bound)

    def newest(self) -> float | None:
        """Return the best bound so far."""
        return self._best

    def plan(self) -> Plan | None:
        """Return the plan that was found by proof, if it is better than the known one."""
        return self._plan

    def end(self) -> None:
        """Stop bounding and wait for the step that is under way."""
        self._over.set()
        while self._thread.is_alive():
            if self._proof:
                self._proof.stop()
            self._thread.join(timeout=0.05)


def _begin(instance: Instance, goal: Goal, by: int, newest: Callable[[], Plan]) -> Beside:
    return BoundThread(instance, goal, by, newest)


def helps_for(seconds: float) -> Helps:
    """Return what helps a search of so many seconds from now, on this machine."""
    began = time.monotonic()
    return Helps(
        engine=find_engine(),
        share=(lambda: (time.monotonic() - began) / seconds) if seconds else None,
        bounder=_begin if seconds else None,
    )
