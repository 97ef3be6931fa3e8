"""How is what a list becomes said to the officer, before and after it comes in?"""

import textwrap
from collections import defaultdict
from collections.abc import Iterator
from datetime import date
from pathlib import Path

from sootline.cli.days import day_said
from sootline.cli.output import columns_wide, finding_lines, printable
from sootline.core.roster import Intake
from sootline.tasks.import_roster import Imported
from sootline.words import name, say

_SHOWN = 12


def intake_lines(
    imported: Imported, written: Path | None, *, today: date, lang: str
) -> Iterator[str]:
    """Say what was read and as what, what stands out, what is left to do, and what was written.

    Args:
        written: the file the register went to; None where nothing was written.
    """
    intake = imported.intake
    told = {"source": printable(intake.source), "n": str(intake.rows)}
    yield from _wrapped(say("roster.said.read", told, lang=lang))
    for column in intake.columns:
        taken = {"column": printable(column.header), "field": column.field.value}
        message = "roster.said.column_of" if column.kind else "roster.said.column"
        yield from _wrapped(say(message, taken | {"of": column.kind}, lang=lang), "  ")
    total = {"n": str(len(intake.components)), "members": str(len(imported.register.members))}
    yield from _wrapped(say("roster.said.pieces", total, lang=lang))
    for kind, count in intake.counts:
        yield f"  {count:>6}  {name('kind', kind, lang=lang)}"
    yield from finding_lines(intake.findings, lang=lang)
    yield from _duplicates(intake, lang)
    yield from _worklist(intake, lang)
    yield from _past(intake, today, lang)
    yield from _decided(intake, lang)
    message = "roster.said.written" if written else "roster.said.not_written"
    yield from _wrapped(say(message, {"file": str(written or "")}, lang=lang))


def _duplicates(intake: Intake, lang: str) -> Iterator[str]:
    if intake.duplicates:
        count = {"n": str(len(intake.duplicates))}
        yield from _wrapped(say("roster.said.duplicates", count, lang=lang))
    for group in intake.duplicates[:_SHOWN]:
        pieces = "; ".join(printable(piece) for piece in group.pieces[:_SHOWN])
        yield from _wrapped(f"{name('kind', group.kind, lang=lang)}: {pieces}", "  ")


def _worklist(intake: Intake, lang: str) -> Iterator[str]:
    if not intake.missing:
        return
    yield from _wrapped(say("roster.said.missing", {"n": str(len(intake.missing))}, lang=lang))
    pieces: dict[str, list[str]] = defaultdict(list)
    for missing in intake.missing:
        for fact in missing.facts:
            pieces[fact.value].append(printable(missing.piece))
    for what, ids in pieces.items():
        told = {"n": str(len(ids)), "fact": what, "pieces": _some(ids)}
        yield from _wrapped(say("roster.said.missing_fact", told, lang=lang), "  ")


def _past(intake: Intake, today: date, lang: str) -> Iterator[str]:
    if not intake.past:
        return
    yield from _wrapped(say("roster.said.past", {"n": str(len(intake.past))}, lang=lang))
    days: dict[str, list[str]] = defaultdict(list)
    for due in intake.past:
        days[day_said(due.first_day, today, lang)].append(printable(due.component))
    for day, ids in sorted(days.items()):
        told = {"n": str(len(ids)), "day": day, "pieces": _some(ids)}
        yield from _wrapped(say("roster.said.past_day", told, lang=lang), "  ")


def _decided(intake: Intake, lang: str) -> Iterator[str]:
    if intake.decision is None:
        return
    decision = intake.decision.decision
    told = {
        "by": printable(decision.by),
        "on": decision.on.isoformat(),
        "why": printable(decision.why),
        "n": str(len(intake.decision.pieces)),
        "made": str(decision.made),
    }
    yield from _wrapped(say(f"roster.decided.{decision.choice.value}", told, lang=lang))


def _some(ids: list[str]) -> str:
    return ", ".join(ids[:_SHOWN]) + (", ..." if len(ids) > _SHOWN else "")


def _wrapped(text: str, indent: str = "") -> list[str]:
    return textwrap.wrap(
        text,
        columns_wide(),
        initial_indent=indent,
        subsequent_indent=indent + "    ",
        break_long_words=False,
        break_on_hyphens=False,
    )
