"""Which questions does an incident code raise? It never decides anything.

A fire with blood is coded as a fire, and codes are given before the facts are in: a member's
statement outranks them. The table is a short one of our own. Source: the public NFIRS 5.0 code
list (retired early 2026) and the NERIS incident types as published in July 2025 and June 2026.
"""

import re
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import Bearing, Confidence, EditionId, Finding, Ground, MessageId, RuleId
from sootline.core.exposure.code_table import (
    NFIRS_QUESTIONS,
    NFIRS_SERIES,
    RESPELLED,
    TYPE_LEAVES,
    TYPE_QUESTIONS,
    TYPE_TOPS,
    Question,
)

_THREE_DIGITS = re.compile(r"[1-9]\d\d", re.ASCII)
_SEPARATOR = "||"
_DEEPEST = 3


class CodeForm(StrEnum):
    """Which national form a code is written in."""

    NFIRS = "nfirs"
    NERIS = "neris"
    UNREAD = "unread"


@dataclass(frozen=True, kw_only=True)
class IncidentCode:
    """A code as given and as far as it was understood.

    Args:
        raw: exactly as given; kept whatever becomes of it.
        parts: its levels, with a known misspelling put right.
        recognised: False when a level is not in the table; shown, never corrected by a guess.
    """

    raw: str
    form: CodeForm
    parts: tuple[str, ...] = ()
    recognised: bool = True


def read_code(raw: str) -> IncidentCode:
    """Read three digits, or one to three levels joined by "||"."""
    text = raw.strip()
    if _THREE_DIGITS.fullmatch(text):
        known = any(text in codes for codes in NFIRS_SERIES)
        return IncidentCode(raw=raw, form=CodeForm.NFIRS, parts=(text,), recognised=known)
    given = [part.strip().upper() for part in text.split(_SEPARATOR)]
    parts = tuple(RESPELLED.get(part, part) for part in given)
    if parts[0] not in TYPE_TOPS or len(parts) > _DEEPEST or not all(parts):
        return IncidentCode(raw=raw, form=CodeForm.UNREAD, recognised=False)
    return IncidentCode(raw=raw, form=CodeForm.NERIS, parts=parts, recognised=_levels_known(parts))


def _levels_known(parts: tuple[str, ...]) -> bool:
    """Whether each level is one the table lists; a branch it does not list is taken as it is."""
    return all(
        part in TYPE_LEAVES.get(parts[:depth], (part,))
        for depth, part in enumerate(parts[1:], start=1)
    )


def ask_about(raw: str) -> tuple[Finding, ...]:
    """List the questions a code raises; an unread one is itself a question."""
    code = read_code(raw)
    asked = [_finding(code, question) for question in _questions(code)]
    if not code.recognised:
        asked.append(_unrecognised(code))
    return tuple(asked)


def _questions(code: IncidentCode) -> tuple[Question, ...]:
    if code.form is CodeForm.NFIRS:
        return next(
            (asked for codes, asked in NFIRS_QUESTIONS if code.parts[0] in codes),
            (Question.WORN,),
        )
    depths = range(len(code.parts), 0, -1)
    return next(
        (
            TYPE_QUESTIONS[code.parts[:deep]]
            for deep in depths
            if code.parts[:deep] in TYPE_QUESTIONS
        ),
        (Question.WORN,),
    )


def _finding(code: IncidentCode, question: Question) -> Finding:
    return Finding(
        bearing=Bearing.ASKS,
        message=MessageId(f"exposure.ask.{question.value}"),
        ground=_ground(code),
        values=(("code", code.raw),),
    )


def _unrecognised(code: IncidentCode) -> Finding:
    return Finding(
        bearing=Bearing.ASKS,
        message=MessageId("exposure.code.unrecognised"),
        ground=_ground(code),
        values=(("code", code.raw),),
    )


def _ground(code: IncidentCode) -> Ground:
    return Ground(
        rule=RuleId("code.incident"),
        edition=EditionId(f"code/{code.form}"),
        source="a short table of our own over public incident code lists",
        confidence=Confidence.MEDIUM,
    )
