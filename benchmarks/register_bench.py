"""How long does a county wait for what is due, and what does its record cost?

`python -m benchmarks.register_bench [--components 50000 500000] [--each 1] [--vendor sqlite]`
loads registers of an invented county in bulk, entry by entry under the record's guards, and prints
how long a page of the due list takes: the first, one far behind, a station's, and one after an act.
`--each 40` washes every piece some times: a stress of its own; `--seconds S` stops it loading then.
"""

import argparse
import datetime as dt
import json
import statistics
import time
from collections.abc import Callable, Iterator
from dataclasses import replace

from tests.integration.store_databases import Database, Databases, lead_to, set_up

from sootline.core.basis import ComponentId, DateSpan, DeviceId, InstallationId, MemberId
from sootline.core.intervals import Matter
from sootline.core.ledger import (
    ClockSource,
    Draft,
    Entry,
    EntryKind,
    Occurred,
    append,
    begin,
    component,
)
from sootline.core.ledger.acts import Act
from sootline.core.ledger.kinds import Established
from sootline.tasks.ports import DueKey

NAME = InstallationId("county")
START = dt.datetime(2026, 1, 1, 12, tzinfo=dt.UTC)
TODAY = dt.date(2026, 3, 1)
STATIONS = 200
K = EntryKind
# Thirteen steps of a piece's way, three times: with its registering forty entries.
_STEPS: tuple[tuple[EntryKind, dict[str, object]], ...] = (
    (K.WORN, {"member": "118", "call": "c-31"}),
    (K.REDUCED_ON_SCENE, {"done": "part"}),
    (K.RETURNED_SOILED, {"by": "118"}),
    (K.BAGGED, {"bag": "B7"}),
    (K.SORTED, {"by": "131"}),
    (K.PUT_IN_WASHER, {"load": "W1", "by": "131"}),
    (K.WASHER_ENDED, {"level": "advanced", "by": "131"}),
    (K.HUNG, {"place": "cabinet"}),
    (K.DRIED, {}),
    (K.TOUCH_CHECKED, {"by": "118"}),
    (K.REBUILT, {"by": "118"}),
    (K.INSPECTED_ADVANCED, {"by": "118", "findings": "none"}),
    (K.BACK_ON_HOOK, {"holder": "101"}),
)


def main(sizes: list[int], each: int = 1, vendor: str = "sqlite", seconds: float = 1e9) -> None:
    """Print loading and reading of each size, and how the last compares with the first.

    Pages of all sizes are read in turn, so that what else the machine does falls on all alike.
    """
    set_up()
    databases = Databases()
    try:
        made = [_loaded(databases, vendor, size, each, seconds=seconds) for size in sizes]
        waits = _read_in_turn(made)
    finally:
        databases.close()
    for size, wait in zip(sizes, waits, strict=True):
        told = ", ".join(
            f"{name} {statistics.median(wall for wall, _ in took) * 1e3:.1f} ms "
            f"({statistics.median(work for _, work in took) * 1e3:.1f} of it work here)"
            for name, took in wait.items()
        )
        print(f"{vendor}, {size:,} components, due list of 50: {told}")
    if len(waits) > 1:
        ratios = ", ".join(f"{name} {_ratio(waits[-1][name], waits[0][name])}" for name in waits[0])
        print(f"{sizes[-1]:,} against {sizes[0]:,}: {ratios}")


_Took = dict[str, list[tuple[float, float]]]


def _ratio(more: list[tuple[float, float]], less: list[tuple[float, float]]) -> str:
    wall, work = (
        statistics.median(one[at] for one in more) / statistics.median(one[at] for one in less)
        for at in (0, 1)
    )
    return f"{wall:.2f} times the time, {work:.2f} times the work"


def _loaded(databases: Databases, vendor: str, size: int, each: int, *, seconds: float) -> Database:
    from django.db import transaction  # noqa: PLC0415

    from sootline.storage.entries import insert_many  # noqa: PLC0415
    from sootline.storage.models import Installation  # noqa: PLC0415
    from sootline.storage.projecting import replay  # noqa: PLC0415

    made = databases.fresh(vendor)
    Installation.objects.create(name=NAME, since=START)
    start = time.perf_counter()
    with transaction.atomic():
        insert_many(_record(size, each, start + seconds), NAME, "default")
    loaded = time.perf_counter()
    with transaction.atomic():
        count = replay("default")
    replayed = time.perf_counter()
    _page()
    reckoned = time.perf_counter() - replayed
    print(f"{vendor}, {size:,} components: {count:,} entries loaded in {loaded - start:.0f} s "
          f"({count / (loaded - start):,.0f}/s), replayed in {replayed - loaded:.0f} s "
          f"({count / (replayed - loaded):,.0f}/s), due days reckoned once in {reckoned:.0f} s",
          flush=True)  # fmt: skip
    return made


def _page(station: str | None = None, after: DueKey | None = None) -> None:
    from sootline.storage.dues import DueStore  # noqa: PLC0415
    from sootline.storage.register import RegisterStore  # noqa: PLC0415
    from sootline.tasks.list_due_page import list_due_page  # noqa: PLC0415
    from sootline.wiring.rules import RULES  # noqa: PLC0415

    register, days = RegisterStore(station=station), DueStore(station=station)
    list_due_page(RULES, register, days, today=TODAY, after=after)


def _read_in_turn(made: list[Database], times: int = 25) -> list[_Took]:
    """Read each page of each register, over and over; the first turn warms up."""
    far = DueKey(TODAY - dt.timedelta(days=20), ComponentId("0"), Matter.RETIREMENT)
    pages: dict[str, Callable[[], None]] = {
        "first page": _page,
        "far behind": lambda: _page(after=far),
        "a station's": lambda: _page("station-7"),
    }
    found: list[_Took] = [{name: [] for name in pages} for _ in made]
    for turn in range(times + 1):
        for database, took in zip(made, found, strict=True):
            lead_to(database)
            _page()
            for name, page in pages.items():
                wall, work = time.perf_counter(), time.process_time()
                page()
                spent = (time.perf_counter() - wall, time.process_time() - work)
                if turn:
                    took[name].append(spent)
    return found


def _record(size: int, each: int, end: float) -> Iterator[Entry]:
    head = begin(NAME)
    for order, draft in enumerate(_drafts(size, each)):
        if time.perf_counter() > end:
            return
        now = START + dt.timedelta(milliseconds=order)
        done = append(head, draft, now=now, salt=order.to_bytes(16, "big"), seen=now)
        head = done.head
        yield done.entry


def _drafts(size: int, each: int) -> Iterator[Draft]:
    """Describe the department, register everything, then wash it all, again and again."""
    from sootline.core.job.codec import encode  # noqa: PLC0415
    from sootline.core.job.things import DepartmentFacts  # noqa: PLC0415
    from sootline.tasks.register_gear import register_payload  # noqa: PLC0415
    from sootline.tasks.register_things import HERE  # noqa: PLC0415
    from sootline.wiring.demo import demo_job  # noqa: PLC0415

    job = demo_job()
    facts = DepartmentFacts(department=job.department, guides=job.guides, wash_room=job.wash_room)
    said = json.loads(encode(DepartmentFacts, facts, indent=None))
    yield _act("d").entry(K.FACTS_CHANGED, HERE, said)
    templates = [replace(one, records=()) for one in job.components]
    for n in range(size):
        made = START.date() - dt.timedelta(days=30 + n * 7919 % 4000)
        one = replace(templates[n % len(templates)], id=ComponentId(f"{n:06}"),
                      made=DateSpan.parse(made.isoformat()))  # fmt: skip
        payload = {**register_payload(one), "station": f"station-{n % STATIONS}"}
        yield _act(f"r{n}").entry(K.REGISTERED, component(one.id), payload)
    for step in range(each - 1):
        kind, about = _STEPS[step % len(_STEPS)]
        for n in range(size):
            yield _act(f"s{step}-{n}").entry(kind, component(f"{n:06}"), about)


def _act(key: str) -> Act:
    return Act(
        idem=key, occurred=Occurred.at(START, ClockSource.SERVER), device=DeviceId("bench"),
        actor=MemberId("118"), established=Established.SIGNED_IN,
    )  # fmt: skip


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--components", type=int, nargs="+", default=[50_000, 500_000])
    parser.add_argument("--each", type=int, default=1)
    parser.add_argument("--vendor", default="sqlite")
    parser.add_argument("--seconds", type=float, default=1e9)
    options = parser.parse_args()
    main(options.components, options.each, options.vendor, options.seconds)
