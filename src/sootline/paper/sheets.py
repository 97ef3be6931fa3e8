"""What do all sheets have: paper, languages, title, foot with the moment and the page of pages?"""

from collections.abc import Mapping, Sequence

from sootline.core.basis import MessageId
from sootline.core.ledger.check_words import check_words
from sootline.paper.engine import Facts, typeset
from sootline.paper.speaking import Speaker

# A text of more signs than this may break over pages, whatever is otherwise kept together.
_LONG = 1500
_FOOT = 60


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
        "long": _longest(facts) > _LONG,
        "bilingual": len(page.languages) > 1,
        "lang": page.languages[0].partition("_")[0],
        "title": speaker.say(title),
        "foot": {
            "left": [
                *_in_foot(page.department),
                *speaker.say(title),
                *printed,
            ],
            "record": _record(speaker),
            "pages": speaker.say("paper.pages", page="{page}", pages="{pages}"),
        },
    }
    return typeset(layout, frame | dict(facts), printed_at=page.printed_at, drawings=drawings)


def _record(speaker: Speaker) -> list[str]:
    """Return by what somebody finds later whether the record was changed since."""
    anchor = speaker.page.record
    if anchor is None:
        return []
    words = check_words(anchor.root)
    return speaker.say("paper.record", n=anchor.n, words=words, hash=anchor.hash)


def _longest(facts: Facts) -> int:
    match facts:
        case str():
            return len(facts)
        case Mapping():
            return max((_longest(fact) for fact in facts.values()), default=0)
        case Sequence():
            return max((_longest(fact) for fact in facts), default=0)
    return 0


def _in_foot(department: str) -> list[str]:
    """Return the department as far as the foot of a page has room."""
    short = department if len(department) <= _FOOT else f"{department[:_FOOT]}…"
    return [short] if short else []
