"""What lies beside the radio: who can ride, who cannot, and from when?"""

import datetime as dt

from sootline.core.basis import Finding, MessageId
from sootline.core.riding import CanRide, Coverage, say_coverage
from sootline.paper.engine import Facts
from sootline.paper.page import Page
from sootline.paper.sheets import print_sheet
from sootline.paper.speaking import Speaker

_LABELS = ("say", "cannot", "can", "heard", "nobody", "gate")


def print_radio_sheet(coverage: Coverage, now: dt.datetime, page: Page) -> bytes:
    """Return the radio-room sheet as PDF: words only, large, those who cannot ride first.

    It names sizes and hours, never what happened to a person or what is on the gear.

    Args:
        now: minute 0 of the coverage.
    """
    speaker = Speaker(page=page)
    spoken = say_coverage(coverage, page.local(now))
    facts: dict[str, Facts] = {
        "labels": {label: speaker.say(f"paper.radio.{label}") for label in _LABELS},
        "as_of": speaker.say("paper.handover.as_of", at=speaker.moment(now)),
        "spoken": [speaker.tell(one) for one in spoken if _member(one) is None],
        "cannot": [
            {
                "member": one.member,
                "crew": one.crew,
                "why": [speaker.tell(said) for said in spoken if _member(said) == one.member],
            }
            for one in coverage.cannot
        ],
        "can": [_can(one, speaker) for one in coverage.can],
    }
    return print_sheet("radio", MessageId("paper.title.radio"), facts, speaker)


def _member(said: Finding) -> str | None:
    """Return whom a sentence is about; None is a crew or everybody."""
    return dict(said.values).get("member")


def _can(one: CanRide, speaker: Speaker) -> dict[str, Facts]:
    handed = sum(worn.handed for worn in one.outfit)
    return {
        "member": one.member,
        "crew": one.crew,
        "how": speaker.say("paper.radio.spares", n=handed) if handed else None,
    }
