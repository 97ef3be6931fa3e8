"""What does whoever handles the gear next have to mind, whatever each piece needs?"""

from collections.abc import Iterator

from sootline.cli.output import printable
from sootline.cli.pieces import wrapped
from sootline.core.care import Fate
from sootline.core.job.jobs import Job
from sootline.tasks.decide import Decided
from sootline.tasks.hazards import WetBag, list_wet_bags
from sootline.words import say

_HANDLED = (Fate.WASH, Fate.HOLD, Fate.LOOK)


def at_hand_lines(job: Job, decided: Decided, lang: str) -> Iterator[str]:
    """Say what goes for all gear of the night: sharps, wet bags with their hours, heat.

    The sheets carry the same sentences with pictures.
    """
    if not any(decision.fate in _HANDLED for decision in decided.decisions):
        return
    yield from ("", say("decide.at_hand", lang=lang))
    yield from wrapped(f"- {say('paper.caution.sharps', lang=lang)}")
    bags = "; ".join(_wet(bag, lang) for bag in list_wet_bags(job))
    if bags:
        yield from wrapped(f"- {say('paper.caution.wet', {'bags': bags}, lang=lang)}")
    yield from wrapped(f"- {say('paper.caution.no_heat', lang=lang)}")


def _wet(bag: WetBag, lang: str) -> str:
    values = {
        "member": printable(bag.member),
        "bags": printable(", ".join(bag.bags)),
        "least": f"{bag.least_h:g}",
        "most": f"{bag.most_h:g}",
    }
    return say("paper.caution.wet_bag", values, lang=lang)
