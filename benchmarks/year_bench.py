"""Does a recall miss a piece, is a shipment netted, does a year miss anything that was due?

`python -m benchmarks.year_bench [--register N] [--shipments N] [--members N] [--weeks N]` prints: a
seeded register with known truth against the county's notice; seeded shipments with known truth;
a department's year, lived through the tasks from ledger entries and read back by other code.
Everything in them is invented.
"""

import argparse
import time
from collections import Counter

from tests.seeded_register import NOTICE, seeded_register
from tests.seeded_shipments import seeded_shipment
from tests.year_checked import missed
from tests.year_simulated import simulate

from sootline.core.basis import Bearing
from sootline.core.upkeep.contractor import Arrival, reconcile
from sootline.core.upkeep.recalls import Affected, match_notice


def main() -> None:
    """Print all three."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--register", type=int, default=100_000)
    parser.add_argument("--shipments", type=int, default=1_000)
    parser.add_argument("--members", type=int, default=60)
    parser.add_argument("--weeks", type=int, default=52)
    options = parser.parse_args()
    print_recall(options.register)
    print_shipments(options.shipments)
    if options.weeks:
        print_year(options.members, options.weeks)


def print_recall(count: int) -> None:
    """Print how a register stands to a notice, by what each piece truly is."""
    every = tuple(seeded_register(count, seed=1))
    start = time.perf_counter()
    matches = tuple(match_notice(NOTICE, (one.piece for one in every)))
    took = time.perf_counter() - start
    counts = Counter((one.meant, two.affected) for one, two in zip(every, matches, strict=True))
    possible = [one for one in matches if one.affected is Affected.POSSIBLE]
    explained = sum(
        any(reason.bearing is Bearing.ASKS for reason in one.reasons) for one in possible
    )
    print(f"recall: {count} pieces in {took:.1f} s      affected  possible  not affected  gone")
    for meant in (True, False):
        row = [counts[meant, affected] for affected in Affected]
        name = "truly meant" if meant else "truly not meant"
        print(f"  {name:34} {row[0]:9} {row[1]:9} {row[2]:13} {row[3]:5}")
    print(f"  meant and said not to be: {counts[True, Affected.NOT_AFFECTED]}")
    print(f"  possible ones that say why: {explained} of {len(possible)}")


def print_shipments(count: int) -> None:
    """Print in how many shipments a rule of receiving was broken."""
    netted = assigned = moved = corrected = pieces = 0
    for seed in range(count):
        one = seeded_shipment(seed)
        found = reconcile(one.manifest, (one.receipt,), one.register)
        pieces += len(found.arrived)
        sent = {row.component for row in one.manifest.pieces}
        plain = {one.truth[place] for place in one.plain}
        netted += set(found.back) != plain or set(found.missing) != sent - plain
        open_ones = (Arrival.UNIDENTIFIED, Arrival.PROBABLE)
        assigned += any(row.arrival in open_ones and row.component for row in found.arrived)
        moved += any(
            row.component is not None and one.truth[place] is None
            for place, row in enumerate(found.arrived)
        )
        corrected += [row.read for row in found.arrived] != [row.read for row in one.receipt.pieces]
    print(f"shipments: {count}, {pieces} pieces came")
    print(f"  netted {netted}, unidentified assigned {assigned}, foreign moved {moved},", end=" ")
    print(f"readings corrected {corrected}")


def print_year(members: int, weeks: int) -> None:
    """Print what a year missed, and whose seat planned work emptied."""
    start = time.perf_counter()
    year = simulate(members, weeks, seed=1)
    took = time.perf_counter() - start
    entries = year.book.ledger.head().seq
    taken = sum(len(week.taken) for week in year.weeks)
    emptied = sum(len(week.riding_before - week.riding_after) for week in year.weeks)
    bare = sum(len(week.bare) for week in year.weeks)
    pieces = len(year.job.components)
    print(
        f"year: {members} members, {pieces} pieces, {weeks} weeks, {entries} entries, {took:.0f} s"
    )
    print(f"  taken {taken} times; due and not done by its day: {len(missed(year))};", end=" ")
    print(f"seats emptied by planned work: {emptied}; taken without something to wear: {bare}")


if __name__ == "__main__":
    main()
