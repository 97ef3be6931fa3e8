"""What does the chief get on paper: what is overdue, by which cause, in whose words?"""

from collections.abc import Iterator

from sootline.core.basis import MessageId
from sootline.core.upkeep.planning import OverdueSheet
from sootline.paper.list_sheets import (
    Block,
    Cell,
    fields,
    heading,
    number,
    print_list,
    table,
    text,
    word,
)
from sootline.paper.page import Page
from sootline.paper.speaking import Said, Speaker


def print_month(sheet: OverdueSheet, page: Page) -> bytes:
    """Return the overdue sheet as PDF: causes with their written definitions, then every matter."""
    speaker = Speaker(page=page)
    return print_list(MessageId("paper.title.month"), tuple(_blocks(sheet, speaker)), speaker)


def _blocks(sheet: OverdueSheet, speaker: Speaker) -> Iterator[Block]:
    yield text(speaker.say("paper.month.on", on=sheet.on.isoformat(), n=len(sheet.rows)))
    columns: list[tuple[Said, float]] = [
        (speaker.say("paper.month.cause"), 34),
        (speaker.say("paper.month.definition"), 0),
        (speaker.say("paper.month.matters"), 20),
        (speaker.say("paper.month.pieces"), 18),
        (speaker.say("paper.month.longest"), 24),
    ]
    causes: list[list[Cell]] = [
        [
            word(speaker.name("cause", row.cause)),
            word(speaker.say(row.definition)),
            number(str(row.matters)),
            number(str(row.components)),
            word([str(row.longest)]),
        ]
        for row in sheet.causes
    ]
    yield table(columns, causes)
    yield text(speaker.say("paper.month.once"))
    if sheet.rows:
        yield heading(speaker.say("paper.month.each"))
        yield _each(sheet, speaker)
    yield fields(speaker.say("paper.month.written"), speaker.say("paper.month.read"))
    yield text(speaker.say("paper.month.defer"), small=True)


def _each(sheet: OverdueSheet, speaker: Speaker) -> Block:
    columns: list[tuple[Said, float]] = [
        (speaker.say("paper.check.piece"), 28),
        (speaker.say("paper.check.owner"), 22),
        (speaker.say("paper.month.matter"), 0),
        (speaker.say("paper.month.days"), 22),
        (speaker.say("paper.month.cause"), 44),
    ]
    rows: list[list[Cell]] = [
        [
            number(row.component),
            word([row.holder or "-"]),
            word(speaker.name("matter", row.matter)),
            word([str(row.days_over)]),
            word(speaker.name("cause", row.cause)),
        ]
        for row in sheet.rows
    ]
    return table(columns, rows, size=9)
