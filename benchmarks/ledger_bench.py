"""How fast is a record written, verified and replayed, and do two verifiers agree?

`python -m benchmarks.ledger_bench --million` also verifies a million entries as they are made, and
prints the most memory that took; it runs for some minutes.
"""

import datetime as dt
import random
import sys
import time
from collections.abc import Callable, Iterator

from tests import ledger_tampering as tampering
from tests.ledger_cases import TARN_HOLLOW, at
from tests.ledger_records import grown

from sootline import ledger_verifier
from sootline.core.basis import DeviceId, MemberId
from sootline.core.ledger import (
    ClockSource,
    Draft,
    Entry,
    EntryKind,
    Established,
    Occurred,
    append,
    begin,
    component,
    take_anchor,
    verify_chain,
    write_anchor,
    write_payload,
)
from sootline.core.ledger.damage import report
from sootline.core.ledger.exports import export_all, read_line
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.folding import fold, fold_facts

K = EntryKind
# One wash, from the call to the hook.
ROUND: tuple[tuple[EntryKind, dict[str, object]], ...] = (
    (K.WORN, {"member": "101", "call": "c-31"}),
    (K.RETURNED_SOILED, {}),
    (K.SORTED, {"by": "131"}),
    (K.PUT_IN_WASHER, {"load": "W-12"}),
    (K.WASHER_ENDED, {"level": "advanced", "by": "131"}),
    (K.HUNG, {"place": "cabinet"}),
    (K.DRIED, {}),
    (K.TOUCH_CHECKED, {"by": "118"}),
    (K.REBUILT, {"by": "118"}),
    (K.BACK_ON_HOOK, {"holder": "101"}),
)


def entries(pieces: int, each: int) -> Iterator[Entry]:
    """Write the washes of many pieces, one entry after another."""
    head, start = begin(TARN_HOLLOW), at("04:00")
    for order in range(pieces * each):
        step, piece = divmod(order, pieces)
        now = start + dt.timedelta(minutes=order)
        kind, said = ROUND[step % len(ROUND)]
        draft = Draft(
            idem=f"k{order}",
            item=component(f"{piece:04}"),
            kind=kind,
            occurred=Occurred.at(now, ClockSource.DEVICE, offset_s=0),
            device=DeviceId("phone-a"),
            actor=MemberId("201"),
            established=Established.PIN,
            payload=write_payload(said),
        )
        done = append(head, draft, now=now, salt=order.to_bytes(16, "big"), seen=now)
        head = done.head
        yield done.entry


def best(work: Callable[[], object], times: int = 5) -> float:
    """Return the shortest of several runs [s]."""
    took = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        took.append(time.perf_counter() - start)
    return min(took)


def agreeing(records: int, length: int) -> int:
    """Return over how many entries, a third of the records damaged, both verifiers agree."""
    checked = 0
    for seed in range(records):
        kept = grown(seed, length).entries
        anchor = take_anchor(TARN_HOLLOW, (entry.hash for entry in kept), at("09:00"))
        assert anchor is not None
        if seed % 3 == 0:
            chance = random.Random(seed)  # noqa: S311  # repeatable
            kept = chance.choice(tampering.KINDS[:-2])(kept, chance)
        lines = [*export_all(TARN_HOLLOW, ())]
        lines += [_line(entry) for entry in kept]
        apart = ledger_verifier.verify(
            iter(lines), [ledger_verifier.read_anchor(write_anchor(anchor))]
        )
        read = (read_line(line, place).entry for place, line in enumerate(lines[1:], start=1))
        assert ledger_verifier.written(apart) == report(verify_chain(read, [anchor]))
        checked += len(kept)
    return checked


def _line(entry: Entry) -> str:
    parts = {"header": entry.header, "hash": entry.hash, "payload": entry.payload,
             "salt": None if entry.salt is None else entry.salt.hex()}  # fmt: skip
    return ledger_verifier.written({name: part for name, part in parts.items() if part is not None})


def main() -> None:
    """Print writing, verifying, folding and replaying, per second and for one piece."""
    start = time.perf_counter()
    kept = list(entries(500, 40))
    count = len(kept)
    print(f"written, in memory:        {count / (time.perf_counter() - start):10,.0f} entries/s")
    print(f"verified:                  {count / best(lambda: verify_chain(kept)):10,.0f} entries/s")
    lines = list(export_all(TARN_HOLLOW, kept))
    apart = best(lambda: ledger_verifier.verify(iter(lines), []), 3)
    print(f"verified apart, from lines:{count / apart:10,.0f} entries/s")
    print(f"replayed:                  {count / best(lambda: fold(kept), 3):10,.0f} entries/s")
    one = list(entries(1, 500))
    facts = read_facts(one)
    print(f"500 entries of one piece:  {best(lambda: fold_facts(facts), 9) * 1e3:10.2f} ms folded,"
          f" {best(lambda: read_facts(one), 9) * 1e3:.2f} ms read")  # fmt: skip
    checked = agreeing(200, 52)
    print(f"two verifiers agree on:    {checked:10,} entries, word for word")
    if "--million" in sys.argv:
        million()


def million() -> None:
    """Verify a million entries as they are made, and print the most memory it took."""
    import resource  # noqa: PLC0415  # not on every system

    start = time.perf_counter()
    result = verify_chain(entries(25_000, 40))
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"a million entries:         {time.perf_counter() - start:10.0f} s with writing them,"
          f" {most:.0f} MiB at most, whole: {result.intact}")  # fmt: skip


if __name__ == "__main__":
    main()
