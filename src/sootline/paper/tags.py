"""What is stuck or sewn to each piece, so that a scanner and an eye both know it?"""

from collections.abc import Sequence
from dataclasses import dataclass

from sootline.core.basis import MessageId
from sootline.core.gear import Component
from sootline.core.job.tags import tag_of
from sootline.paper.codes import code_39, modules_of, qr_code
from sootline.paper.engine import Facts
from sootline.paper.page import Page, PaperSize
from sootline.paper.sheets import print_sheet
from sootline.paper.speaking import Speaker

_MODULE_MM = 0.33
_NARROWEST_MM = 0.19
_OWNER_SIGNS = 24


@dataclass(frozen=True, kw_only=True)
class Stock:
    """Labels on a sheet [mm].

    Args:
        left, top: from the edge of the paper to the first label.
        between: from one label to the next across.
    """

    across: int
    down: int
    wide: float
    high: float
    left: float = 0.0
    top: float = 0.0
    between: float = 0.0


# Stocks that office suppliers commonly sell; common practice, no published source.
STOCKS = {
    PaperSize.A4: Stock(across=3, down=8, wide=70.0, high=37.0, top=0.5),
    PaperSize.LETTER: Stock(
        across=3, down=10, wide=66.7, high=25.4, left=4.8, top=12.7, between=3.1
    ),
}


def print_tags(components: Sequence[Component], page: Page) -> bytes:
    """Return tags as PDF: QR code, Code 39 where the id allows one, the id in letters.

    A piece whose id makes no tag is left out; `without_tag` lists those.
    """
    speaker = Speaker(page=page)
    stock = STOCKS[page.size]
    drawings: dict[str, str] = {}
    labels: list[Facts] = []
    for place, component in enumerate(components):
        tag = tag_of(component.id)
        if tag is None:
            continue
        drawings[f"qr{place}"] = qr_code(tag)
        bars = code_39(tag)
        wide = _bars_wide(tag, stock)
        if bars and wide:
            drawings[f"bars{place}"] = bars
        labels.append(
            {
                "text": tag,
                "alt": speaker.say("paper.code", text=tag)[0],
                "kind": speaker.name("kind", component.kind),
                "owner": _short(component.owner),
                "qr": f"qr{place}",
                "bars": f"bars{place}" if bars and wide else None,
                "bars_wide": wide,
            }
        )
    facts: dict[str, Facts] = {"tags": labels, "stock": dict(vars(stock))}
    return print_sheet("tags", MessageId("paper.title.tags"), facts, speaker, drawings)


def without_tag(components: Sequence[Component]) -> tuple[Component, ...]:
    """Return the pieces whose id makes no tag: too long, or with signs a tag has not."""
    return tuple(component for component in components if tag_of(component.id) is None)


def _bars_wide(tag: str, stock: Stock) -> float | None:
    """Return how wide the bars are drawn [mm]; None when they would be too fine to scan."""
    modules = modules_of(tag)
    wide = min(modules * _MODULE_MM, stock.wide - 6)
    return wide if wide / modules >= _NARROWEST_MM else None


def _short(owner: str | None) -> str | None:
    """Return an owner as far as a label has room."""
    too_long = owner is not None and len(owner) > _OWNER_SIGNS
    return f"{owner[:_OWNER_SIGNS]}…" if owner and too_long else owner
