"""How is a wash plan written down, so that it is read back after a restart as it was?

Loads, times and who is back when stand in plain words. Beside them stands the whole plan packed,
for the program alone; one that a later program cannot unpack is planned again.
"""

import base64
import zlib
from dataclasses import dataclass

from sootline.core.basis import BadInputError, Finding, ItemId, MinuteSpan
from sootline.core.care import Decision
from sootline.core.job.codec import decode, encode
from sootline.core.job.jobs import Job
from sootline.core.laundry.sorts import Sorting
from sootline.core.ledger import ItemKind, item
from sootline.core.ledger.canonical import Json
from sootline.core.ledger.forms import Payload
from sootline.core.rulebook import assemble
from sootline.core.washplan.bottleneck import Pressure
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.why import OrderReason
from sootline.core.washplan.worksheet import Worksheet
from sootline.tasks.decide import Decided
from sootline.tasks.form_loads import Loads
from sootline.tasks.plan_wash import Aim, PlanResult
from sootline.tasks.ports import Rules


@dataclass(frozen=True, kw_only=True)
class _Packed:
    """A plan without the rule texts, which the department names, and with its own decisions."""

    aim: Aim
    decisions: tuple[Decision, ...]
    sorting: Sorting
    instance: Instance
    plan: Plan
    worksheet: Worksheet
    pressures: tuple[Pressure, ...]
    why: tuple[OrderReason, ...]
    rests_on: tuple[Finding, ...]
    refused: tuple[Finding, ...]


def plan_item(station: str | None) -> ItemId:
    """Return under which name the plan of a station's wash room stands; None is all of them."""
    return item(ItemKind.DEPARTMENT, f"wash-room/{station}" if station else "wash-room")


def plan_said(plan: PlanResult) -> dict[str, Json]:
    """Return what an entry says of a plan."""
    washed = {one for sort in plan.loads.sorting.sorts for one in sort.components}
    packed = _Packed(
        aim=plan.aim,
        decisions=tuple(one for one in plan.loads.decided.decisions if one.component in washed),
        sorting=plan.loads.sorting,
        instance=plan.instance,
        plan=plan.plan,
        worksheet=plan.worksheet,
        pressures=plan.pressures,
        why=plan.why,
        rests_on=plan.rests_on,
        refused=plan.refused,
    )
    whole = zlib.compress(encode(_Packed, packed, indent=None).encode(), 9)
    return {
        "goal": plan.aim.goal.value,
        "start": plan.aim.start.isoformat(),
        "loads": [
            {
                "number": load.number,
                "washer": load.washer,
                "programme": load.programme,
                "pieces": list(load.components),
                "start_min": _span(load.start),
                "end_min": _span(load.end),
            }
            for load in plan.worksheet.loads
        ],
        "back": [
            {"member": back.member, "at_min": _span(back.at) if back.at else None}
            for back in plan.worksheet.back
        ],
        "packed": base64.b64encode(whole).decode(),
    }


def plan_read(rules: Rules, job: Job, said: Payload) -> PlanResult | None:
    """Return the plan an entry says, for a department; None where it cannot be read any more."""
    text = said.get("packed")
    try:
        document = zlib.decompress(base64.b64decode(text if isinstance(text, str) else ""))
        packed = decode(_Packed, document.decode())
    except (BadInputError, ValueError, zlib.error):
        return None
    book = assemble(
        adopted=rules.edition(job.department.edition),
        policy=job.department.policy,
        practice=rules.practice(),
    )
    decided = Decided(rulebook=book.rulebook, decisions=packed.decisions, findings=book.findings)
    return PlanResult(
        aim=packed.aim,
        loads=Loads(decided=decided, sorting=packed.sorting),
        instance=packed.instance,
        plan=packed.plan,
        worksheet=packed.worksheet,
        pressures=packed.pressures,
        why=packed.why,
        rests_on=packed.rests_on,
        refused=packed.refused,
    )


def _span(span: MinuteSpan) -> list[Json]:
    return [span.earliest, span.likely, span.late]
