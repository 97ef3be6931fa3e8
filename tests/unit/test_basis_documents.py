"""How values look in a document: one text each, moments with their offset."""

import datetime as dt

import pytest

from sootline.core.basis import (
    DateSpan,
    Quantity,
    TextForm,
    UnreadableValueError,
    quantity,
    require_offset,
)


def test_a_text_is_read_and_a_value_stays() -> None:
    """What is a quantity already is not read again."""
    assert Quantity.read("40 °C") == quantity("40 °C")
    assert Quantity.read(quantity("40 °C")) == quantity("40 °C")


@pytest.mark.parametrize("value", [40, None, ["40 °C"], {"amount": 40}])
def test_anything_but_a_text_is_refused(value: object) -> None:
    """The inner fields of a value are no second way to write it."""
    with pytest.raises(UnreadableValueError):
        DateSpan.read(value)


def test_a_type_must_say_how_it_is_read() -> None:
    """The common form reads nothing by itself."""
    with pytest.raises(NotImplementedError):
        TextForm.parse("anything")


def test_a_moment_needs_its_offset() -> None:
    """02:30 happens twice on the night the clocks go back."""
    require_offset(None, dt.datetime(2026, 3, 1, 2, 30, tzinfo=dt.UTC))
    with pytest.raises(UnreadableValueError):
        require_offset(dt.datetime(2026, 3, 1, 2, 30))  # noqa: DTZ001 - the fault itself
