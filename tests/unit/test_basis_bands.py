"""Whether a figure with its interval reads, orders and spreads as it should."""

import pytest

from sootline.core.basis import Assumption, Assumptions, Band, Confidence, UnreadableValueError
from sootline.core.basis.bands import EDGE
from sootline.files.practice_tables import load_assumptions


@pytest.mark.parametrize(
    ("text", "ends"), [("0.55", (0.55, 0.55, 0.55)), ("0.35-0.55-0.80", (0.35, 0.55, 0.8))]
)
def test_a_band_is_read(text: str, ends: tuple[float, float, float]) -> None:
    """A single figure is certain."""
    band = Band.parse(text)

    assert (band.low, band.likely, band.high) == ends


@pytest.mark.parametrize("text", ["", "a", "1-2", "-1", "1-2-3-4"])
def test_an_unreadable_band_is_refused(text: str) -> None:
    """Neither form."""
    with pytest.raises(UnreadableValueError, match=r"basis\.band\.unreadable"):
        Band.parse(text)


@pytest.mark.parametrize("text", ["0", "3-2-1", "1-3-2", "0-1-2"])
def test_a_band_is_positive_and_in_order(text: str) -> None:
    """Low, likely, high, and above zero."""
    with pytest.raises(UnreadableValueError, match=r"basis\.band\.order"):
        Band.parse(text)


def test_the_edges_are_at_their_deviations() -> None:
    """One in twenty lies beyond each, on a ratio scale."""
    band = Band(low=0.5, likely=1.0, high=4.0)

    assert band.at(0.0) == 1.0
    assert band.at(-EDGE) == pytest.approx(0.5)
    assert band.at(EDGE) == pytest.approx(4.0)
    assert band.at(EDGE / 2) == pytest.approx(2.0)


def test_a_band_scales_and_reads_back() -> None:
    """Times a certain factor; its text is its form in a document."""
    assert str(Band.parse("1-2-4").scaled(2.0)) == "2-4-8"
    assert Band.parse(str(Band.exactly(0.55))) == Band.exactly(0.55)


def test_an_assumption_is_found_by_name_and_cited() -> None:
    """A name the table does not hold is our own mistake."""
    one = Assumption(
        id="dry.x", band=Band.exactly(1.0), unit="1", source="invented for a test",
        confidence=Confidence.STATED,
    )  # fmt: skip
    table = Assumptions(assumption=(one,))

    assert table.row("dry.x").ground.source == "invented for a test"
    with pytest.raises(KeyError):
        table.band("dry.y")


def test_every_shipped_assumption_has_a_source_and_its_own_name() -> None:
    """What is from memory says so."""
    rows = load_assumptions().assumption

    assert len({row.id for row in rows}) == len(rows)
    assert all(row.source and row.unit for row in rows)
    assert all(
        row.confidence in (Confidence.MEMORY, Confidence.LOW)
        for row in rows
        if row.source.endswith("value from memory")
    )
