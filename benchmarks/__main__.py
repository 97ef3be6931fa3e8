"""`python -m benchmarks`: every figure that the README and the notes claim, printed in one go."""

from benchmarks import (
    care_bench,
    drying_bench,
    ledger_bench,
    plan_bench,
    riding_bench,
    start_bench,
    web_bench,
)

for bench in (
    start_bench,
    care_bench,
    drying_bench,
    plan_bench,
    riding_bench,
    ledger_bench,
    web_bench,
):
    bench.main()
    print()
