"""What do the typed rows of a ticked check sheet say?

One row a line: the row's number or the piece's own, the letters of the points that felt dry, then
flaws by number, each with the letter of its point where it has one: "3 ABD 5C 9", "0412 - 1A".
A box left empty is "not dry"; a lone "-" is "dry nowhere". Empty lines and lines that begin with
"#" are passed over.
"""

from collections.abc import Sequence

from sootline.core.basis import BadInputError, ComponentId, Fault, Moment, UnreadableValueError
from sootline.core.exposure.calls import Answer
from sootline.core.rebuild.checks import AfterWashCheck, Felt
from sootline.core.rebuild.sheet_rows import (
    SheetRow,
    by_name,
    find_row,
    read_flaw,
    ticked,
    typed_lines,
)


def read_rows(
    text: str, rows: Sequence[SheetRow], *, by: str, at: Moment
) -> tuple[AfterWashCheck, ...]:
    """Return a check for every typed row.

    Args:
        rows: the sheet's rows, as printed.
        by: who felt the pieces.
        at: when.

    Raises:
        BadInputError: with every fault, by line: a row that is not on the sheet, a row typed
            twice, a letter or flaw that is not there.
        UnreadableValueError: nobody's name is given.
    """
    known = by_name(rows)
    checks: dict[ComponentId, AfterWashCheck] = {}
    faults: list[Fault] = []
    for line, words in typed_lines(text):
        try:
            row = find_row(words[0], known, checks)
            felt = _felt(words[1] if len(words) > 1 else "-", row)
            flaws = tuple(read_flaw(word, row) for word in words[2:])
        except UnreadableValueError as error:
            place = f"line {line}"
            faults.append(Fault(place=place, message=error.message, values=error.values))
            continue
        checks[row.component] = AfterWashCheck(
            component=row.component, by=by, at=at, felt=felt, flaws=flaws
        )
    if faults:
        raise BadInputError(faults)
    return tuple(checks.values())


def _felt(word: str, row: SheetRow) -> tuple[Felt, ...]:
    dry = ticked(word, row)
    return tuple(
        Felt(point=point, dry=Answer.YES if point in dry else Answer.NO) for point in row.points
    )
