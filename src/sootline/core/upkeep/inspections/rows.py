"""What do the typed rows of a ticked inspection sheet say?

One row a line, and no row for many: the row's number or the piece's own, the letters of the points
that were looked at ("-" is none), then what was found and tested, in any order:

    3 ABCDEFGHIJKLMNO            looked at everything, found nothing
    4 ABCDEFGHIJKLMNO 8G         flaw 8 at point G
    5 ABCDEFGHIJK T1- T2+6,3     light came through; leakage: 6 parts of water, 3 minutes, held
    6 ABC ! burnt at both cuffs  only three points; the inspector would give it up
    7 absent on leave            not there: it stays due

A box left empty was not looked at. Empty lines and lines that begin with "#" are passed over.
"""

import datetime as dt
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from string import ascii_uppercase

from sootline.core.basis import (
    BadInputError,
    ComponentId,
    Fault,
    MessageId,
    Moment,
    Quantity,
    UnreadableValueError,
)
from sootline.core.exposure.calls import Answer
from sootline.core.rebuild import Flaw, FlawFound
from sootline.core.upkeep.inspections.facts import (
    Absent,
    Inspection,
    InspectionDay,
    InspectionKind,
    LinerTest,
    LinerTestDone,
)

_FLAWS = tuple(Flaw)
_FLAW = re.compile(r"(\d{1,2})([A-Z])?", re.ASCII)
_TEST = re.compile(r"(T[123])([+-])(?:([\d.]+[a-zA-Z]*),([\d.]+))?", re.ASCII)
_TESTS = {f"T{place}": test for place, test in enumerate(LinerTest, 1)}
_ABSENT = "absent"
_GIVE_UP = "!"


@dataclass(frozen=True, kw_only=True)
class InspectionRow:
    """One row as it is printed: its number, its piece, and the points in the order of letters."""

    number: int
    component: ComponentId
    points: tuple[MessageId, ...]


@dataclass(frozen=True, kw_only=True)
class TypedDay:
    """An inspection day as it was typed in."""

    day: InspectionDay
    inspections: tuple[Inspection, ...]


def read_inspections(
    text: str,
    rows: Sequence[InspectionRow],
    kind: InspectionKind,
    *,
    by: str,
    at: Moment,
    on: dt.date,
) -> TypedDay:
    """Return an inspection for every typed row, and the day with what was not there.

    Args:
        rows: the sheet's rows, as printed; all of them were planned.
        by: who inspected.
        at: when.
        on: the department's civil day of it.

    Raises:
        BadInputError: with every fault, by line: a row that is not on the sheet, a row typed
            twice, a letter, flaw or test that is not there.
        UnreadableValueError: nobody's name is given.
    """
    known = {str(row.number): row for row in rows} | {row.component: row for row in rows}
    done: dict[ComponentId, Inspection | Absent] = {}
    faults: list[Fault] = []
    for line, words in _lines(text):
        try:
            row = _row(words[0], known, done)
            done[row.component] = _read(row, words[1:], kind, by, at)
        except UnreadableValueError as error:
            place = f"line {line}"
            faults.append(Fault(place=place, message=error.message, values=error.values))
    if faults:
        raise BadInputError(faults)
    absent = tuple(one for one in done.values() if isinstance(one, Absent))
    planned = tuple(row.component for row in rows)
    return TypedDay(
        day=InspectionDay(kind=kind, on=on, planned=planned, absent=absent),
        inspections=tuple(one for one in done.values() if isinstance(one, Inspection)),
    )


def _lines(text: str) -> Iterator[tuple[int, list[str]]]:
    for number, line in enumerate(text.splitlines(), 1):
        words = line.split()
        if words and not words[0].startswith("#"):
            yield number, words


def _row(
    word: str, known: dict[str, InspectionRow], done: dict[ComponentId, Inspection | Absent]
) -> InspectionRow:
    row = known.get(word)
    if row is None:
        raise UnreadableValueError("rebuild.rows.unknown", row=word)
    if row.component in done:
        raise UnreadableValueError("rebuild.rows.twice", row=word)
    return row


def _read(
    row: InspectionRow, words: list[str], kind: InspectionKind, by: str, at: Moment
) -> Inspection | Absent:
    if words[:1] == [_ABSENT]:
        return Absent(component=row.component, why=" ".join(words[1:]))
    cut = words.index(_GIVE_UP) if _GIVE_UP in words else len(words)
    said, retire = words[:cut], " ".join(words[cut + 1 :])
    flaws: list[FlawFound] = []
    tests: list[LinerTestDone] = []
    for word in said[1:]:
        test = _TEST.fullmatch(word)
        if test:
            tests.append(_test(test))
        else:
            flaws.append(_flaw(word, row))
    return Inspection(
        component=row.component,
        kind=kind,
        by=by,
        at=at,
        looked=_looked(said[0] if said else "-", row),
        flaws=tuple(flaws),
        tests=tuple(tests),
        retire=retire,
    )


def _looked(word: str, row: InspectionRow) -> tuple[MessageId, ...]:
    letters = ascii_uppercase[: len(row.points)]
    ticked = "" if word == "-" else word.upper()
    wrong = [letter for letter in ticked if letter not in letters]
    if wrong:
        raise UnreadableValueError("rebuild.rows.letter", letter=wrong[0], letters=letters)
    return tuple(
        point for letter, point in zip(letters, row.points, strict=True) if letter in ticked
    )


def _flaw(word: str, row: InspectionRow) -> FlawFound:
    match = _FLAW.fullmatch(word.upper())
    if not match or not 1 <= int(match[1]) <= len(_FLAWS):
        raise UnreadableValueError("rebuild.rows.flaw", flaw=word, most=str(len(_FLAWS)))
    letters = ascii_uppercase[: len(row.points)]
    if match[2] and match[2] not in letters:
        raise UnreadableValueError("rebuild.rows.letter", letter=match[2], letters=letters)
    place = row.points[letters.index(match[2])] if match[2] else ""
    return FlawFound(flaw=_FLAWS[int(match[1]) - 1], place=place)


def _test(match: re.Match[str]) -> LinerTestDone:
    """Read one test: which, whether nothing came through, and how it was carried out."""
    test = _TESTS[match[1]]
    how, waited = match[3], match[4]
    leakage = test is LinerTest.LEAKAGE and how is not None and how.isdigit()
    pressed = test is LinerTest.HYDROSTATIC and how is not None
    return LinerTestDone(
        test=test,
        passed=Answer.YES if match[2] == "+" else Answer.NO,
        water_parts=int(how) if leakage else None,
        waited=Quantity.parse(f"{waited} min") if waited else None,
        pressure=Quantity.parse(how) if pressed else None,
    )
