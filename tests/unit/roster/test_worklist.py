"""What is missing, what did an officer decide, and what is past whatever was decided?"""

import pytest
from tests.unit.roster.lists import TODAY, read, table

from sootline.core.basis import (
    BadInputError,
    Bearing,
    Confidence,
    DateSpan,
    EditionId,
    Ground,
    RuleId,
)
from sootline.core.gear.components import Component
from sootline.core.gear.terms import ResolvedInterval
from sootline.core.intervals import Due
from sootline.core.intervals.retirement import retirement_due
from sootline.core.roster import Choice, Decision, Intake, Mapping, MissingFact, read_list

# Ten years from manufacture: the figure of the invented policy of this test, not of an edition.
GROUND = Ground(
    rule=RuleId("retire.months"),
    edition=EditionId("policy"),
    source="invented for this test",
    confidence=Confidence.POLICY,
)
TEN_YEARS = ResolvedInterval(topic="retire.months", months=((120, GROUND),))


def ten_years(component: Component) -> Due | None:
    """Return the first day out after ten years."""
    return retirement_due(component, [TEN_YEARS], TODAY)


def taken_in(*lines: str, decision: Decision | None = None) -> Intake:
    """Read a list with the ten-year rule and perhaps a decision."""
    rows = table(*lines)
    return read_list(rows, Mapping(), today=TODAY, due=ten_years, decision=decision)


def decided(choice: Choice, *, made: str = "unknown", by: str = "118", why: str = "x") -> Decision:
    """Make a decision of officer 118."""
    return Decision(choice=choice, by=by, on=TODAY, why=why, made=DateSpan.parse(made))


def test_the_worklist_names_what_to_look_up() -> None:
    """No date, no size, the liner's own label, the drag device."""
    got = read("serial|kind", "SN-1|coat")

    assert [(missing.piece, missing.facts) for missing in got.missing] == [
        ("SN-1", (MissingFact.MADE, MissingFact.SIZE, MissingFact.DRAG_DEVICE)),
        ("SN-1/coat-liner", (MissingFact.MADE, MissingFact.OWN_LABEL)),
    ]


def test_a_listed_drag_device_is_not_missed() -> None:
    """Found under the same owner and set, it is not on the worklist."""
    got = read(
        "serial|kind|member|made|size",
        "1|coat shell|M1|2020|44",
        "2|drag device|M1|2020|",
        "|hood|M1|2020|",
    )

    assert [(one.piece, one.facts) for one in got.missing] == [("row-4", (MissingFact.SERIAL,))]


def test_what_is_out_of_use_is_not_on_the_worklist() -> None:
    """Nobody looks up the label of a disposed coat."""
    assert read("kind|status", "coat|disposed").missing == ()


def test_undated_gear_stays_in_use_without_a_hold() -> None:
    """Not knowing by itself holds nothing."""
    got = taken_in("kind", "hood")

    assert got.components[0].state.holds == ()
    assert got.past == ()


@pytest.mark.parametrize(
    ("facts", "held"),
    [
        ("2016-02-29||", True),
        ("03/2016||", False),
        ("2015||", True),
        ("2016||", False),
        ("|2015-07-10|", True),
        ("||2015-07-10", True),
        ("|2017|", False),
    ],
)
def test_past_under_every_reading_is_held(facts: str, held: bool) -> None:
    """Past at the latest reading is out; past at the earliest alone is for the due list.

    Source: common practice, no published source: a missing date is bounded by invoice or issue,
    and a month end that a year lacks is clamped (29 February 2016 and ten years: 28 February
    2026).
    """
    got = taken_in("kind|made|purchased|in service", f"hood|{facts}")

    assert bool(got.components[0].state.open_holds) is held
    assert len(got.past) == held


def test_the_hold_names_its_rule() -> None:
    """Whoever reads the hold sees by which text it is out."""
    (hold,) = taken_in("kind|made", "hood|2010").components[0].state.open_holds

    assert hold.reason is not None
    assert (hold.reason.bearing, hold.reason.ground) == (Bearing.LIMITS, GROUND)


def test_retired_gear_is_not_held_again() -> None:
    """What is retired needs no hold."""
    assert taken_in("kind|made|status", "hood|2010|retired").past == ()


def test_keeping_is_recorded_with_name_and_number() -> None:
    """The record says who decided and for which pieces; the pieces stay as they are."""
    got = taken_in("kind|made", "hood|", "hood|2020", decision=decided(Choice.KEEP))

    assert got.decision is not None
    assert (got.decision.decision.by, got.decision.pieces) == ("118", ("row-2",))
    assert got.components[0].state.holds == ()


def test_pulling_holds_every_undated_piece() -> None:
    """And no dated one, and none that is retired."""
    got = taken_in(
        "kind|made|status",
        "hood||in use",
        "hood|2020|in use",
        "hood||retired",
        decision=decided(Choice.PULL),
    )

    assert [len(piece.state.holds) for piece in got.components] == [1, 0, 0]


def test_a_span_the_officer_stands_for_dates_them() -> None:
    """From then on they are acted on like any other, and may be past at once."""
    got = taken_in("kind", "hood", decision=decided(Choice.MADE, made="2012..2014"))

    assert got.components[0].made == DateSpan.parse("2012..2014")
    assert len(got.past) == 1


def test_no_decision_keeps_what_is_past() -> None:
    """Kept or not: past under every reading is held."""
    got = taken_in("kind|purchased", "hood|2014", decision=decided(Choice.KEEP))

    assert len(got.past) == 1


def test_a_decision_against_a_known_bound_is_refused() -> None:
    """Paid for in 2014 was not made in 2016."""
    with pytest.raises(BadInputError) as error:
        taken_in("kind|purchased", "hood|2014", decision=decided(Choice.MADE, made="2016"))

    assert [fault.message for fault in error.value.faults] == ["roster.decision.contradicts"]


def test_a_decision_needs_name_reason_and_a_first_day() -> None:
    """An unsigned or open decision is none."""
    with pytest.raises(BadInputError) as error:
        taken_in("kind", "hood", decision=decided(Choice.MADE, made="..2016", by=" ", why=""))

    assert [fault.message for fault in error.value.faults] == [
        "roster.decision.by",
        "roster.decision.why",
        "roster.decision.open",
    ]
