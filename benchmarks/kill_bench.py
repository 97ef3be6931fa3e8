"""Does a killed writer ever lose what it was told was kept? And how fast does the store write?

`python -m benchmarks.kill_bench [--kills 500] [--seed 1]` kills so many writers on each database
there is on this machine, and prints what was lost; some minutes.
"""

import argparse
import time

from tests.integration.store_databases import Databases, set_up


def main(kills: int = 50, seed: int = 1) -> None:
    """Print, for each database, write rates and what killing cost."""
    set_up()
    databases = Databases()
    try:
        for vendor in ("sqlite", "postgresql"):
            if databases.able(vendor):
                _rates(databases, vendor)
                _kills(databases, vendor, kills, seed)
            else:
                print(f"{vendor}: not on this machine")
    finally:
        databases.close()


def _rates(databases: Databases, vendor: str) -> None:
    from tests.integration.store_acts import store_in, worn  # noqa: PLC0415

    from sootline.storage.backups import write_backup  # noqa: PLC0415
    from sootline.storage.projecting import replay  # noqa: PLC0415

    database = databases.fresh(vendor)
    store, n = store_in(database), 500
    started = time.perf_counter()
    for at in range(n):
        store.append([worn(f"k{at}", f"piece-{at % 50}")])
    single = n / (time.perf_counter() - started)
    started = time.perf_counter()
    store.append([worn(f"b{at}", f"batch-{at}") for at in range(n)])
    batch = n / (time.perf_counter() - started)
    started = time.perf_counter()
    count = replay("default")
    again = count / (time.perf_counter() - started)
    started = time.perf_counter()
    write_backup(store, database.folder / "b.zip")
    backup = time.perf_counter() - started
    print(f"{vendor}: {single:.0f} acts/s one by one, {batch:.0f} entries/s in one act, "
          f"replay {again:.0f} entries/s, backup of {count} entries {backup:.2f} s")  # fmt: skip


def _kills(databases: Databases, vendor: str, kills: int, seed: int) -> None:
    from tests.integration.store_acts import store_in  # noqa: PLC0415
    from tests.integration.store_kills import kill_writers  # noqa: PLC0415

    database = databases.fresh(vendor)
    found = kill_writers(database, store_in(database), kills=kills, seed=seed, within_s=3600)
    print(f"{vendor}: {found.kills} kills (seed {seed}), {found.acked} acknowledged, "
          f"{found.lost} lost, {found.doubled} doubled, {found.damaged} chains damaged, "
          f"{found.unacked} kept though the reply was lost")  # fmt: skip


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--kills", type=int, default=500)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    main(options.kills, options.seed)
