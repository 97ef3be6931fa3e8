"""Amounts as entered, and limits: at it, beyond it, not known."""

from decimal import Decimal
from fractions import Fraction

import pytest

from sootline.core.basis import (
    AtMostForm,
    Limit,
    Quantity,
    Side,
    Standing,
    UnreadableValueError,
    parse_limit,
    quantity,
)

PAIR = parse_limit("105 °F / 40 °C", Side.AT_MOST)
LABEL = parse_limit("40 °C", Side.AT_MOST)
ENTERED = [
    ("105 °F", "105", "°F"),
    ("105F", "105", "°F"),
    ("40 C", "40", "°C"),
    ("40.5 ºC", "40.5", "°C"),
    ("-25 ° F", "-25", "°F"),
    ("pH 6.0", "6.0", "pH"),
    ("PH10.5", "10.5", "pH"),
    ("6.5 ph", "6.5", "pH"),
    ("100 G", "100", "G"),
    ("7.2 lbs", "7.2", "lb"),
    ("1 year", "1", "years"),
    (" 60  minutes ", "60", "min"),
]
REFUSED = [
    ("", "unreadable"),
    ("105", "unreadable"),
    ("°F", "unreadable"),
    ("hot", "unreadable"),
    ("1e9 °C", "unit"),
    ("1,5 kg", "unit"),
    ("NaN °C", "unreadable"),
    ("Infinity kg", "unreadable"),
    ("1" * 10 + " kg", "unit"),
    ("0.1234567 kg", "unit"),
    ("１０５ °F", "unreadable"),
    ("105 °F\n40 °C", "unreadable"),
    ("105 furlongs", "unit"),
    ("105 °F ; drop", "unit"),
    ("-274 °C", "impossible"),
    ("-460 °F", "impossible"),
    ("-1 kg", "impossible"),
]


@pytest.mark.parametrize(("text", "amount", "unit"), ENTERED)
def test_an_amount_is_read_and_kept_as_entered(text: str, amount: str, unit: str) -> None:
    """105 °F stays 105 °F: neither converted nor rounded."""
    read = quantity(text)

    assert (read.amount, read.unit, str(read)) == (Decimal(amount), unit, text.strip())


@pytest.mark.parametrize(("text", "reason"), REFUSED)
def test_what_is_no_amount_is_refused_with_its_reason(text: str, reason: str) -> None:
    """Hostile, foreign and impossible texts are told apart and never guessed at."""
    with pytest.raises(UnreadableValueError) as refusal:
        quantity(text)

    assert refusal.value.message == f"basis.quantity.{reason}"


def test_equal_amounts_are_equal_however_written() -> None:
    """The text is kept for the reader only."""
    assert quantity("40 °C") == quantity("40.0 C")


def test_an_amount_without_its_text_shows_number_and_unit() -> None:
    """A computed amount reads like an entered one."""
    assert str(Quantity(amount=Decimal("40.50"), unit="°C")) == "40.5 °C"


def test_an_impossible_amount_without_text_is_named_in_the_refusal() -> None:
    """The refusal always says which amount it means."""
    with pytest.raises(UnreadableValueError) as refusal:
        Quantity(amount=Decimal(-1), unit="kg")

    assert dict(refusal.value.values)["text"] == "-1 kg"


@pytest.mark.parametrize(
    ("text", "unit", "amount"),
    [
        ("104 °F", "°C", Fraction(40)),
        ("-40 °C", "°F", Fraction(-40)),
        ("1 lb", "kg", Fraction("0.45359237")),
        ("16 oz", "lb", Fraction(1)),
        ("1 gal", "L", Fraction("3.785411784")),
        ("1 h", "min", Fraction(60)),
        ("10 years", "months", Fraction(120)),
    ],
)
def test_conversion_is_exact(text: str, unit: str, amount: Fraction) -> None:
    """No conversion rounds. Source: the international yard and pound of 1959; SI Brochure."""
    assert quantity(text).to(unit) == amount


def test_units_of_different_kinds_do_not_convert() -> None:
    """A weight is no temperature."""
    with pytest.raises(UnreadableValueError):
        quantity("1 kg").to("°C")


@pytest.mark.parametrize(
    ("limit", "reading", "standing"),
    [
        (PAIR, "105 °F", Standing.WITHIN),
        (PAIR, "105.1 °F", Standing.BEYOND),
        (PAIR, "40 °C", Standing.WITHIN),
        (PAIR, "40.1 °C", Standing.BEYOND),
        (LABEL, "105 °F", Standing.BEYOND),
        (LABEL, "104 °F", Standing.WITHIN),
        (LABEL, "104.09 °F", Standing.WITHIN),
        (LABEL, "104.1 °F", Standing.BEYOND),
        (LABEL, "40.01 °C", Standing.BEYOND),
        (parse_limit("pH 6.0", Side.AT_LEAST), "6.0 pH", Standing.WITHIN),
        (parse_limit("pH 6.0", Side.AT_LEAST), "5.9 pH", Standing.BEYOND),
        (parse_limit("20 kg", Side.AT_MOST), "44.1 lb", Standing.BEYOND),
        (parse_limit("20 kg", Side.AT_MOST), "44 lb", Standing.WITHIN),
    ],
)
def test_where_a_reading_stands(limit: Limit, reading: str, standing: Standing) -> None:
    """A pair is compared in the reading's unit; a single unit exactly, within 0.05 K."""
    assert limit.stand(quantity(reading)) is standing


def test_no_reading_is_unknown_and_never_within() -> None:
    """What nobody measured is not permitted by silence."""
    assert PAIR.stand(None) is Standing.UNKNOWN


def test_a_reading_of_another_kind_is_refused() -> None:
    """Speed is not held against a temperature."""
    with pytest.raises(UnreadableValueError):
        PAIR.stand(quantity("100 G"))


def test_a_limit_of_two_kinds_is_refused() -> None:
    """A pair states one limit, not two."""
    with pytest.raises(UnreadableValueError):
        parse_limit("105 °F / 100 G", Side.AT_MOST)


@pytest.mark.parametrize(
    ("one", "other", "stricter"),
    [
        (LABEL, PAIR, True),
        (PAIR, LABEL, False),
        (PAIR, PAIR, False),
        (PAIR, parse_limit("41 °C", Side.AT_MOST), True),
        (parse_limit("105 °F", Side.AT_MOST), PAIR, False),
        (parse_limit("pH 7", Side.AT_LEAST), parse_limit("pH 6", Side.AT_LEAST), True),
    ],
)
def test_which_of_two_limits_permits_less(one: Limit, other: Limit, stricter: bool) -> None:
    """A 40 °C label is stricter than 105 °F / 40 °C; the pair is not stricter than itself."""
    assert one.stricter(other) is stricter


@pytest.mark.parametrize("text", ["at most 105 °F / 40 °C", "at least pH 6.0"])
def test_a_limit_reads_back_from_its_text(text: str) -> None:
    """What is written into a document is what is read from it."""
    assert str(Limit.parse(text)) == text


def test_a_limit_without_a_side_is_refused() -> None:
    """Nobody guesses on which side the permitted readings lie."""
    with pytest.raises(UnreadableValueError):
        Limit.parse("105 °F")


def test_a_field_that_says_at_most_holds_the_values_only() -> None:
    """Nothing stays nothing, a text is read, anything else is refused."""
    assert AtMostForm.read(None) is None
    assert AtMostForm.read("40 °C") == LABEL
    with pytest.raises(UnreadableValueError):
        AtMostForm.read(40)
