"""What do all sheets have: paper, languages, title, foot with the moment and the page of pages?"""

from collections.abc import Mapping

from sootline.core.basis import MessageId
from sootline.paper.engine import Facts, typeset
from sootline.paper.speaking import Speaker


def print_sheet(
    layout: str,
    title: MessageId,
    facts: Mapping[str, Facts],
    speaker: Speaker,
    drawings: Mapping[str, str] | None = None,
) -> bytes:
    """Return a sheet as PDF.

    Args:
        layout: name of the layout.
        facts: what only this sheet has.
        drawings: further SVG texts by name.
    """
    page = speaker.page
    printed = speaker.say("paper.printed", at=speaker.moment(page.printed_at))
    frame: dict[str, Facts] = {
        "paper": page.size.value,
        "bilingual": len(page.languages) > 1,
        "lang": page.languages[0].partition("_")[0],
        "title": speaker.say(title),
        "foot": {
            "left": [
                *([page.department] if page.department else []),
                *speaker.say(title),
                *printed,
            ],
            "pages": speaker.say("paper.pages", page="{page}", pages="{pages}"),
        },
    }
    return typeset(layout, frame | dict(facts), printed_at=page.printed_at, drawings=drawings)
