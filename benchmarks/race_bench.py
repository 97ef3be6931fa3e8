"""Does anything stand twice or not at all when replies get lost, and who wins a race?

`python -m benchmarks.race_bench [--submissions 1000] [--drop 0.45] [--rounds 50] [--seed 1]`
prints it for each database there is; a minute.
"""

import argparse

from tests.integration.store_databases import Databases, set_up


def main(submissions: int = 1000, drop: float = 0.45, rounds: int = 50, seed: int = 1) -> None:
    """Print what came of dropped replies, of eight editors and of eight equal requests."""
    set_up()
    databases = Databases()
    try:
        for vendor in ("sqlite", "postgresql"):
            if databases.able(vendor):
                _races(databases, vendor, submissions, drop, rounds, seed=seed)
    finally:
        databases.close()


def _races(
    databases: Databases, vendor: str, submissions: int, drop: float, rounds: int, *, seed: int
) -> None:
    from tests.integration.store_acts import store_in  # noqa: PLC0415
    from tests.integration.store_races import (  # noqa: PLC0415
        ask_at_once,
        drop_replies,
        edit_at_once,
    )

    store = store_in(databases.fresh(vendor))
    found = drop_replies(store, each=submissions // 4, drop=drop, seed=seed)
    share = found.dropped / (found.submissions + found.dropped)
    print(f"{vendor}: {found.submissions} submissions (seed {seed}), {found.dropped} replies "
          f"dropped and asked for again ({share:.0%} of all), {found.doubled} double, "
          f"{found.missing} missing, chain whole: {found.intact}")  # fmt: skip
    edited = edit_at_once(store_in(databases.fresh(vendor)), rounds=rounds)
    print(f"{vendor}: {edited.rounds} rounds of 8 editors of one piece: one winner in "
          f"{edited.one_winner}, {edited.shown} of {edited.rounds * 7} others shown the winner's "
          "entry")  # fmt: skip
    agreed = ask_at_once(store_in(databases.fresh(vendor)), rounds=rounds)
    print(f"{vendor}: {rounds} rounds of one request sent 8 times at once: one entry in {agreed}")


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--submissions", type=int, default=1000)
    parser.add_argument("--drop", type=float, default=0.45)
    parser.add_argument("--rounds", type=int, default=50)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    main(options.submissions, options.drop, options.rounds, options.seed)
