"""What travels with gear to a contractor: what it is, what is on it, and a form to send it back by?

Both pages are for a reader who has never seen this program.
"""

from collections.abc import Iterator, Sequence

from sootline.core.basis import MessageId
from sootline.core.upkeep.contractor import ManifestSheet
from sootline.core.upkeep.contractor.shipments import ManifestRow
from sootline.paper.list_sheets import (
    BLANK,
    TICK,
    Block,
    Cell,
    box,
    fields,
    heading,
    number,
    page_break,
    print_list,
    table,
    text,
    word,
)
from sootline.paper.page import Page
from sootline.paper.speaking import Said, Speaker, joined

_SPARE_ROWS = 3
_LEAST_ROWS = 12


def print_manifests(sheets: Sequence[ManifestSheet], page: Page) -> bytes:
    """Return each shipment's manifest and receipt form as PDF, each on pages of its own."""
    speaker = Speaker(page=page)
    blocks: list[Block] = []
    for place, sheet in enumerate(sheets):
        blocks += [page_break()] if place else []
        blocks += [*_manifest(sheet, speaker), page_break(), *_receipt(sheet, speaker)]
    if not sheets:
        blocks.append(box(speaker.say("contractor.cli.none")))
    return print_list(MessageId("paper.title.manifest"), blocks, speaker)


def _manifest(sheet: ManifestSheet, speaker: Speaker) -> Iterator[Block]:
    manifest = sheet.manifest
    yield text(
        speaker.say(
            "paper.manifest.heading",
            id=manifest.id,
            provider=manifest.provider,
            department=speaker.page.department or "-",
            by=manifest.by,
            at=speaker.moment(manifest.at),
            promised=str(manifest.promised),
            n=len(sheet.rows),
        )
    )
    yield box(speaker.say("paper.manifest.hazards"), *(speaker.tell(one) for one in sheet.said))
    yield heading(speaker.say("paper.manifest.pieces"))
    columns: list[tuple[Said, float]] = [
        ([], 8),
        (speaker.say("paper.manifest.number"), 24),
        (speaker.say("paper.manifest.what"), -2),
        (speaker.say("paper.manifest.label"), -2),
        (speaker.say("paper.manifest.asked"), -2),
    ]
    yield table(columns, [_row(row, speaker) for row in sheet.rows], size=9.5)
    yield fields(speaker.say("paper.manifest.handed"), speaker.say("paper.manifest.taken"))
    yield text(speaker.say("paper.manifest.defer"), small=True)


def _row(row: ManifestRow, speaker: Speaker) -> list[Cell]:
    label, component = row.component.label, row.component
    marks = ", ".join(one for one in (label.maker, label.style, label.lot, label.serial) if one)
    sizes = [joined([speaker.name("dimension", key), [size]], " ") for key, size in component.size]
    asked = [speaker.name("service", one) for one in row.sent.services]
    note = [[row.sent.note]] if row.sent.note else []
    return [
        TICK,
        number(component.id),
        word(joined([speaker.name("kind", component.kind), *sizes])),
        word([marks or "-"]),
        word(joined([*asked, *note])),
    ]


def _receipt(sheet: ManifestSheet, speaker: Speaker) -> Iterator[Block]:
    yield heading(speaker.say("paper.receipt.title", id=sheet.manifest.id))
    yield box(speaker.say("paper.receipt.how"), speaker.say("paper.receipt.guess"))
    yield fields(speaker.say("paper.receipt.by"), speaker.say("paper.receipt.day"))
    columns: list[tuple[Said, float]] = [
        ([], 8),
        (speaker.say("paper.receipt.number"), -2),
        (speaker.say("paper.receipt.looks"), -2),
        (speaker.say("paper.receipt.size"), 22),
        (speaker.say("paper.receipt.other"), 30),
        (speaker.say("paper.receipt.note"), -2),
    ]
    count = max(_LEAST_ROWS, len(sheet.rows) + _SPARE_ROWS)
    rows = [[word([str(line)]), *(BLANK for _ in range(5))] for line in range(1, count + 1)]
    yield table(columns, rows, ruled=True, size=11)
    yield text(speaker.say("paper.receipt.not_back"))
    yield text(speaker.say("paper.manifest.defer"), small=True)
