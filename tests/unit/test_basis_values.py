"""Findings, faults and intervals of minutes."""

import pytest

from sootline.core.basis import (
    BadInputError,
    Bearing,
    Confidence,
    EditionId,
    Fault,
    Ground,
    MessageId,
    MinuteSpan,
    RuleId,
    SootlineError,
    UnreadableValueError,
    finding,
)

GROUND = Ground(
    rule=RuleId("label.wash"),
    edition=EditionId("label"),
    source="invented label",
    confidence=Confidence.STATED,
)


def test_a_finding_keeps_its_values_as_text() -> None:
    """A number in a finding reads as it will be said."""
    found = finding(Bearing.LIMITS, "care.limit", GROUND, limit=40)

    assert found.value("limit") == "40"


def test_a_value_nobody_gave_is_an_error() -> None:
    """A sentence cannot name what is not there."""
    with pytest.raises(KeyError):
        finding(Bearing.NOTES, "care.note", GROUND).value("limit")


def test_bad_input_lists_every_fault() -> None:
    """One refusal, all places."""
    faults = [Fault(place=place, message=MessageId("job.missing")) for place in ("a", "b")]
    error = BadInputError(faults)

    assert error.faults == tuple(faults)
    assert str(error) == "a: job.missing; b: job.missing"
    assert isinstance(error, SootlineError)


def test_minutes_are_read_as_certain_or_as_three() -> None:
    """A programme's set time is one number, an estimate is earliest, likely, late."""
    assert MinuteSpan.parse("60 min") == MinuteSpan.exactly(60)
    assert MinuteSpan.parse("120-150-240 min") == MinuteSpan(earliest=120, likely=150, late=240)


@pytest.mark.parametrize("text", ["", "an hour", "60-90", "-5 min", "240-150-120 min", "999999"])
def test_minutes_out_of_order_or_form_are_refused(text: str) -> None:
    """An interval whose ends are swapped is a mistake, not an interval."""
    with pytest.raises(UnreadableValueError):
        MinuteSpan.parse(text)


def test_minutes_add_end_by_end_and_keep_what_they_rest_on() -> None:
    """Late plus late is the promise; an unmeasured part makes the whole unmeasured."""
    guessed = MinuteSpan(earliest=10, likely=20, late=40, rests_on="plan.not_measured")
    total = MinuteSpan.exactly(60) + guessed

    assert str(total) == "70-80-100 min"
    assert total.rests_on == "plan.not_measured"
