"""How long may it take: at the earliest, likely, and at the latest?"""

import re
from dataclasses import dataclass
from typing import ClassVar

from sootline.core.basis.errors import UnreadableValueError
from sootline.core.basis.text import TextForm

_FORM = re.compile(r"(\d{1,5})(?:-(\d{1,5})-(\d{1,5}))?(?: min)?", re.ASCII)


@dataclass(frozen=True, kw_only=True)
class MinuteSpan(TextForm):
    """A duration or a moment in whole minutes that is only known as an interval.

    Args:
        earliest: the shortest or first [min].
        likely: the one to expect [min].
        late: the longest or last; promises are made on this one [min].
        rests_on: message id of what the estimate rests on ("not measured here").
    """

    earliest: int
    likely: int
    late: int
    rests_on: str = ""
    text_example: ClassVar[str] = "120-150-240 min"

    def __post_init__(self) -> None:
        if not self.earliest <= self.likely <= self.late:
            raise UnreadableValueError("basis.interval.order", text=str(self))

    @classmethod
    def parse(cls, text: str) -> "MinuteSpan":
        """Read "60 min" (certain) or "120-150-240 min" (earliest, likely, late).

        Raises:
            UnreadableValueError: neither form, or not in order.
        """
        match = _FORM.fullmatch(text.strip())
        if not match:
            raise UnreadableValueError("basis.interval.unreadable", text=text)
        first, likely, late = (int(group) if group else int(match[1]) for group in match.groups())
        return cls(earliest=first, likely=likely, late=late)

    @classmethod
    def exactly(cls, minutes: int) -> "MinuteSpan":
        """Make the interval of a duration that is certain (a programme's set time)."""
        return cls(earliest=minutes, likely=minutes, late=minutes)

    def __add__(self, other: "MinuteSpan") -> "MinuteSpan":
        return MinuteSpan(
            earliest=self.earliest + other.earliest,
            likely=self.likely + other.likely,
            late=self.late + other.late,
            rests_on=self.rests_on or other.rests_on,
        )

    def __str__(self) -> str:
        return f"{self.earliest}-{self.likely}-{self.late} min"
