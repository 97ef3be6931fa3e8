"""How long may it take: at the earliest, likely, and at the latest?"""

from dataclasses import dataclass

from sootline.core.basis.errors import UnreadableValueError


@dataclass(frozen=True, kw_only=True)
class MinuteSpan:
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

    def __post_init__(self) -> None:
        if not self.earliest <= self.likely <= self.late:
            raise UnreadableValueError("basis.interval.order", text=str(self))

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
        return f"{self.earliest}-{self.late}"
