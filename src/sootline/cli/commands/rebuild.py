"""`sootline rebuild`: what goes back on the hook after its check, and what is missing?"""

import argparse
from collections.abc import Iterator
from datetime import date
from pathlib import Path

from sootline.cli.days import day_said
from sootline.cli.output import deliver, finding_lines, printable
from sootline.cli.parser import CommandParser
from sootline.cli.pieces import wrapped
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.rebuild import Next
from sootline.tasks.rebuild_gear import RebuildResult, Rebuilt, rebuild_gear
from sootline.wiring.jobs import read_job
from sootline.wiring.rules import RULES
from sootline.words import name, say


def add_arguments(parser: CommandParser) -> None:
    """Add JOB."""
    parser.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")


def run(options: argparse.Namespace) -> int:
    """Judge checks and rebuilt elements; 1 when anything does not go back."""
    result = rebuild_gear(RULES, read_job(options.job))
    deliver(result, _lines(result, options.lang), options)
    back = all(piece.next is Next.BACK for piece in result.pieces)
    return DONE if back and all(one.ready for one in result.elements) else PROBLEM


def _lines(result: RebuildResult, lang: str) -> Iterator[str]:
    """Say the pieces that need somebody first, then the others, then each element."""
    if not result.pieces and not result.elements:
        yield say("rebuild.nothing", lang=lang)
    waiting = {part for one in result.elements if not one.ready for part in one.built.parts}
    for piece in sorted(result.pieces, key=lambda one: one.next is Next.BACK):
        what = name("next", piece.next, lang=lang)
        if piece.next is Next.BACK and piece.component in waiting:
            what = say("rebuild.waits_for_element", lang=lang)
        yield f"{printable(piece.component)}: {what}"
        yield from finding_lines(piece.reasons, lang=lang)
    for one in result.elements:
        yield from _element(one, result.today, lang)


def _element(one: Rebuilt, today: date, lang: str) -> Iterator[str]:
    values = {
        "element": one.built.element.value,
        "parts": printable(", ".join(one.built.parts)),
        "first_day": day_said(one.verdict.first_day_out, today, lang),
    }
    yield ""
    message = "rebuild.element.ready" if one.ready else "rebuild.element.not_ready"
    yield from wrapped(say(message, values, lang=lang), indent=0)
    yield from finding_lines(one.verdict.reasons, lang=lang)
    for hold in one.verdict.holds:
        asked = {"decider": hold.decider, "deputy": hold.deputy, "question": hold.question}
        yield from wrapped(say("rebuild.waits", asked, lang=lang))
