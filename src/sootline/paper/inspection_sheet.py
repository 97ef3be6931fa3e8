"""What does an inspector tick on a day of many pieces, so that each is typed in by itself?

Rows are numbered through the sheet; points have letters, flaws numbers, tests a T with a number.
There is no box for all rows.
"""

from collections.abc import Iterator, Sequence
from string import ascii_uppercase

from sootline.core.basis import MessageId
from sootline.core.rebuild import Flaw
from sootline.core.upkeep.inspections import InspectionKind, LinerTest
from sootline.paper.list_sheets import (
    BLANK,
    TICK,
    Block,
    Cell,
    box,
    fields,
    heading,
    number,
    print_list,
    table,
    text,
    word,
)
from sootline.paper.page import Page
from sootline.paper.speaking import Said, Speaker, joined
from sootline.tasks.inspection_sheet import InspectionGroup

_MARK_OF = {test: f"T{place}" for place, test in enumerate(LinerTest, 1)}
_TITLES = {
    InspectionKind.ROUTINE: MessageId("paper.title.inspection.routine"),
    InspectionKind.ADVANCED: MessageId("paper.title.inspection.advanced"),
    InspectionKind.LINER: MessageId("paper.title.inspection.liner"),
}
_BOX_MM = 7
_FLAW_COLUMNS = 3


def print_inspection_sheet(
    kind: InspectionKind, groups: Sequence[InspectionGroup], page: Page
) -> bytes:
    """Return the tick-off sheet of an inspection as PDF."""
    speaker = Speaker(page=page)
    return print_list(_TITLES[kind], tuple(_blocks(groups, speaker)), speaker, wide=True)


def _blocks(groups: Sequence[InspectionGroup], speaker: Speaker) -> Iterator[Block]:
    yield fields(speaker.say("paper.year.by"), speaker.say("paper.year.at"))
    yield text(speaker.say("paper.inspection.how"))
    if not groups:
        yield box(speaker.say("paper.inspection.nothing"))
    row = 0
    for group in groups:
        yield heading(speaker.name("kind", group.kind))
        yield text(_points(group, speaker))
        yield _table(group, row, speaker)
        row += len(group.components)
    yield heading(speaker.say("paper.inspection.flaws"))
    yield _flaws(speaker)
    yield text(speaker.say("inspection.cli.defer"), small=True)


def _points(group: InspectionGroup, speaker: Speaker) -> Said:
    """Name points and tests by their letters, in one run of text."""
    points = [
        joined([[f"{letter})"], speaker.say(point)], " ")
        for letter, point in zip(ascii_uppercase, group.points, strict=False)
    ]
    tests = [
        joined([[f"{_MARK_OF[test]})"], speaker.name("liner_test", test)], " ")
        for test in group.tests
    ]
    return joined([*points, *tests], "  ")


def _table(group: InspectionGroup, row: int, speaker: Speaker) -> Block:
    marks = [*ascii_uppercase[: len(group.points)], *(_MARK_OF[one] for one in group.tests)]
    columns: list[tuple[Said, float]] = [
        (speaker.say("paper.check.row"), 8),
        (speaker.say("paper.check.piece"), 24),
        (speaker.say("paper.check.owner"), 15),
        *(([mark], _BOX_MM) for mark in marks),
        (speaker.say("paper.inspection.found"), 0),
        (speaker.say("paper.inspection.absent"), 22),
    ]
    rows: list[list[Cell]] = [
        [
            number(str(place)),
            number(component.id),
            word([component.owner or "-"]),
            *(TICK for _ in marks),
            BLANK,
            BLANK,
        ]
        for place, component in enumerate(group.components, row + 1)
    ]
    return table(columns, rows, ruled=True, size=9)


def _flaws(speaker: Speaker) -> Block:
    """List the flaws by number, as many in a line as there is room for."""
    cells = [
        word(joined([[f"{place})"], speaker.name("flaw", flaw)], " "))
        for place, flaw in enumerate(Flaw, 1)
    ]
    cells += [BLANK] * (-len(cells) % _FLAW_COLUMNS)
    rows = [cells[at : at + _FLAW_COLUMNS] for at in range(0, len(cells), _FLAW_COLUMNS)]
    return table([([], 0)] * _FLAW_COLUMNS, rows, size=9)
