"""On which paper, in which languages, printed when?"""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum
from zoneinfo import ZoneInfo

from sootline.core.basis import require_offset
from sootline.core.ledger import Anchor


class PaperSize(StrEnum):
    """The papers a station's printer has."""

    A4 = "a4"
    LETTER = "letter"


@dataclass(frozen=True, kw_only=True)
class Page:
    """What every sheet of one printing shares.

    Args:
        printed_at: the moment of printing, with its offset from UTC.
        zone: IANA name of the department's time zone; all times of day are its.
        department: stands in the foot of every page.
        languages: the first large, a second beneath it where one is set.
        record: how far the record reached that the sheet was drawn from; None of a job file.
    """

    printed_at: dt.datetime
    zone: str = "UTC"
    department: str = ""
    size: PaperSize = PaperSize.A4
    languages: tuple[str, ...] = ("en",)
    record: Anchor | None = None

    def __post_init__(self) -> None:
        require_offset(self.printed_at)
        if not 1 <= len(self.languages) <= 2:
            raise ValueError("a sheet has one language or two")

    def local(self, moment: dt.datetime) -> dt.datetime:
        """Return a moment as the department's clocks show it."""
        return moment.astimezone(ZoneInfo(self.zone))
