"""Are sizes, masses, counts, kinds and status words read as departments write them?"""

import pytest

from sootline.core.basis import UnreadableValueError
from sootline.core.gear.catalogue import KINDS
from sootline.core.gear.kinds import Element
from sootline.core.gear.state import Custody, Life
from sootline.core.roster.cells import read_count, read_mass, read_measure, read_size
from sootline.core.roster.events import EventKind, read_event
from sootline.core.roster.kinds import KIND_WORDS, read_kinds
from sootline.core.roster.statuses import read_status


@pytest.mark.parametrize(
    ("typed", "element", "dimensions"),
    [
        ("44", Element.COAT, {"chest": "44"}),
        ("44R", Element.COAT, {"chest": "44", "cut": "R"}),
        ("44-32-35", Element.COAT, {"chest": "44", "length": "32", "sleeve": "35"}),
        ("40x30", Element.TROUSERS, {"waist": "40", "inseam": "30"}),
        ("38 / 32 long", Element.TROUSERS, {"waist": "38", "inseam": "32", "cut": "LONG"}),
        ("xl", Element.COAT, {"letter": "XL"}),
        ("XXL", Element.GLOVES, {"hand": "XXL"}),
        ("76W", Element.GLOVES, {"hand": "76W"}),
        ("10.5 W", Element.BOOTS, {"foot": "10.5", "width": "W"}),
        ("11", Element.BOOTS, {"foot": "11"}),
        ("one size", Element.HOOD, {"size": "one size"}),
    ],
)
def test_a_size_is_read_by_the_kind_of_piece(
    typed: str, element: Element, dimensions: dict[str, str]
) -> None:
    """Chest and waist, hand and foot; what each number means depends on the garment."""
    assert dict(read_size(typed, element)) == dimensions


@pytest.mark.parametrize(
    ("typed", "element"),
    [
        ("44 special", Element.COAT),
        ("00", Element.TROUSERS),
        ("big", Element.TROUSERS),
        ("ten", Element.BOOTS),
        ("0", Element.BOOTS),
        ("L/XL?", Element.GLOVES),
    ],
)
def test_no_size_is_refused(typed: str, element: Element) -> None:
    """A size nobody can match against a wearer is refused."""
    with pytest.raises(UnreadableValueError, match=r"roster\.size\."):
        read_size(typed, element)


@pytest.mark.parametrize("typed", ["46", "34.5", "XL", "R"])
def test_a_measure_is_kept_as_typed(typed: str) -> None:
    """One dimension: a number or letters."""
    assert read_measure(typed) == typed


@pytest.mark.parametrize("typed", ["0", "-1", "4 6", "NaN!", "1e3"])
def test_no_measure_is_refused(typed: str) -> None:
    """Nothing measures nought or less."""
    with pytest.raises(UnreadableValueError):
        read_measure(typed)


def test_a_count_is_read() -> None:
    """A whole number of washes."""
    assert read_count("12") == 12


@pytest.mark.parametrize(
    "typed", ["-1", "NaN", "1e309", "9223372036854775808", "1.5", "١٢", "10001"]
)
def test_no_count_is_refused(typed: str) -> None:
    """Negative, endless, huge, broken and foreign digits are no counts."""
    with pytest.raises(UnreadableValueError, match=r"roster\.count\.unreadable"):
        read_count(typed)


@pytest.mark.parametrize(
    ("typed", "header", "meant"),
    [
        ("3.5 lb", "weight", "3.5 lb"),
        ("3.5", "Weight (lbs)", "3.5 lb"),
        ("1600 g", "mass", "1600 g"),
    ],
)
def test_a_mass_takes_its_unit_from_cell_or_heading(typed: str, header: str, meant: str) -> None:
    """A bare number counts in the heading's unit."""
    assert str(read_mass(typed, header)) == meant


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("3.5", "no_unit"),
        ("heavy", "unreadable"),
        ("0 lb", "impossible"),
        ("100 kg", "impossible"),
        ("3 h", "impossible"),
    ],
)
def test_no_mass_is_refused(typed: str, why: str) -> None:
    """Without a unit, without a number, or beyond what a person wears."""
    with pytest.raises(UnreadableValueError) as refused:
        read_mass(typed, "weight")

    assert refused.value.message == f"roster.mass.{why}"


@pytest.mark.parametrize(
    ("typed", "kinds"),
    [
        ("Coat", ("coat-shell", "coat-liner")),
        ("coat shell", ("coat-shell",)),
        ("Bunker Pants", ("trouser-shell", "trouser-liner")),
        ("PANTALÓN", ("trouser-shell", "trouser-liner")),
        ("monja", ("hood",)),
        ("rubber boots", ("boots-rubber",)),
        ("casco", ("helmet-shell", "helmet-padding", "ear-neck-cover")),
    ],
)
def test_a_word_names_its_kinds(typed: str, kinds: tuple[str, ...]) -> None:
    """A whole coat is shell and liner; a helmet has its soft parts."""
    assert read_kinds(typed, {}) == kinds


@pytest.mark.parametrize(
    ("typed", "why"),
    [("boots", "several"), ("liner", "several"), ("cot", "near"), ("zzz", "unknown")],
)
def test_no_kind_is_refused(typed: str, why: str) -> None:
    """Leather and rubber are washed differently: a bare "boots" must be settled."""
    with pytest.raises(UnreadableValueError) as refused:
        read_kinds(typed, {})

    assert refused.value.message == f"roster.kind.{why}"


def test_every_kind_of_the_catalogue_has_a_word() -> None:
    """Each kind can be written into a list, and no word names a kind that is not."""
    named = {kind for kinds in KIND_WORDS.values() for kind in kinds}

    assert named == {kind.id for kind in KINDS}


def test_a_status_says_life_and_place() -> None:
    """The words of the wall board."""
    assert read_status("Retired", {}).life is Life.RETIRED
    assert read_status("perdido", {}).custody is Custody.NOT_SEEN
    assert read_status("OOS", {}).hold
    assert read_status("okey", {"okey": "in service"}).life is Life.IN_SERVICE


@pytest.mark.parametrize("typed", ["retird", "purple"])
def test_no_status_is_refused(typed: str) -> None:
    """An unknown word is not taken for "in use"."""
    with pytest.raises(UnreadableValueError, match=r"roster\.status\.unknown"):
        read_status(typed, {})


def test_a_bare_cleaning_is_no_advanced_one() -> None:
    """Unknown lowers nothing: only what says advanced counts as advanced."""
    assert read_event("cleaning") is EventKind.CLEANING
    assert read_event("advanced cleaning") is EventKind.ADVANCED_CLEANING


@pytest.mark.parametrize("typed", ["repare", "purple"])
def test_no_event_is_refused(typed: str) -> None:
    """A word for nothing that is done with gear."""
    with pytest.raises(UnreadableValueError, match=r"roster\.event\.unknown"):
        read_event(typed)
