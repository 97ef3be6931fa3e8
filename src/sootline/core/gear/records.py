"""What was done to a component, when, and by whom, as far as anybody wrote it down?"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import DateSpan


class Deed(StrEnum):
    """Something done to a component that its dates depend on."""

    ISSUED = "issued"
    WORN = "worn"
    ADVANCED_CLEANING = "advanced-cleaning"
    ADVANCED_INSPECTION = "advanced-inspection"
    LINER_INSPECTION = "liner-inspection"
    DISINFECTED = "disinfected"


@dataclass(frozen=True, kw_only=True)
class Record:
    """One deed as recorded.

    Args:
        on: when; a month or a year is a span.
        by: who did it; None is not recorded.
    """

    deed: Deed
    on: DateSpan
    by: str | None = None
    note: str | None = None
