"""How does the record of what was done against soil on one piece read?"""

from dataclasses import dataclass

from sootline.core.basis import Confidence, MessageId
from sootline.core.gear import Component
from sootline.core.machines import (
    LabResult,
    Published,
    Reductions,
)
from sootline.core.machines.reductions import ReductionLine
from sootline.core.rulebook import Rulebook
from sootline.tasks.record_reductions import washes_of
from sootline.web.answers import Answers
from sootline.web.reading.saying import Resting, Said, resting, said
from sootline.words import say


@dataclass(frozen=True, kw_only=True)
class Study:
    """What one study reports of such a step, in a sentence of its own."""

    line: str
    source: str
    confidence: Confidence


@dataclass(frozen=True, kw_only=True)
class Step:
    """One step as recorded, beside what is published; the two are never put together."""

    on: str
    what: Said
    published: tuple[Study, ...]


@dataclass(frozen=True, kw_only=True)
class SoilShown:
    """The whole screen; what cannot be claimed stands on it whatever was done."""

    steps: tuple[Step, ...]
    results: tuple[LabResult, ...]
    not_claimed: tuple[MessageId, ...]
    washes: tuple[Resting, ...]


def read_washes(component: Component, rulebook: Rulebook) -> tuple[Resting, ...]:
    """Put one piece's wash count beside the published marker."""
    return resting(washes_of(component, rulebook))


def read_soil(component: Component, answers: Answers, table: Reductions, lang: str) -> SoilShown:
    """Lay out one piece's record; nothing recorded is a record too."""
    found = next((one for one in answers.reductions if one.component == component.id), None)
    return SoilShown(
        steps=tuple(_step(line, lang) for line in found.record.lines) if found else (),
        results=answers.job.readings.laboratory,
        not_claimed=table.not_claimed,
        washes=read_washes(component, answers.decided.rulebook),
    )


def _step(line: ReductionLine, lang: str) -> Step:
    event = line.event
    act, method = event.act.value, event.method.value
    return Step(
        on=str(event.on),
        what=said("machine.screen.step", act=act, method=method, who=event.who or "-"),
        published=tuple(
            Study(line=_study(one, lang), source=one.source, confidence=one.confidence)
            for one in line.published
        ),
    )


def _study(one: Published, lang: str) -> str:
    values = {"substances": one.substances, "measured": one.measured.value,
              "low": f"{one.low:g}", "high": f"{one.high:g}"}  # fmt: skip
    if one.high < 0:
        which, values["low"] = "more", f"{-one.high:g}"
    else:
        which = "one" if one.low == one.high else "range"
    remark = say(one.remark, lang=lang) if one.remark else ""
    return f"{say(f'machine.screen.study_{which}', values, lang=lang)} {remark}".strip()
