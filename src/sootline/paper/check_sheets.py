"""What does a person tick while feeling and looking over gear, so that it is quickly typed in?

Rows are numbered through the sheet; points have letters and flaws have numbers, so that a row is
typed as a few signs.
"""

from collections.abc import Sequence
from string import ascii_uppercase

from sootline.core.basis import MessageId
from sootline.core.rebuild import Flaw
from sootline.core.rebuild.assembly import DRAG_DEVICE
from sootline.paper.engine import Facts
from sootline.paper.page import Page
from sootline.paper.sheets import print_sheet
from sootline.paper.speaking import Speaker
from sootline.tasks.check_sheets import CheckGroup

_AFTER_WASH = (MessageId("paper.check.after_wash"), MessageId("paper.check.after_wash_ask"))
_ROUTINE = (MessageId("paper.check.routine"), MessageId("paper.check.routine_ask"))
_LABELS = ("row", "piece", "owner", "flaw", "where", "codes", "checked_by", "at", "how",
           "defer", "nothing", "routing", "routing_yes", "routing_no")  # fmt: skip


def print_check_sheets(
    after_wash: Sequence[CheckGroup], routine: Sequence[CheckGroup], page: Page
) -> bytes:
    """Return both tick-off sheets as PDF: the check after washing, then the look by the wearer."""
    speaker = Speaker(page=page)
    facts: dict[str, Facts] = {
        "labels": {label: speaker.say(f"paper.check.{label}") for label in _LABELS},
        "sheets": [
            _sheet(*_AFTER_WASH, after_wash, speaker),
            _sheet(*_ROUTINE, routine, speaker),
        ],
        "flaws": [
            {"code": str(number), "name": speaker.name("flaw", flaw)}
            for number, flaw in enumerate(Flaw, start=1)
        ],
    }
    return print_sheet("check_sheet", MessageId("paper.title.check_sheets"), facts, speaker)


def _sheet(
    title: MessageId, ask: MessageId, groups: Sequence[CheckGroup], speaker: Speaker
) -> dict[str, Facts]:
    number = 0
    listed: list[Facts] = []
    for group in groups:
        rows: list[Facts] = []
        for component in group.components:
            number += 1
            rows.append({"n": str(number), "id": component.id, "owner": component.owner or "-"})
        listed.append(
            {
                "kind": speaker.name("kind", group.kind),
                "routed": group.kind == DRAG_DEVICE,
                "points": [
                    {"letter": letter, "name": speaker.say(point)}
                    for letter, point in zip(ascii_uppercase, group.points, strict=False)
                ],
                "rows": rows,
            }
        )
    return {
        "title": speaker.say(title),
        "ask": speaker.say(ask),
        "groups": listed,
    }
