"""How is the kernel turned into machine code? Only who wants that imports this module.

The kernel's functions call each other by name. Each gets a twin over the same text whose names
lead to compiled twins; the plain functions stay as they are.
"""

from collections.abc import Callable, Iterable
from types import FunctionType, ModuleType
from typing import Any

import numba
import numpy as np

from sootline.core.washplan.engine import Engine
from sootline.core.washplan.kernel import (
    anneal,
    clock,
    drawing,
    editing,
    heap,
    load_moves,
    opening,
    other_moves,
    people,
    wide_moves,
)

_MODULES: tuple[ModuleType, ...] = (
    heap, drawing, opening, people, clock, editing, load_moves, wide_moves, other_moves, anneal,
)  # fmt: skip
# Numbers of items moved between two looks at the clock: less than a tenth of a second.
_STEPS = 300_000
# Typed too narrowly for what it takes.
_njit: Any = numba.njit
# Nothing is allocated, so nothing has to be counted; counting cost ten times the work itself.
_OPTIONS: dict[str, Any] = {"cache": True, "nogil": True, "_nrt": False}
# Called in one place and for every minute: a call costs more than what it does.
_INLINED = {
    "_happen", "_hang_up", "_drums", "_start_runs", "start_best", "busy_end", "_unload", "_load",
    "_occupy", "_wet", "_dried", "_prepared", "_unloaded", "push", "drop", "add", "may", "_edge",
}  # fmt: skip


def _integers(numbers: Iterable[int]) -> Any:  # noqa: ANN401 - an array stands in for a list
    # A list of single numbers out of an array costs more than many steps of the search.
    whole = numbers if isinstance(numbers, np.ndarray) else list(numbers)
    return np.array(whole, dtype=np.int64)


def _twins() -> dict[str, Callable[..., Any]]:
    """Make a compiled twin of every kernel function, compiled when first called."""
    twins: dict[str, Callable[..., Any]] = {}
    scopes = []
    for module in _MODULES:
        scope = dict(vars(module))
        scopes.append(scope)
        for name, one in vars(module).items():
            if isinstance(one, FunctionType) and one.__module__ == module.__name__:
                twin = FunctionType(one.__code__, scope, name, one.__defaults__)
                twin.__module__ = module.__name__
                twin.__qualname__ = one.__qualname__
                inline = "always" if name in _INLINED else "never"
                twins[f"{module.__name__}.{name}"] = _njit(inline=inline, **_OPTIONS)(twin)
    for module, scope in zip(_MODULES, scopes, strict=True):
        for name, one in vars(module).items():
            if isinstance(one, FunctionType) and f"{one.__module__}.{name}" in twins:
                scope[name] = twins[f"{one.__module__}.{name}"]
    return twins


def compiled() -> Engine:
    """Return the engine of machine code; its first calls compile, or read what was kept."""
    twins = _twins()
    return Engine(
        run_clock=twins[f"{clock.__name__}.run_clock"],
        anneal=twins[f"{anneal.__name__}.anneal"],
        ints=_integers,
        steps=_STEPS,
    )
