"""Which cautions stand on a sheet, where the work is done, and which picture goes with each?

All are common practice, no published source, unless a decision brings its own; all defer to the
label, the maker, local codes and verified providers.
"""

from collections.abc import Iterable

from sootline.core.basis import ContaminantId, MessageId
from sootline.paper.engine import PICTURES, Facts
from sootline.paper.speaking import Said, Speaker, joined
from sootline.tasks.hazards import WetBag

ON_CONTAMINANT: dict[ContaminantId, tuple[str, MessageId]] = {
    ContaminantId("blood"): ("blood", MessageId("paper.caution.blood")),
    ContaminantId("battery-smoke"): ("battery_fragments", MessageId("paper.caution.battery")),
    ContaminantId("asbestos"): ("fibres", MessageId("paper.caution.asbestos")),
}
SHARPS = ("sharps", MessageId("paper.caution.sharps"))
ON_POSTS = ("gloves_on_posts", MessageId("paper.caution.posts"))
NO_HEAT = ("no_heat", MessageId("paper.caution.no_heat"))


def on_contaminants(speaker: Speaker, hazards: Iterable[ContaminantId]) -> list[Facts]:
    """Return the cautions for what may be on the gear."""
    return [
        pictured(speaker, *ON_CONTAMINANT[hazard]) for hazard in hazards if hazard in ON_CONTAMINANT
    ]


def wet_bags(speaker: Speaker, bags: Iterable[WetBag]) -> list[Facts]:
    """Return one caution that names every wet bag and its hours, or none."""
    listed = joined([_wet(speaker, bag) for bag in bags], "; ")
    if not listed:
        return []
    return [pictured(speaker, "wet_hours", MessageId("paper.caution.wet"), bags=listed)]


def pictured(
    speaker: Speaker, picture: str, message: MessageId, **values: Said
) -> dict[str, Facts]:
    """Return a sentence with its picture and what the picture says in words."""
    return {
        "picture": picture,
        "alt": picture_text(speaker, picture),
        "text": speaker.say(message, **values),
    }


def picture_text(speaker: Speaker, picture: str) -> str:
    """Return what a picture shows, in the page's first language."""
    return speaker.say(f"paper.picture.{picture}")[0]


def has_picture(name: str) -> bool:
    """Whether there is a picture of this name."""
    return (PICTURES / f"{name}.svg").is_file()


def _wet(speaker: Speaker, bag: WetBag) -> Said:
    return speaker.say(
        "paper.caution.wet_bag",
        member=bag.member,
        bags=", ".join(bag.bags),
        least=f"{bag.least_h:g}",
        most=f"{bag.most_h:g}",
    )
