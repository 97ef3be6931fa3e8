"""Published limits of the care standard, against what the shipped editions say.

At each limit a reading passes, one step beyond it fails, and no reading asks. The figures, their
sources and how well each is known stand in limits.csv and unknown_limits.csv beside this file;
"value from memory" means that nobody here has read it in a source.
"""

import csv
from pathlib import Path

import pytest

from sootline.core.basis import EditionId, Limit, Side, Standing, parse_limit, quantity
from sootline.core.rulebook import TOPICS, Rule, RuleKind, looser, read_rule
from sootline.files.rules import RuleFiles

HERE = Path(__file__).parent


def rows(name: str) -> list[dict[str, str]]:
    """Read a table beside this file."""
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def stated(row: dict[str, str]) -> Rule:
    """Return the rule that comes first for a piece with the row's traits."""
    edition = RuleFiles().edition(EditionId(row["edition"]))
    return edition.on(row["topic"], frozenset(row["traits"].split()))[0]


def permits(row: dict[str, str], reading: str) -> bool:
    """Hold a reading against the limit, or a count or interval against the number."""
    rule = stated(row)
    if isinstance(rule.value, Limit):
        return rule.value.stand(quantity(reading)) is Standing.WITHIN
    number = int(reading.split(maxsplit=1)[0])
    assert isinstance(rule.value, int)
    at_most = TOPICS[rule.topic].side is Side.AT_MOST
    return number <= rule.value if at_most else number >= rule.value


LIMITS = rows("limits.csv")


@pytest.mark.parametrize("row", LIMITS, ids=lambda row: f"{row['edition']}-{row['topic']}")
def test_at_the_limit_passes(row: dict[str, str]) -> None:
    """A reading at the published value is permitted."""
    assert permits(row, row["at"])


@pytest.mark.parametrize("row", LIMITS, ids=lambda row: f"{row['edition']}-{row['topic']}")
def test_one_step_beyond_fails(row: dict[str, str]) -> None:
    """The next step over the published value is not."""
    assert not permits(row, row["beyond"])


READ = [row for row in LIMITS if TOPICS[row["topic"]].kind is RuleKind.LIMIT]


@pytest.mark.parametrize("row", READ, ids=lambda row: f"{row['edition']}-{row['topic']}")
def test_no_reading_asks(row: dict[str, str]) -> None:
    """A limit without a reading is unknown, never within."""
    value = stated(row).value

    assert isinstance(value, Limit)
    assert value.stand(None) is Standing.UNKNOWN


@pytest.mark.parametrize("row", LIMITS, ids=lambda row: f"{row['edition']}-{row['topic']}")
def test_a_value_claims_no_more_confidence_than_its_source_gives(row: dict[str, str]) -> None:
    """What is from memory says so in the rule file as well."""
    assert stated(row).confidence.value == row["confidence"]


UNKNOWN = rows("unknown_limits.csv")


@pytest.mark.parametrize("row", UNKNOWN, ids=lambda row: f"{row['edition']}-{row['topic']}")
def test_what_nobody_has_read_asks_and_states_nothing(row: dict[str, str]) -> None:
    """No default stands in for a value that was not found."""
    rule = stated(row)

    assert rule.value is None
    assert rule.question == f"ask.{row['topic']}"


def test_no_value_of_the_successor_is_guessed() -> None:
    """Not one clause of the 2026 edition was seen. Source: none; that is the point."""
    edition = RuleFiles().edition(EditionId("nfpa-1850/2026"))

    assert {rule.value for rule in edition.rules} == {None}


def test_a_makers_stricter_detergent_range_is_stricter() -> None:
    """12: a maker's guide for sister-standard garments sets pH 6.0 to 9.5 (read; high)."""
    edition = RuleFiles().edition(EditionId("nfpa-1851/2020"))
    value = edition.on("wash.ph_high")[0].value
    maker = parse_limit("pH 9.5", Side.AT_MOST)

    assert isinstance(value, Limit)
    assert maker.stricter(value)
    assert not value.stricter(maker)


@pytest.mark.parametrize("dots_c", [50, 60, 70, 95])
def test_a_hotter_care_symbol_does_not_loosen_the_edition(dots_c: int) -> None:
    """22: two to six dots are 40 to 95 °C (ASTM D5489, ISO 3758 as charted; high).

    A label's symbol above 40 °C permits more than the edition, so the edition's value stays.
    """
    adopted = RuleFiles().edition(EditionId("nfpa-1851/2020")).on("wash.bath_temp")[0]
    row = {"topic": "wash.bath_temp", "source": "symbol", "confidence": "stated"}
    symbol = read_rule({**row, "value": f"{dots_c} °C"}, "symbol")

    assert looser(symbol, adopted)


@pytest.mark.parametrize(("edition", "items"), [("nfpa-1851/2014", 11)])
def test_the_record_list_has_as_many_items_as_the_edition_counts(edition: str, items: int) -> None:
    """17: eleven items in the 2014 list (read on a repair shop's page; high)."""
    fields = RuleFiles().edition(EditionId(edition)).on("record.fields")[0].value

    assert isinstance(fields, tuple)
    assert len(fields) == items
