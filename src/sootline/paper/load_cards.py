"""What hangs beside the washer: one card per load, with pictures, boxes to tick, lines to fill?"""

from collections.abc import Sequence

from sootline.core.basis import ComponentId, MessageId
from sootline.core.gear import Component, Layer, WashMethod, find_kind
from sootline.paper.cautions import (
    NO_HEAT,
    ON_POSTS,
    SHARPS,
    on_contaminants,
    picture_text,
    pictured,
    wet_bags,
)
from sootline.paper.engine import Facts
from sootline.paper.page import Page
from sootline.paper.pictures import picture_of
from sootline.paper.sheets import print_sheet
from sootline.paper.speaking import Said, Speaker, joined
from sootline.tasks.load_cards import Contents, LoadCard

_FIELDS = ("detergent", "loaded_by", "started", "ended", "emptied_by")


def print_load_cards(cards: Sequence[LoadCard], page: Page) -> bytes:
    """Return the load cards as PDF, each beginning on a page of its own."""
    speaker = Speaker(page=page)
    facts: dict[str, Facts] = {
        "cards": [_card(card, speaker) for card in cards],
        "labels": {
            label: speaker.say(f"paper.load.{label}")
            for label in (
                "programme", "water", "weight", "detergent_label", "prepare",
                "goes_in", "never", "dry", "wrong", "defer", "none", *_FIELDS,
            )
        },
        "fields": [speaker.say(f"paper.load.{field}") for field in _FIELDS],
    }  # fmt: skip
    return print_sheet("load_card", MessageId("paper.title.load_cards"), facts, speaker)


def _card(card: LoadCard, speaker: Speaker) -> dict[str, Facts]:
    contents = card.contents
    return {
        "number": str(card.number),
        "of": speaker.say("paper.load.of", of=card.of),
        "where": card.where,
        "start": speaker.say("paper.load.likely_from", time=speaker.time(card.start)),
        "company": _company(card, speaker),
        "apart": _apart(card, speaker),
        "programme": _programme(card, speaker),
        "water": _water(contents, speaker),
        "weight": _weight(card, speaker),
        "cautions": _cautions(contents, speaker),
        "steps": [_step(step, speaker) for step in contents.preparation],
        "pieces": [_piece(one, one.id in card.bagged, speaker) for one in contents.components],
        "never": joined([_outsiders(card, speaker), *_bans(contents, speaker)], " "),
        "drying": [_dries(place, there, card, speaker) for place, there in contents.drying],
        "drying_cautions": _drying_cautions(contents, speaker),
    }


def _company(card: LoadCard, speaker: Speaker) -> Said:
    if card.method is not WashMethod.MACHINE:
        return speaker.say(f"paper.load.way.{card.method}")
    return speaker.say(f"paper.load.company.{card.company}")


def _apart(card: LoadCard, speaker: Speaker) -> Said | None:
    if card.separation.alone:
        return speaker.say("paper.load.alone")
    if card.separation.hazards:
        named = speaker.names("contaminant", card.separation.hazards)
        return speaker.say("paper.load.apart", hazards=named)
    return None


def _programme(card: LoadCard, speaker: Speaker) -> Said:
    return [card.programme] if card.programme else speaker.name("wash_method", card.method)


def _water(contents: Contents, speaker: Speaker) -> Said:
    if contents.water is None:
        return speaker.say("paper.load.water_unknown")
    if contents.water_unknown:
        return speaker.say(
            "paper.load.water_partly", limit=contents.water.numbers, n=contents.water_unknown
        )
    return [contents.water.numbers]


def _weight(card: LoadCard, speaker: Speaker) -> Said | None:
    if card.mass is None or card.weight_limit is None:
        return None
    values = {"mass": f"{card.mass.amount:.1f} {card.mass.unit}", "limit": str(card.weight_limit)}
    if card.unweighed:
        return speaker.say("paper.load.weight_partly", n=card.unweighed, **values)
    return speaker.say("paper.load.weight_of", **values)


def _cautions(contents: Contents, speaker: Speaker) -> list[Facts]:
    return [
        *on_contaminants(speaker, contents.hazards),
        *wet_bags(speaker, contents.wet_bags),
        *([pictured(speaker, *SHARPS)] if _has_pockets(contents) else []),
    ]


def _drying_cautions(contents: Contents, speaker: Speaker) -> list[Facts]:
    layers = {find_kind(component.kind).layer for component in contents.components}
    return [
        *([pictured(speaker, *ON_POSTS)] if Layer.GLOVE in layers else []),
        pictured(speaker, *NO_HEAT),
    ]


def _has_pockets(contents: Contents) -> bool:
    return any(step.endswith((".pockets", ".fingers_empty")) for step in contents.preparation)


def _step(step: MessageId, speaker: Speaker) -> dict[str, Facts]:
    picture = picture_of(step)
    return {
        "text": speaker.say(step),
        "picture": picture.name if picture else None,
        "alt": picture_text(speaker, picture) if picture else None,
    }


def _piece(component: Component, bagged: bool, speaker: Speaker) -> dict[str, Facts]:
    return {
        "id": component.id,
        "kind": speaker.name("kind", component.kind),
        "owner": component.owner,
        "bagged": speaker.say("paper.load.bagged") if bagged else None,
    }


def _outsiders(card: LoadCard, speaker: Speaker) -> Said:
    if card.method is not WashMethod.MACHINE:
        return speaker.say("paper.load.not_with.hand")
    return speaker.say(f"paper.load.not_with.{card.company}")


def _bans(contents: Contents, speaker: Speaker) -> list[Said]:
    if not contents.never:
        return []
    return [speaker.say("paper.load.bans", acts=speaker.names("act", contents.never))]


def _dries(
    place: str, there: Sequence[ComponentId], card: LoadCard, speaker: Speaker
) -> dict[str, Facts]:
    every = len(there) == len(card.contents.components)
    pieces = speaker.say("paper.load.everything") if every else [", ".join(there)]
    return {"place": speaker.names("dry_method", place.split(", ")), "pieces": pieces}
