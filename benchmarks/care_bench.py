"""How many components are decided per second? `python -m benchmarks.care_bench` prints it.

10,000 components of 1,000 invented members after 50 calls: smoke, two open hazards each, and blood
on one coat in twenty.
"""

import datetime as dt
import time

from sootline.core.basis import (
    CallId,
    ComponentId,
    ContaminantId,
    EditionId,
    KindId,
    MemberId,
    SetId,
)
from sootline.core.care import CarePolicy, decide_care
from sootline.core.exposure import Answer, Call, Hazard, Presence, Remark, Zone
from sootline.core.gear import Component
from sootline.core.rulebook import Knowledge, assemble
from sootline.files.rules import RuleFiles

MEMBERS, CALLS, PER_CALL = 1000, 50, 20
KINDS = (
    "coat-shell", "coat-liner", "drag-device", "trouser-shell", "trouser-liner", "suspenders",
    "hood", "gloves", "boots-leather", "helmet-shell",
)  # fmt: skip
AT = dt.datetime(2026, 3, 1, 22, tzinfo=dt.UTC)


def components() -> tuple[Component, ...]:
    """Ten components for every member."""
    return tuple(
        Component(
            id=ComponentId(f"{member}-{kind}"),
            kind=KindId(kind),
            owner=MemberId(f"M{member}"),
            set=SetId(f"S{member}"),
        )
        for member in range(MEMBERS)
        for kind in KINDS
    )


def calls() -> tuple[Call, ...]:
    """Fifty calls of twenty people."""
    hazards = (
        Hazard(contaminant=ContaminantId("asbestos")),
        Hazard(contaminant=ContaminantId("battery-smoke"), knowledge=Knowledge.SUSPECTED),
    )
    return tuple(
        Call(
            id=CallId(f"C{number}"),
            at=AT,
            people=tuple(
                Presence(member=MemberId(f"M{member}"), zones=(Zone.INSIDE,), smoke=Answer.YES)
                for member in range(number * PER_CALL, (number + 1) * PER_CALL)
            ),
            hazards=hazards,
            remarks=(
                Remark(
                    component=ComponentId(f"{number * PER_CALL}-coat-shell"),
                    contaminant=ContaminantId("blood"),
                    said_by="captain",
                ),
            ),
        )
        for number in range(CALLS)
    )


def measure() -> tuple[int, float]:
    """Return how many components were decided, and in how many seconds."""
    files = RuleFiles()
    adopted = files.edition(EditionId("nfpa-1851/2020"))
    rulebook = assemble(adopted=adopted, policy=(), practice=files.practice()).rulebook
    gear, went = components(), calls()
    start = time.perf_counter()
    decisions = decide_care(
        components=gear,
        guides=(),
        calls=went,
        rulebook=rulebook,
        contaminants=files.contaminants(),
        policy=CarePolicy(),
        now=AT,
    )
    return len(decisions), time.perf_counter() - start


def main() -> None:
    """Print decisions per second."""
    count, seconds = measure()
    print(f"care: {count} components decided in {seconds:.2f} s, {count / seconds:.0f} a second")


if __name__ == "__main__":
    main()
