"""Long work of the demonstration: done in a thread, forgotten with the program."""

import datetime as dt
import threading
import time
from dataclasses import replace

from sootline.tasks.errands import Errand, ErrandKind, ErrandState, Wish
from sootline.tasks.improve_wash import Search, improve_wash
from sootline.wiring.beside import helps_for
from sootline.wiring.demo_desk import demo_desks
from sootline.wiring.plans import load_planning_times
from sootline.wiring.rules import RULES


class ThreadErrands:
    """Errands in memory; the newest plan is the only one anybody still wants a better one for."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._errands: dict[str, Errand] = {}

    def ask(self, wish: Wish) -> Errand:
        """Begin at once; a wish asked before is answered with what became of it."""
        with self._lock:
            if wish.key in self._errands:
                return self._errands[wish.key]
            made = Errand(
                id=wish.key, wish=wish, state=ErrandState.RUNNING, asked_at=dt.datetime.now(dt.UTC)
            )
            self._errands = {wish.key: made}
        threading.Thread(target=self._do, args=(wish,), daemon=True).start()
        return made

    def newest(self, kind: ErrandKind, station: str | None) -> Errand | None:
        """Return what was asked for last of a kind; None where nothing was."""
        found = [
            one
            for one in list(self._errands.values())
            if (one.wish.kind, one.wish.station) == (kind, station)
        ]
        if not found or not found[-1].open:
            return found[-1] if found else None
        spent = int((dt.datetime.now(dt.UTC) - found[-1].asked_at).total_seconds())
        return replace(found[-1], done=min(spent, found[-1].wish.total))

    def _do(self, wish: Wish) -> None:
        began = time.monotonic()
        search = Search(
            rules=RULES, planning=load_planning_times(), helps=helps_for,
            spent=lambda: time.monotonic() - began,
            tell=lambda _done: self._change(wish),
        )  # fmt: skip
        outcome = improve_wash(search, demo_desks(), wish)
        self._change(wish, state=ErrandState.DONE, outcome=outcome)

    def _change(self, wish: Wish, **changes: object) -> bool:
        """Change what is kept of a wish; False where another has taken its place."""
        with self._lock:
            errand = self._errands.get(wish.key)
            if errand is None:
                return False
            self._errands[wish.key] = replace(errand, **changes)  # type: ignore[arg-type]
            return True
