"""How are anchors, printed check words and a compared replay told on a terminal?"""

from collections.abc import Iterable, Iterator, Sequence

from sootline.cli.output import printable
from sootline.core.basis import ItemId
from sootline.core.ledger import Anchor, write_anchor
from sootline.core.ledger.check_words import check_words
from sootline.words import say

_SHOWN = 50


def anchor_lines(anchor: Anchor, lang: str, *, kept_in: str | None = None) -> Iterator[str]:
    """Say an anchor: the text to keep, and how it is spoken.

    Args:
        kept_in: the file it was added to; None was not added.
    """
    yield write_anchor(anchor)
    values = {"n": str(anchor.n), "words": check_words(anchor.root)}
    yield say("ledger.anchor.words", values, lang=lang)
    if kept_in is not None:
        yield say("ledger.anchor.kept", {"file": kept_in}, lang=lang)


def printed_lines(found: Iterable[tuple[int, str, str | None]], lang: str) -> Iterator[str]:
    """Say of each printed anchor whether the record had those words.

    Args:
        found: how many entries, the words as printed, the words the record had then.
    """
    for n, words, there in found:
        values = {"n": str(n), "words": words, "found": there or "-"}
        agrees = "ledger.printed.agrees" if words == there else "ledger.printed.differs"
        yield say(agrees, values, lang=lang)


def compared_lines(
    entries: int, rows: int, differing: Sequence[tuple[ItemId, str]], lang: str
) -> Iterator[str]:
    """Say which rows differ from what the entries make of them."""
    for item, how in differing[:_SHOWN]:
        values = {"item": printable(item), "how": how}
        yield say("ledger.compared.differs", values, lang=lang)
    counts = {"entries": str(entries), "rows": str(rows), "n": str(len(differing))}
    yield say("ledger.compared", counts, lang=lang)
