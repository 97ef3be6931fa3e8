"""Does a power cut ever lose what was acknowledged, and would the test see it?

`python -m benchmarks.power_cuts [--cuts 1000] [--seed 1]` cuts at the shipped settings of SQLite
and at two weaker ones, at which entries must be lost; a few minutes.
"""

import argparse
import time

from tests.integration.store_databases import Databases, set_up


def main(cuts: int = 1000, seed: int = 1) -> None:
    """Print what was lost at each setting."""
    set_up()
    from tests.integration.store_disk import install  # noqa: PLC0415
    from tests.integration.store_power import cut_power  # noqa: PLC0415

    disk, databases = install(), Databases()
    if disk is None:
        print("power cuts: this Python's SQLite cannot be reached from outside")
        return
    try:
        for synchronous in ("FULL", "NORMAL", "OFF"):
            start = time.perf_counter()
            found = cut_power(databases, disk, cuts=cuts, seed=seed, synchronous=synchronous)
            print(f"WAL, synchronous={synchronous}: {found.cuts} cuts (seed {seed}), "
                  f"{found.torn} of them with unsynced writes, {found.acked} entries acknowledged, "
                  f"{found.losing} cuts lost some (at most {found.most}), "
                  f"{found.corrupt} left damage, {time.perf_counter() - start:.0f} s")  # fmt: skip
    finally:
        databases.close()


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--cuts", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    main(options.cuts, options.seed)
