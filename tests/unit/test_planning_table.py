"""The table of planning intervals: what ships, and what a damaged one is told."""

import pytest

from sootline.core.basis import BadInputError
from sootline.core.gear.kinds import DryMethod, Layer
from sootline.files.planning_table import load_planning_times, read_planning_times


def test_every_method_and_layer_has_an_interval() -> None:
    """Whatever is dried or handled has a row, wide enough to be honest, with its source."""
    times = load_planning_times()

    for method in set(DryMethod) - {DryMethod.NONE}:
        for layer in Layer:
            row = times.dry(method, layer)
            assert row is not None
            assert row.minutes.late >= 2 * row.minutes.earliest
            assert row.source == "common practice, no published source"
    assert all(times.work_on(layer) for layer in Layer)


def test_liners_dry_no_faster_than_shells() -> None:
    """Common practice, no published source: the liner is the slow one."""
    times = load_planning_times()

    for method in (DryMethod.CABINET, DryMethod.RACK, DryMethod.HANG):
        shell, liner = times.dry(method, Layer.SHELL), times.dry(method, Layer.LINER)
        assert shell is not None
        assert liner is not None
        assert liner.minutes.likely > shell.minutes.likely


def test_gloves_take_half_a_day_to_two_days_on_a_rack() -> None:
    """12 to 48 hours, as people who dry gear report; common practice, no published source."""
    row = load_planning_times().dry(DryMethod.RACK, Layer.GLOVE)

    assert row is not None
    assert (row.minutes.earliest, row.minutes.late) == (12 * 60, 48 * 60)


def test_a_table_with_wrong_rows_lists_every_fault() -> None:
    """Two rows, an unknown method and a missing interval, each at its place."""
    text = '[[drying]]\nmethod = "oven"\n[[work]]\nprepare = "1 min"\n'

    with pytest.raises(BadInputError) as refusal:
        read_planning_times(text, name="mine.toml")

    assert {"drying[0].method", "work[0].hand"} <= {one.place for one in refusal.value.faults}


def test_a_table_that_is_no_toml_is_refused() -> None:
    """The fault names the file."""
    with pytest.raises(BadInputError) as refusal:
        read_planning_times("[[drying", name="mine.toml")

    [fault] = refusal.value.faults
    assert (fault.place, fault.message) == ("mine.toml", "rules.fault.toml")
