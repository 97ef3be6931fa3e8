"""Which cautions stand on a sheet, where the work is done, and which picture goes with each?

All are common practice, no published source, unless a decision brings its own; all defer to the
label, the maker, local codes and verified providers.
"""

from collections.abc import Iterable

from sootline.core.basis import ContaminantId, MessageId
from sootline.paper.engine import Facts
from sootline.paper.pictures import Picture
from sootline.paper.speaking import Said, Speaker, joined
from sootline.tasks.hazards import WetBag

ON_CONTAMINANT: dict[ContaminantId, tuple[Picture, MessageId]] = {
    ContaminantId("blood"): (Picture(name="blood"), MessageId("paper.caution.blood")),
    ContaminantId("battery-smoke"): (
        Picture(name="battery_fragments"),
        MessageId("paper.caution.battery"),
    ),
    ContaminantId("asbestos"): (Picture(name="fibres"), MessageId("paper.caution.asbestos")),
}
SHARPS = (Picture(name="sharps"), MessageId("paper.caution.sharps"))
ON_POSTS = (Picture(name="gloves_on_posts"), MessageId("paper.caution.posts"))
WET = (Picture(name="wet_hours"), MessageId("paper.caution.wet"))
NO_HEAT = (Picture(name="no_heat"), MessageId("paper.caution.no_heat"))


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
    return [pictured(speaker, *WET, bags=listed)]


def pictured(
    speaker: Speaker, picture: Picture, message: MessageId, **values: Said
) -> dict[str, Facts]:
    """Return a sentence with its picture and what the picture says in words."""
    return {
        "picture": picture.name,
        "alt": picture_text(speaker, picture),
        "text": speaker.say(message, **values),
    }


def picture_text(speaker: Speaker, picture: Picture) -> str:
    """Return what a picture shows, in the page's first language."""
    return speaker.say(picture.message)[0]


def _wet(speaker: Speaker, bag: WetBag) -> Said:
    return speaker.say(
        "paper.caution.wet_bag",
        member=bag.member,
        bags=", ".join(bag.bags),
        least=f"{bag.least_h:g}",
        most=f"{bag.most_h:g}",
    )
