"""Which planning interval counts where the department has measured nothing?"""

from sootline.core.basis import Confidence, MinuteSpan
from sootline.core.gear.kinds import DryMethod, Layer
from sootline.core.laundry.planning import PlannedDrying, PlannedWork, PlanningTimes


def drying(minutes: str, *layers: Layer) -> PlannedDrying:
    """Make a row for the rack."""
    return PlannedDrying(
        method=DryMethod.RACK,
        layers=layers,
        minutes=MinuteSpan.parse(minutes),
        source="invented for a test",
        confidence=Confidence.STATED,
    )


def work(minutes: str, *layers: Layer) -> PlannedWork:
    """Make a row of handwork."""
    span = MinuteSpan.parse(minutes)
    return PlannedWork(
        layers=layers, prepare=span, hand=span, check=span,
        source="invented for a test", confidence=Confidence.STATED,
    )  # fmt: skip


GENERAL, LINERS = drying("60 min"), drying("120 min", Layer.LINER)
TIMES = PlanningTimes(drying=(GENERAL, LINERS), work=(work("5 min"), work("9 min", Layer.BOOT)))


def test_the_row_that_names_the_layer_comes_first() -> None:
    """Liners have their own row; everything else the general one."""
    assert TIMES.dry(DryMethod.RACK, Layer.LINER) == LINERS
    assert TIMES.dry(DryMethod.RACK, Layer.SHELL) == GENERAL
    assert TIMES.work_on(Layer.BOOT) == TIMES.work[1]
    assert TIMES.work_on(Layer.SHELL) == TIMES.work[0]


def test_a_silent_table_answers_nothing() -> None:
    """A method or layer nobody wrote a row for has no time; none is guessed."""
    assert TIMES.dry(DryMethod.CABINET, Layer.LINER) is None
    assert PlanningTimes(work=(work("5 min", Layer.BOOT),)).work_on(Layer.SHELL) is None
