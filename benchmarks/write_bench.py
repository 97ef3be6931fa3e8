"""What does the chain cost: an act recorded, against the same rows put into tables plainly?

`python -m benchmarks.write_bench [--acts 600]` writes in turn, in one run, one writer, both in
transactions that are on the disk when they return: entries as the store records them (looked up,
hashed, guarded, with the tables screens read), the same without those tables, and bare rows.
"""

import argparse
import datetime as dt
import statistics
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import cache
from importlib import import_module
from typing import Any

from tests.integration.store_databases import Databases, set_up

NOON = dt.datetime(2026, 3, 1, 12, tzinfo=dt.UTC)
# Entries of one turn: short, so that what else the machine does falls on all alike.
_TURN = 20


def main(acts: int = 600) -> None:
    """Print each rate and the ratios, for each database there is."""
    set_up()
    databases = Databases()
    try:
        for vendor in ("sqlite", "postgresql"):
            if databases.able(vendor):
                _ratio(databases, vendor, acts)
    finally:
        databases.close()


def _ratio(databases: Databases, vendor: str, acts: int) -> None:
    from tests.integration.store_acts import store_in, worn  # noqa: PLC0415

    database = databases.fresh(vendor)
    store, bare = store_in(database), _bare()
    whole, chained, plain = [], [], []
    for turn in range(0, acts, _TURN):
        keys = range(turn, turn + _TURN)
        whole += _timed(lambda at: store.append([worn(f"k{at}", f"piece-{at}")]), keys)
        with _without_tables():
            chained += _timed(lambda at: store.append([worn(f"c{at}", f"bare-{at}")]), keys)
        plain += _timed(bare, keys)
    rates = [len(took) / sum(took) for took in (whole, chained, plain)]
    extra = statistics.median(chained) - statistics.median(plain)
    print(f"{vendor}, one writer: {rates[1]:.0f} entries/s chained, {rates[2]:.0f} plain, "
          f"{rates[0]:.0f} with the tables screens read; chained/plain {rates[1] / rates[2]:.2f}, "
          f"with those tables {rates[0] / rates[2]:.2f}; "
          f"the chain adds {extra * 1e3:.2f} ms (p50)")  # fmt: skip


def _timed(write: Callable[[int], object], keys: range) -> list[float]:
    took = []
    for at in keys:
        start = time.perf_counter()
        write(at)
        took.append(time.perf_counter() - start)
    return took


@contextmanager
def _without_tables() -> Iterator[None]:
    """Leave out the tables screens read."""
    ledger: Any = import_module("sootline.storage.ledger")
    usual = ledger.project
    ledger.project = lambda _alias, _fresh: None
    try:
        yield
    finally:
        ledger.project = usual


@cache
def _plain_models() -> tuple[Any, Any]:
    """Return two tables of an entry's form, without guards or chain."""
    from django.db import models  # noqa: PLC0415

    class PlainEntry(models.Model):
        seq = models.PositiveBigIntegerField(primary_key=True)
        header = models.TextField()
        prev = models.CharField(max_length=64)
        hash = models.CharField(max_length=64)
        idem = models.CharField(max_length=200, unique=True)
        item = models.CharField(max_length=240, db_index=True)
        recorded_at = models.DateTimeField()

        class Meta:
            app_label = "plain"

    class PlainPayload(models.Model):
        seq = models.PositiveBigIntegerField(primary_key=True)
        salt = models.CharField(max_length=32)
        body = models.TextField()

        class Meta:
            app_label = "plain"

    return PlainEntry, PlainPayload


def _bare() -> Callable[[int], object]:
    """Return what writes one entry's two rows as the framework does, in one transaction."""
    from django.db import connection, transaction  # noqa: PLC0415

    entries, payloads = _plain_models()
    with connection.schema_editor() as editor:
        editor.create_model(entries)
        editor.create_model(payloads)

    def write(at: int) -> None:
        with transaction.atomic():
            entries.objects.create(
                seq=at, header="h" * 700, prev="p" * 64, hash="h" * 64, idem=f"k{at}",
                item=f"component:{at}", recorded_at=NOON,
            )  # fmt: skip
            payloads.objects.create(seq=at, salt="s" * 32, body='{"member":"118"}')

    return write


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--acts", type=int, default=600)
    main(parser.parse_args().acts)
