"""Terms of care against published values; beside each its source and how well it is known."""

import csv
from pathlib import Path

import pytest
from tests.unit.gear.gear_cases import at_most, book, guide, piece, terms

from sootline.core.basis import EditionId, Quantity, Standing, quantity
from sootline.core.gear import (
    KINDS,
    Act,
    CareText,
    DryMethod,
    Kind,
    WashMethod,
    find_kind,
    resolve_months,
)
from sootline.core.gear.terms import CareTerms
from sootline.core.rulebook.books import assemble
from sootline.core.rulebook.rules import Rulebook
from sootline.files.rules import RuleFiles

SYMBOLS = list(csv.DictReader((Path(__file__).parent / "care_symbols.csv").open(encoding="utf-8")))


def shipped(edition: str) -> Rulebook:
    """Return the rulebook of a department that adopted an edition and has no policy."""
    files = RuleFiles()
    adopted = files.edition(EditionId(edition))
    return assemble(adopted=adopted, policy=(), practice=files.practice()).rulebook


US_2020 = shipped("nfpa-1851/2020")
US_2014 = shipped("nfpa-1851/2014")
SUCCESSOR = shipped("nfpa-1850/2026")


def stands(resolved: CareTerms, topic: str, reading: str) -> Standing:
    """Say where a reading stands."""
    return resolved.limit(topic).stand(quantity(reading))


# Sources of the limits: trade articles on NFPA 1851 and a maker's guide. Confidence: high for
# water, drying and extraction, medium to high for pH.
EDGES = [
    ("wash.bath_temp", "105 °F", "105.1 °F"),
    ("wash.bath_temp", "40 °C", "40.1 °C"),
    ("dry.air_temp", "105 °F", "105.1 °F"),
    ("dry.air_temp", "40 °C", "40.1 °C"),
    ("wash.extraction", "100 G", "100.1 G"),
    ("wash.ph_low", "pH 6.0", "pH 5.9"),
    ("wash.ph_high", "pH 10.5", "pH 10.6"),
]


@pytest.mark.parametrize(("topic", "at", "beyond"), EDGES)
@pytest.mark.parametrize("rulebook", [US_2014, US_2020], ids=["2014", "2020"])
def test_at_the_limit_passes_and_one_step_beyond_fails(
    rulebook: Rulebook, topic: str, at: str, beyond: str
) -> None:
    """Each limit of the two editions, in the unit of the reading."""
    resolved = terms(piece(), rulebook)

    assert stands(resolved, topic, at) is Standing.WITHIN
    assert stands(resolved, topic, beyond) is Standing.BEYOND


@pytest.mark.parametrize("topic", dict.fromkeys(topic for topic, _, _ in EDGES))
def test_a_reading_nobody_took_is_unknown(topic: str) -> None:
    """No reading is never within."""
    assert terms(piece(), US_2020).limit(topic).stand(None) is Standing.UNKNOWN


@pytest.mark.parametrize(("topic", "at", "_beyond"), EDGES)
def test_the_successor_edition_asks(topic: str, at: str, _beyond: str) -> None:
    """Nobody here has read its numbers (trade page on NFPA 1850; confidence low)."""
    resolved = terms(piece(), SUCCESSOR)

    assert stands(resolved, topic, at) is Standing.UNKNOWN
    assert f"ask.{topic}" in {question.message for question in resolved.questions}


def test_a_label_of_40_c_refuses_a_bath_of_105_f() -> None:
    """105 °F is 40.6 °C: the edition treats the two as the same, the label does not.

    Source: arithmetic (105 °F = 40.56 °C); edition's pair: trade articles, high.
    """
    resolved = terms(piece(care=CareText(wash_temp=at_most("40 °C"))), US_2020)

    assert stands(resolved, "wash.bath_temp", "105 °F") is Standing.BEYOND
    assert stands(resolved, "wash.bath_temp", "104 °F") is Standing.WITHIN
    assert stands(terms(piece(), US_2020), "wash.bath_temp", "105 °F") is Standing.WITHIN


def test_a_makers_ph_of_9_5_counts_before_the_editions_10_5() -> None:
    """Source: a garment maker's guide for sister-standard garments (6.0 to 9.5); high."""
    maker = guide(CareText(ph_low=quantity("pH 6.0"), ph_high=quantity("pH 9.5")))

    resolved = terms(piece(), US_2020, maker)

    assert stands(resolved, "wash.ph_high", "pH 9.5") is Standing.WITHIN
    assert stands(resolved, "wash.ph_high", "pH 9.6") is Standing.BEYOND


@pytest.mark.parametrize("rulebook", [US_2014, US_2020], ids=["2014", "2020"])
def test_reflective_shells_are_neither_machine_washed_nor_machine_dried(
    rulebook: Rulebook,
) -> None:
    """Source: trade column on the care of aluminised shells, since the 2008 edition; high."""
    label = CareText(wash=WashMethod.MACHINE, dry=(DryMethod.CABINET, DryMethod.HANG))

    resolved = terms(piece("coat-shell", label, "aluminised"), rulebook)

    assert resolved.method.wash is WashMethod.HAND
    assert resolved.dry == (DryMethod.HANG,)
    assert terms(piece("coat-shell", label), rulebook).method.wash is WashMethod.MACHINE


@pytest.mark.parametrize("act", [Act.CHLORINE_BLEACH, Act.SOLVENT, Act.DRY_CLEAN])
@pytest.mark.parametrize("kind", ["coat-shell", "trouser-liner", "gloves", "helmet-shell"])
def test_bleach_solvents_and_dry_cleaning_are_forbidden(act: Act, kind: str) -> None:
    """Source: a garment maker's guide and a trade article on NFPA 1851; high."""
    assert terms(piece(kind), US_2020).banned(act) is not None


def test_only_the_2020_edition_rules_out_top_loaders() -> None:
    """Source: a washer maker's page on the changes of 2020; high."""
    assert terms(piece(), US_2020).banned(Act.TOP_LOADER) is not None
    assert terms(piece(), US_2014).banned(Act.TOP_LOADER) is None


def test_garments_are_out_120_months_from_manufacture() -> None:
    """Source: s. 10.1.2 of the 2008 edition as quoted in trade columns, kept since; high."""
    interval = resolve_months("retire.months", piece(), None, US_2020)

    assert interval.shortest is not None
    assert interval.shortest[0] == 120


@pytest.mark.parametrize("row", SYMBOLS, ids=lambda row: f"{row['dots']} dots")
def test_the_care_dots_table_is_kept_in_both_units(row: dict[str, str]) -> None:
    """A label's dots, entered as the chart's pair, permit either unit's number and no more."""
    pair = at_most(f"{row['fahrenheit']} °F / {row['celsius']} °C")
    limit = terms(piece(care=CareText(wash_temp=pair)), book()).limit("wash.bath_temp")

    for unit, value in (("°C", row["celsius"]), ("°F", row["fahrenheit"])):
        at = Quantity.parse(f"{value} {unit}")
        beyond = Quantity.parse(f"{value}.1 {unit}")
        assert limit.stand(at) is Standing.WITHIN
        assert limit.stand(beyond) is Standing.BEYOND


@pytest.mark.parametrize("row", SYMBOLS[2:], ids=lambda row: f"{row['dots']} dots")
def test_more_than_two_dots_do_not_go_beyond_the_edition(row: dict[str, str]) -> None:
    """A label that permits 50 °C and more is shown, and 40 °C counts.

    Source: NFPA 1851 as read in trade articles; high.
    """
    label = CareText(wash_temp=at_most(f"{row['celsius']} °C"))

    resolved = terms(piece(care=label), US_2020)

    assert stands(resolved, "wash.bath_temp", f"{row['celsius']} °C") is Standing.BEYOND
    assert "gear.terms.looser" in {note.message for note in resolved.notes}


# Source: common practice, no published source; masses from memory (typical US ranges).
TYPICAL_LB = [("coat-shell", 3.5, 5), ("coat-liner", 2.5, 4), ("trouser-shell", 3, 4),
              ("trouser-liner", 2, 3), ("hood", 0.2, 0.3), ("suspenders", 0.5, 0.8),
              ("gloves", 0.6, 1.0), ("boots-leather", 5, 8), ("boots-rubber", 6, 9)]  # fmt: skip


@pytest.mark.parametrize(("kind", "lightest", "heaviest"), TYPICAL_LB)
def test_typical_masses(kind: str, lightest: float, heaviest: float) -> None:
    """The catalogue's ranges are the ones remembered, to a tenth of a pound."""
    mass = find_kind(piece(kind).kind).mass

    assert mass is not None
    assert [float(value.to("lb")) for value in mass] == pytest.approx(
        [lightest, heaviest], abs=0.05
    )


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)
def test_the_catalogue_and_the_file_of_common_practice_agree(kind: Kind) -> None:
    """Where everybody else is silent both say the same. Common practice, no published source."""
    assert terms(piece(kind.id), US_2020).method.wash is kind.usual_wash
