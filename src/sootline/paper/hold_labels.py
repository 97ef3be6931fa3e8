"""What is tied to a bag that nobody may open?"""

import datetime as dt
from collections.abc import Sequence

from sootline.core.basis import MessageId
from sootline.core.job.tags import tag_of
from sootline.paper.cautions import on_contaminants, picture_text
from sootline.paper.codes import qr_code
from sootline.paper.engine import Facts
from sootline.paper.page import Page
from sootline.paper.pictures import Picture
from sootline.paper.pieces import called
from sootline.paper.sheets import print_sheet
from sootline.paper.speaking import Said, Speaker, joined
from sootline.tasks.hold_labels import Held, HoldLabel

_LABELS = ("whose", "bag", "what", "why", "since", "decides", "deputy", "up", "released", "defer")


def print_hold_labels(labels: Sequence[HoldLabel], page: Page) -> bytes:
    """Return the hold labels as PDF, as many to a page as it holds; each is cut out whole."""
    speaker = Speaker(page=page)
    codes = {
        f"code{place}": qr_code(tag)
        for place, label in enumerate(labels)
        if (tag := tag_of(label.components[0].id))
    }
    facts: dict[str, Facts] = {
        "labels": {label: speaker.say(f"paper.hold.{label}") for label in _LABELS},
        "holds": [
            _label(label, f"code{place}" if f"code{place}" in codes else None, speaker)
            for place, label in enumerate(labels)
        ],
        "bag_alt": picture_text(speaker, Picture(name="sealed_bag")),
    }
    title = MessageId("paper.title.hold_labels")
    return print_sheet("hold_label", title, facts, speaker, codes)


def _label(label: HoldLabel, code: str | None, speaker: Speaker) -> dict[str, Facts]:
    return {
        "headline": speaker.say("paper.hold.sealed" if label.sealed else "paper.hold.kept_aside"),
        "owner": label.owner or "-",
        "bags": ", ".join(label.bags) or "-",
        "pieces": joined([called(component, speaker) for component in label.components]),
        "first": [speaker.tell(first) for first in label.first],
        "held": [_held(held, speaker) for held in label.held],
        "cautions": on_contaminants(speaker, label.hazards),
        "code": code,
        "code_text": label.components[0].id,
        "code_alt": speaker.say("paper.code", text=label.components[0].id)[0],
    }


def _held(held: Held, speaker: Speaker) -> dict[str, Facts]:
    hold = held.hold
    question = dict(hold.reason.values) if hold.reason else {}
    return {
        "why": joined(
            [
                *([speaker.tell(hold.reason)] if hold.reason else []),
                speaker.say(hold.question, **question),
            ],
            " ",
        ),
        "since": speaker.moment(held.since) if held.since else speaker.say("paper.hold.unrecorded"),
        "decides": _person(hold.decider, held.person, speaker),
        "deputy": _person(hold.deputy, held.stand_in, speaker),
        "up": _goes_up(held, speaker),
    }


def _person(office: str, person: str | None, speaker: Speaker) -> Said:
    named = speaker.name("decider", office)
    return joined([named, [person]], " ") if person else named


def _goes_up(held: Held, speaker: Speaker) -> Said:
    hours = held.hold.escalate_after_h
    if held.since is None:
        return speaker.say("paper.hold.up_after", n=hours)
    due = held.since + dt.timedelta(hours=hours)
    return speaker.say("paper.hold.up_at", n=hours, at=speaker.moment(due))
