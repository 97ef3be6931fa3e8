"""What stands on a load card, in large type, as far as it is more than the card's own facts?"""

from dataclasses import dataclass

from sootline.core.basis import ComponentId, Finding, MessageId
from sootline.core.gear import Component
from sootline.core.job.jobs import Job
from sootline.paper.cautions import ON_CONTAMINANT
from sootline.tasks.load_cards import LoadCard
from sootline.tasks.plan_wash import PlanResult
from sootline.web.reading.clock import Clock
from sootline.web.reading.saying import Said, said
from sootline.web.reading.wash import Load, read_load


@dataclass(frozen=True, kw_only=True)
class Caution:
    """One caution with its picture."""

    picture: str
    line: Said


@dataclass(frozen=True, kw_only=True)
class Place:
    """Where some of the load dries; everything of it where no pieces are named."""

    ways: tuple[str, ...]
    pieces: tuple[ComponentId, ...]


@dataclass(frozen=True, kw_only=True)
class Piece:
    """One piece that goes in."""

    component: Component
    bagged: bool


@dataclass(frozen=True, kw_only=True)
class Card:
    """A load card as it is read.

    Args:
        of: how many cards there are.
        settings: what is set or counted, with its heading.
        inward: whether a liner is in it, so that its barrier must face inward.
    """

    load: Load
    of: int
    settings: tuple[tuple[str, Said], ...]
    cautions: tuple[Caution, ...]
    first: tuple[Finding, ...]
    steps: tuple[MessageId, ...]
    pieces: tuple[Piece, ...]
    never: tuple[Said, ...]
    places: tuple[Place, ...]


def read_card(card: LoadCard, plan: PlanResult, job: Job, clock: Clock) -> Card:
    """Lay a load card out."""
    pieces = {component.id: component for component in job.components}
    contents = card.contents
    every = len(contents.components)
    return Card(
        load=read_load(card, plan, pieces, clock),
        of=card.of,
        settings=tuple(_settings(card)),
        cautions=tuple(_cautions(card)),
        first=contents.first,
        steps=contents.preparation,
        pieces=tuple(
            Piece(component=one, bagged=one.id in card.bagged) for one in contents.components
        ),
        never=tuple(_never(card)),
        places=tuple(
            Place(ways=tuple(where.split(", ")), pieces=() if len(there) == every else there)
            for where, there in contents.drying
        ),
    )


def _settings(card: LoadCard) -> list[tuple[str, Said]]:
    contents = card.contents
    found = []
    if card.programme:
        found.append(("paper.load.programme", said("web.plain", text=card.programme)))
    found.append(("paper.load.water", _water(card)))
    if card.mass is not None and card.weight_limit is not None:
        mass = f"{card.mass.amount:.1f} {card.mass.unit}"
        values = {"mass": mass, "limit": str(card.weight_limit), "n": card.unweighed}
        part = "weight_partly" if card.unweighed else "weight_of"
        found.append(("paper.load.weight", said(f"paper.load.{part}", **values)))
    found.append(("web.load.pieces", said("web.plain", text=str(len(contents.components)))))
    return found


def _water(card: LoadCard) -> Said:
    contents = card.contents
    if contents.water is None:
        return said("paper.load.water_unknown")
    if contents.water_unknown:
        values = {"limit": contents.water.numbers, "n": contents.water_unknown}
        return said("paper.load.water_partly", **values)
    return said("web.plain", text=contents.water.numbers)


def _cautions(card: LoadCard) -> list[Caution]:
    known = [ON_CONTAMINANT[one] for one in card.contents.hazards if one in ON_CONTAMINANT]
    cautions = [Caution(picture=picture.name, line=said(message)) for picture, message in known]
    if card.contents.wet_bags:
        bags = "; ".join(
            f"{bag.member} ({', '.join(bag.bags)}) {bag.least_h:g}–{bag.most_h:g} h"
            for bag in card.contents.wet_bags
        )
        cautions.append(Caution(picture="wet_hours", line=said("paper.caution.wet", bags=bags)))
    return cautions


def _never(card: LoadCard) -> list[Said]:
    outsiders = "hand" if card.programme is None else card.company.value
    found = [said(f"paper.load.not_with.{outsiders}")]
    if card.contents.never:
        found.append(said("web.load.bans", acts=", ".join(card.contents.never)))
    return found
