"""Which pieces does a notice mean, where are they, and who has read each by eye?"""

from collections.abc import Iterator

from sootline.core.basis import Bearing, MessageId
from sootline.core.upkeep.recalls import Affected
from sootline.paper.list_sheets import (
    BLANK,
    TICK,
    Block,
    Cell,
    box,
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
from sootline.tasks.match_recall import Concerned, NoticeResult, RecallResult

_ASKED = {
    Affected.AFFECTED: "paper.recall.pull",
    Affected.POSSIBLE: "paper.recall.look",
    Affected.GONE: "paper.recall.gone",
}


def print_recall_list(result: RecallResult, page: Page) -> bytes:
    """Return the list of every notice as PDF, each on a page of its own."""
    speaker = Speaker(page=page)
    blocks: list[Block] = []
    for place, notice in enumerate(result.notices):
        blocks += [page_break()] if place else []
        blocks += _notice(notice, speaker)
    if not result.notices:
        blocks.append(box(speaker.say("recall.cli.none")))
    blocks.append(text(speaker.say("recall.cli.defer"), small=True))
    return print_list(MessageId("paper.title.recall"), blocks, speaker, wide=True)


def _notice(one: NoticeResult, speaker: Speaker) -> Iterator[Block]:
    counts = [
        joined([speaker.name("affected", affected), [str(n)]], " ") for affected, n in one.counts
    ]
    told = speaker.say("recall.cli.tell", people=", ".join(one.tell) or "-")
    title = speaker.say("recall.cli.heading", issuer=one.notice.issuer, title=one.notice.title)
    yield box(title, joined(counts), told)
    for affected, asked in _ASKED.items():
        pieces = [found for found in one.concerned if found.match.affected is affected]
        if pieces:
            yield heading(speaker.name("affected", affected))
            yield text(speaker.say(asked))
            yield _table(pieces, speaker)


def _table(pieces: list[Concerned], speaker: Speaker) -> Block:
    columns: list[tuple[Said, float]] = [
        ([], 8),
        (speaker.say("paper.check.piece"), 22),
        (speaker.say("paper.recall.where"), 42),
        (speaker.say("paper.recall.tell"), 32),
        (speaker.say("paper.recall.why"), -2),
        (speaker.say("paper.recall.read"), 40),
        (speaker.say("paper.recall.seen_by"), 30),
        (speaker.say("paper.recall.done"), 28),
    ]
    return table(columns, [_row(one, speaker) for one in pieces], ruled=True, size=9)


def _row(one: Concerned, speaker: Speaker) -> list[Cell]:
    where = one.where
    place = [[str(where.place)]] if where.place else []
    inside = [speaker.say("recall.cli.inside", inside=where.inside)] if where.inside else []
    asks = [reason for reason in one.match.reasons if reason.bearing is Bearing.ASKS]
    why = asks or one.match.reasons[-1:]
    return [
        TICK,
        number(one.match.component),
        word(joined([speaker.name("custody", where.custody), *place, *inside])),
        word([", ".join(where.tell) or "-"]),
        word(joined([speaker.tell(reason) for reason in why], " ")),
        BLANK,
        BLANK,
        BLANK,
    ]
