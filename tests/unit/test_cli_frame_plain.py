"""The plain JSON form of results, and findings as text."""

import datetime as dt
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from sootline.cli.output import finding_lines
from sootline.cli.plain import Json, plain
from sootline.core.basis import (
    Bearing,
    Confidence,
    DateSpan,
    EditionId,
    Ground,
    MinuteSpan,
    RuleId,
    Side,
    finding,
    parse_limit,
    quantity,
)

GROUND = Ground(
    rule=RuleId("label.wash_temp"),
    edition=EditionId("label"),
    source="read by 118",
    confidence=Confidence.STATED,
    in_force=DateSpan.parse("2020-01"),
)
FOUND = finding(Bearing.LIMITS, "basis.quantity.unit", GROUND, text="12 furlongs", unit="furlongs")


@dataclass(frozen=True, kw_only=True)
class Result:
    """A result with a part inside."""

    span: MinuteSpan
    parts: tuple[str, ...]


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        (Side.AT_MOST, "at most"),
        (quantity("105 °F"), "105 °F"),
        (DateSpan.parse("2012..2015"), "2012..2015"),
        (parse_limit("105 °F / 40 °C", Side.AT_MOST), "at most 105 °F / 40 °C"),
        (dt.date(2026, 3, 1), "2026-03-01"),
        (dt.datetime(2026, 3, 1, 4, 20, tzinfo=dt.UTC), "2026-03-01T04:20:00+00:00"),
        (Decimal("7.20"), "7.20"),
        (Fraction(1, 3), "1/3"),
        (Path("a/b"), "a/b"),
        (frozenset({"b", "a"}), ["a", "b"]),
        ({Side.AT_MOST: (1, 2.5, None, True)}, {"at most": [1, 2.5, None, True]}),
    ],
)
def test_a_value_has_a_plain_form(value: object, expected: Json) -> None:
    """Every kind of value a result may hold becomes what JSON knows."""
    assert plain(value) == expected


def test_a_dataclass_becomes_an_object_of_its_fields() -> None:
    """An interval of minutes is an object too."""
    expected = {
        "span": {"earliest": 5, "likely": 5, "late": 5, "rests_on": ""},
        "parts": ["a"],
    }

    assert plain(Result(span=MinuteSpan.exactly(5), parts=("a",))) == expected


def test_a_finding_carries_its_sentence_and_its_ground() -> None:
    """Whoever reads the JSON without catalogues still reads the sentence."""
    found = plain(FOUND, lang="es")

    assert isinstance(found, dict)
    assert found["values"] == {"text": "12 furlongs", "unit": "furlongs"}
    assert "no conoce" in str(found["text"])
    assert isinstance(found["ground"], dict)
    assert found["ground"]["confidence"] == "stated"


def test_a_value_without_plain_form_is_our_mistake() -> None:
    """Nothing is written as an object's address."""
    with pytest.raises(TypeError, match="object"):
        plain(object())


def test_a_finding_is_printed_with_bearing_sentence_and_ground() -> None:
    """What it does stands first, what it rests on last, within the width."""
    lines = finding_lines([FOUND], lang="en", width=80)

    assert lines[0].startswith('  LIMIT: "12 furlongs"')
    assert "rests on: read by 118 (as somebody stated it);" in lines[-2]
    assert "label.wash_temp, in force since 2020-01" in " ".join(" ".join(lines[-2:]).split())
    assert max(map(len, lines)) <= 80


def test_a_source_is_printed_whole() -> None:
    """What a finding rests on is never cut off: a reader must be able to look it up."""
    source = "NFPA 1851, 2020 edition, topic; " * 10 + "end"
    ground = replace(FOUND.ground, source=source)

    printed = " ".join(" ".join(finding_lines([replace(FOUND, ground=ground)], lang="en")).split())

    assert source in printed


def test_common_practice_is_named_once() -> None:
    """Where there is no published source, the line says so once."""
    ground = Ground(
        rule=RuleId("wash.sinks"),
        edition=EditionId("practice/laundry"),
        source="common practice, no published source",
        confidence=Confidence.PRACTICE,
    )
    printed = " ".join(finding_lines([replace(FOUND, ground=ground)], lang="en"))

    assert printed.count("no published source") == 1
