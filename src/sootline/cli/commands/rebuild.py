"""`sootline rebuild`: what goes back on the hook after its check, and what is missing?"""

import argparse
from collections.abc import Iterator
from pathlib import Path

from sootline.cli.output import deliver, finding_lines, printable
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.rebuild import Next
from sootline.tasks.rebuild_gear import RebuildResult, rebuild_gear
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
    if not result.pieces and not result.elements:
        yield say("rebuild.nothing", lang=lang)
    for piece in result.pieces:
        yield f"{printable(piece.component)}: {name('next', piece.next, lang=lang)}"
        yield from finding_lines(piece.reasons, lang=lang)
    for one in result.elements:
        parts = printable(", ".join(one.built.parts))
        values = {
            "element": one.built.element.value,
            "parts": parts,
            "first_day": str(one.verdict.first_day_out),
        }
        message = "rebuild.element.ready" if one.ready else "rebuild.element.not_ready"
        yield ""
        yield say(message, values, lang=lang)
        yield from finding_lines(one.verdict.reasons, lang=lang)
