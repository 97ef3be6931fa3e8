"""Does the record hold, whatever goes wrong in whichever order?

`python -m benchmarks.fault_machine [--runs 200] [--steps 50] [--seed N]` runs the store against
kills, power cuts, locks, full disks, clock jumps and retries drawn by chance; some minutes.
"""

import argparse
import random
import time

from tests.integration.store_databases import Databases, set_up


def main(runs: int = 200, steps: int = 50, number: int | None = None) -> None:
    """Print how many runs held; a run that did not raises with how to repeat it."""
    set_up()
    from tests.integration.store_disk import install  # noqa: PLC0415
    from tests.integration.store_machine import run_faults  # noqa: PLC0415

    disk, databases = install(), Databases()
    if disk is None:
        print("faults: this Python's SQLite cannot be reached from outside")
        return
    chosen = random.SystemRandom().randrange(2**32) if number is None else number
    start = time.perf_counter()
    try:
        run_faults(databases, disk, runs=runs, steps=steps, number=chosen)
    finally:
        databases.close()
    print(f"faults in any order: {runs} runs of up to {steps} steps held (seed {chosen}), "
          f"{time.perf_counter() - start:.0f} s")  # fmt: skip


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--runs", type=int, default=200)
    parser.add_argument("--steps", type=int, default=50)
    parser.add_argument("--seed", type=int, default=None)
    options = parser.parse_args()
    main(options.runs, options.steps, options.seed)
