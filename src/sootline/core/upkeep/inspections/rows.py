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
from collections.abc import Sequence
from dataclasses import dataclass

from sootline.core.basis import (
    BadInputError,
    ComponentId,
    Fault,
    Moment,
    Quantity,
    UnreadableValueError,
)
from sootline.core.exposure.calls import Answer
from sootline.core.rebuild import FlawFound
from sootline.core.rebuild.sheet_rows import (
    SheetRow,
    by_name,
    find_row,
    read_flaw,
    ticked,
    typed_lines,
)
from sootline.core.upkeep.inspections.facts import (
    Absent,
    Inspection,
    InspectionDay,
    InspectionKind,
    LinerTest,
    LinerTestDone,
)

_TEST = re.compile(r"(T[123])([+-])(?:([\d.]+[a-zA-Z]*),([\d.]+))?", re.ASCII)
_TESTS = {f"T{place}": test for place, test in enumerate(LinerTest, 1)}
_ABSENT = "absent"
_GIVE_UP = "!"


@dataclass(frozen=True, kw_only=True)
class TypedDay:
    """An inspection day as it was typed in."""

    day: InspectionDay
    inspections: tuple[Inspection, ...]


def read_inspections(
    text: str,
    rows: Sequence[SheetRow],
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
    known = by_name(rows)
    done: dict[ComponentId, Inspection | Absent] = {}
    faults: list[Fault] = []
    for line, words in typed_lines(text):
        try:
            row = find_row(words[0], known, done)
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


def _read(
    row: SheetRow, words: list[str], kind: InspectionKind, by: str, at: Moment
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
            flaws.append(read_flaw(word, row))
    return Inspection(
        component=row.component,
        kind=kind,
        by=by,
        at=at,
        looked=ticked(said[0] if said else "-", row),
        flaws=tuple(flaws),
        tests=tuple(tests),
        retire=retire,
    )


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
