"""Whether drums, spin sheets and stricter labels say what they should."""

import pytest
from tests.unit.machines.machine_cases import GROUND, LIMITS, NO_LIMITS, TABLE, drum, limit

from sootline.core.basis import (
    ComponentId,
    Confidence,
    DateSpan,
    EditionId,
    KindId,
    Limit,
    MachineId,
    RuleId,
    Side,
    UnreadableValueError,
    parse_limit,
    quantity,
)
from sootline.core.gear import Component, resolve_terms
from sootline.core.gear.labels import CareText, Label
from sootline.core.machines import Drum, SpinSpeed, limits_in_force, stricter_labels
from sootline.core.machines.spin_sheet import SpinAsked, reckon_spin
from sootline.core.rulebook import Edition, EditionStatus, Rule, Rulebook, RuleKind


@pytest.mark.parametrize("wrong", ["36 cm2", "36 m", "10 cm"])
def test_a_drum_of_another_size_is_asked_about(wrong: str) -> None:
    """A slip of the unit is refused with the bounds."""
    with pytest.raises(UnreadableValueError):
        drum(wrong)


def test_errors_are_shares() -> None:
    """An error of the diameter beyond one half is no error."""
    with pytest.raises(UnreadableValueError, match=r"machine\.drum.error"):
        Drum(washer=MachineId("W"), diameter=quantity("1 m"), diameter_error=quantity("60 %"))


def test_errors_entered_replace_the_tables() -> None:
    """Whoever measured better gets a narrower figure."""
    fine = Drum(
        washer=MachineId("W"), diameter=quantity("1 m"), diameter_error=quantity("0.1 %"),
        speed_error=quantity("0.5 %"),
    )  # fmt: skip

    assert fine.errors(TABLE) == (0.001, 0.005)
    assert drum().errors(TABLE) == (0.01, 0.02)


def test_a_speed_of_zero_is_refused() -> None:
    """A drum that stands is no spin."""
    with pytest.raises(UnreadableValueError, match=r"machine\.drum.speed"):
        SpinSpeed(programme="1", speed=quantity("0 rpm"))


def test_a_drum_knows_its_speeds_and_volume() -> None:
    """What nobody entered is None."""
    assert drum(speed="400 rpm").speed_of("1") == quantity("400 rpm")
    assert drum(speed="400 rpm").speed_of("2") is None
    assert drum().volume_l is None


def asked(speed: str = "", limit_text: str = "100 G") -> SpinAsked:
    """Ask about a 36 inch drum."""
    return SpinAsked(
        diameter=quantity("36 in"), limit=quantity(limit_text),
        speed=quantity(speed) if speed else None,
    )  # fmt: skip


def test_the_spin_sheet_sets_below_the_limit() -> None:
    """92 G and 424 rpm for 100 G; 442 without the margin, rounded down."""
    sheet = reckon_spin(asked(), TABLE)

    assert (sheet.set_g, sheet.set_rpm, sheet.bare_rpm) == (92, 424, 442)
    assert not sheet.too_fast


@pytest.mark.parametrize(("speed", "fast"), [("424 rpm", False), ("440 rpm", True)])
def test_the_spin_sheet_judges_a_speed_with_its_spread(speed: str, fast: bool) -> None:
    """Two deviations above the figure decide."""
    assert reckon_spin(asked(speed), TABLE).too_fast is fast


@pytest.mark.parametrize("wrong", [asked("0 rpm"), asked(limit_text="0 G")])
def test_the_spin_sheet_refuses_nothing(wrong: SpinAsked) -> None:
    """Speed and limit are above zero."""
    with pytest.raises(UnreadableValueError, match=r"machine\.setting.amount"):
        reckon_spin(wrong, TABLE)


def rule(topic: str, value: Limit | None) -> Rule:
    """Make a rule on a limit."""
    return Rule(
        topic=RuleId(topic), kind=RuleKind.LIMIT, value=value, source="invented for a test",
        confidence=Confidence.STATED,
    )  # fmt: skip


def edition(name: str, *rules: Rule) -> Edition:
    """Make a text."""
    return Edition(
        id=EditionId(name), title=name, body="invented", status=EditionStatus.CURRENT,
        in_force=DateSpan(), rules=rules,
    )  # fmt: skip


def test_limits_in_force_are_sorted_and_questions_kept() -> None:
    """The strictest of edition and policy comes first; an unset value stays a question."""
    book = Rulebook(
        adopted=edition(
            "invented/1",
            rule("wash.bath_temp", parse_limit("105 °F / 40 °C", Side.AT_MOST)),
            rule("wash.ph_low", parse_limit("pH 6.0", Side.AT_LEAST)),
            rule("wash.extraction", None),
        ),
        policy=edition(
            "policy",
            rule("wash.bath_temp", parse_limit("30 °C", Side.AT_MOST)),
            rule("wash.ph_low", parse_limit("pH 6.5", Side.AT_LEAST)),
        ),
        practice=edition("practice/common"),
    )
    limits = limits_in_force(book)

    assert [str(one) for one, _ in limits.bath.limits] == [
        "at most 30 °C", "at most 105 °F / 40 °C",
    ]  # fmt: skip
    assert [str(one) for one, _ in limits.ph_low.limits] == ["at least pH 6.5", "at least pH 6.0"]
    assert len(limits.spin.unset) == 1


def test_pieces_that_bear_less_are_listed() -> None:
    """A label below the limit that binds every piece is named."""
    care = CareText(wash_temp=parse_limit("30 °C", Side.AT_MOST))
    book = Rulebook(
        adopted=edition("invented/1"), policy=edition("policy"), practice=edition("practice/common")
    )
    pieces = [
        (one, resolve_terms(one, None, book))
        for one in (
            Component(id=ComponentId("1"), kind=KindId("coat-shell"), label=Label(care=care)),
            Component(id=ComponentId("2"), kind=KindId("coat-shell")),
        )
    ]

    for limits in (LIMITS, NO_LIMITS):
        assert [one.value("component") for one in stricter_labels(pieces, limits)] == ["1"]
    assert limit("wash.bath_temp", "30 °C").limits[0][1] is GROUND
