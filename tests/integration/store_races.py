"""Many at once, and replies that get lost: who wins, and does anything stand twice?"""

import random
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from threading import Barrier
from typing import TypeVar

from django.db import connections
from tests.integration.store_acts import worn

from sootline.core.ledger import OvertakenError, verify_chain
from sootline.storage.ledger import LedgerStore
from sootline.storage.models import EntryRow

T = TypeVar("T")
EDITORS = 8


@dataclass(frozen=True, kw_only=True)
class Retried:
    """What came of submissions whose replies were dropped and asked for again.

    Args:
        dropped: replies that never came.
        doubled, missing: submissions that stand twice, or not at all.
    """

    submissions: int
    dropped: int
    doubled: int
    missing: int
    intact: bool


@dataclass(frozen=True, kw_only=True)
class Edited:
    """What came of several people editing one piece that all saw in the same state.

    Args:
        one_winner: rounds in which exactly one came through.
        shown: losers who were shown the winner's very entry.
    """

    rounds: int
    one_winner: int
    shown: int


def drop_replies(store: LedgerStore, *, each: int, drop: float, seed: int) -> Retried:
    """Let four writers submit, losing replies at random, each asking until a reply comes.

    Args:
        each: how many submissions a writer makes.
        drop: the share of replies that are lost.
    """
    names = [f"writer-{n}" for n in range(4)]

    def write(name: str) -> int:
        chance, dropped = random.Random(f"{seed}{name}"), 0  # noqa: S311
        for n in range(each):
            store.append([worn(f"{n}", f"piece-{n % 9}", actor=name)])
            while chance.random() < drop:
                dropped += 1
                store.append([worn(f"{n}", f"piece-{n % 9}", actor=name)])
        return dropped

    dropped = sum(_at_once(write, names))
    keys = list(EntryRow.objects.filter(actor__in=names).values_list("actor", "idem"))
    return Retried(
        submissions=4 * each,
        dropped=dropped,
        doubled=len(keys) - len(set(keys)),
        missing=4 * each - len(set(keys)),
        intact=verify_chain(store.entries()).intact,
    )


def edit_at_once(store: LedgerStore, *, rounds: int) -> Edited:
    """Let eight people write about one piece at the same moment, again and again."""
    (seen,) = store.append([worn("first")])
    last, won, shown = seen.entry.seq, 0, 0
    for turn in range(rounds):
        barrier = Barrier(EDITORS)
        names = [f"editor-{turn}-{n}" for n in range(EDITORS)]

        def edit(name: str, after: int = last, barrier: Barrier = barrier) -> tuple[bool, int]:
            barrier.wait()
            try:
                return True, store.append([worn(name, actor=name, after=after)])[0].entry.seq
            except OvertakenError as error:
                return False, error.entry.seq

        told = _at_once(edit, names)
        won += [winner for winner, _ in told].count(True) == 1
        shown += sum(not winner and seq == last + 1 for winner, seq in told)
        last += 1
    return Edited(rounds=rounds, one_winner=won, shown=shown)


def ask_at_once(store: LedgerStore, *, rounds: int) -> int:
    """Send one request eight times at once; return in how many rounds all heard of one entry."""
    agreed = 0
    for turn in range(rounds):
        barrier = Barrier(EDITORS)

        def ask(_number: int, key: str = f"same-{turn}", barrier: Barrier = barrier) -> str:
            barrier.wait()
            return store.append([worn(key)])[0].entry.hash

        told = set(_at_once(ask, range(EDITORS)))
        agreed += len(told) == 1 and EntryRow.objects.filter(idem=f"same-{turn}").count() == 1
    return agreed


def _at_once(act: Callable[..., T], about: Sequence[object]) -> list[T]:
    def closing(one: object) -> T:
        try:
            return act(one)
        finally:
            connections.close_all()

    with ThreadPoolExecutor(len(about)) as pool:
        return list(pool.map(closing, about))
