"""What do two shifts sign when one takes over from the other?"""

import datetime as dt

from sootline.core.basis import MessageId
from sootline.paper.cautions import on_contaminants, wet_bags
from sootline.paper.engine import Facts
from sootline.paper.page import Page
from sootline.paper.pieces import by_owner
from sootline.paper.plan_rows import rows_of
from sootline.paper.sheets import print_sheet
from sootline.paper.speaking import Speaker
from sootline.paper.timeline import draw_timeline
from sootline.tasks.hand_over import Handover, Left
from sootline.tasks.hazards import hazards_on
from sootline.tasks.plan_wash import PlanResult

_LABELS = ("giver", "taker", "at", "nothing", "notes", "timeline", "defer")


def print_handover(
    handover: Handover,
    page: Page,
    *,
    plan: PlanResult,
    now: dt.datetime,
    names: tuple[str, str] = ("", ""),
) -> bytes:
    """Return the handover sheet as PDF: exceptions to tick, the wash plan, two signatures.

    Args:
        now: the moment the facts are of.
        names: who hands over and who takes over, where both have said so.
    """
    speaker = Speaker(page=page)
    start = page.local(plan.aim.start)
    title = speaker.say("paper.handover.timeline")
    drawn = draw_timeline(
        rows_of(plan, speaker), start, now=page.local(now), title=title[0], name_day=speaker.day
    )
    facts: dict[str, Facts] = {
        "labels": {label: speaker.say(f"paper.handover.{label}") for label in _LABELS},
        "names": names,
        "as_of": speaker.say("paper.handover.as_of", at=speaker.moment(now)),
        "groups": [
            {
                "name": speaker.say(f"paper.left.{left}"),
                "count": len(pieces),
                "rows": by_owner(pieces, speaker),
                "black": left is Left.HELD,
            }
            for left, pieces in handover.exceptions
        ],
        "usual": speaker.say("paper.handover.usual", n=handover.usual),
        "down": speaker.say("paper.handover.down", washers=", ".join(handover.down))
        if handover.down
        else None,
        "cautions": [
            *on_contaminants(speaker, hazards_on(plan.loads.decided.decisions)),
            *wet_bags(speaker, handover.wet_bags),
        ],
        "timeline_alt": title[0],
    }
    sheet_title = MessageId("paper.title.handover")
    return print_sheet("handover", sheet_title, facts, speaker, {"timeline": drawn})
