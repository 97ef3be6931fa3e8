"""Is each column taken for what its name says, and is a remembered reading held to the list?"""

import pytest
from tests.unit.roster.lists import read, refused, table

from sootline.core.basis import BadInputError, KindId
from sootline.core.roster import Column, Field, Mapping, suggest_columns
from sootline.core.roster.columns import place_columns, unread


@pytest.mark.parametrize(
    ("header", "field", "kind"),
    [
        ("Serial #", Field.SERIAL, ""),
        ("DOM", Field.MADE, ""),
        ("Fecha de fabricación", Field.MADE, ""),
        ("Assigned To", Field.MEMBER, ""),
        ("Coat Serial #", Field.SERIAL, "coat"),
        ("Pants DOM", Field.MADE, "pants"),
        ("Size boots", Field.SIZE, "boots"),
    ],
)
def test_a_heading_is_recognised(header: str, field: Field, kind: str) -> None:
    """English and Spanish headings, and those of one piece in a line per person."""
    assert suggest_columns([header]) == (Column(header=header, field=field, kind=kind),)


@pytest.mark.parametrize("header", ["Last cleaned", "Retirement date", "Shoe colour", "Remarks"])
def test_a_heading_that_could_mislead_is_not_taken(header: str) -> None:
    """A routine cleaning is no advanced one, and a planned date is no fact."""
    assert suggest_columns([header]) == ()


def test_columns_nobody_reads_are_listed() -> None:
    """What is left out is said, unless somebody left it out on purpose."""
    gear = table("serial|kind|Remarks|Colour")

    assert unread(gear, Mapping()) == ("Remarks", "Colour")
    assert unread(gear, Mapping(ignored=("remarks",))) == ("Colour",)
    assert read("kind|Remarks", "hood|x").findings[0].message == "roster.note.unread"


def test_a_remembered_column_that_is_gone_is_refused() -> None:
    """A list that changed its headings is not read by the old ones."""
    mapping = Mapping(columns=(Column(header="Tag", field=Field.SERIAL),))

    assert refused("serial|kind", mapping=mapping) == [("list.csv:1", "roster.mapping.absent")]


def test_a_mapping_of_another_version_or_word_is_refused() -> None:
    """Nothing is guessed of a mapping either."""
    mapping = Mapping(version=2, statuses=(("ok", "fine"),))

    assert refused("serial|kind", mapping=mapping) == [
        ("mapping", "roster.mapping.version"),
        ("mapping", "roster.mapping.status"),
    ]


def test_an_unknown_kind_in_a_mapping_is_refused() -> None:
    """What a word is said to mean must be in the catalogue."""
    mapping = Mapping(kinds=(("jacket", (KindId("coat-hull"),)), ("x", ())))

    assert refused("serial|kind", mapping=mapping) == [
        ("mapping", "roster.mapping.kind"),
        ("mapping", "roster.mapping.kind"),
    ]


def test_two_columns_for_one_thing_are_refused() -> None:
    """Only one of two serials can be meant."""
    assert refused("serial|serial no|kind", "1|2|hood") == [
        ("list.csv:1:serial no", "roster.column.twice")
    ]


def test_one_of_them_may_be_left_out() -> None:
    """Leaving one out settles it."""
    mapping = Mapping(ignored=("serial no",))

    assert len(read("serial|serial no|kind", "1|2|hood", mapping=mapping).components) == 1


def test_a_list_without_kinds_is_refused() -> None:
    """Without a kind no piece can be told from another."""
    assert refused("serial|made", "1|2020") == [("list.csv:1", "roster.column.no_kind")]


def test_a_list_of_events_without_dates_is_refused() -> None:
    """An event without a date is none."""
    assert refused("serial|event", "1|exposure") == [("list.csv:1", "roster.column.no_date")]


def test_the_departments_own_words_come_first() -> None:
    """What the officer once said of "boots" holds for the list."""
    mapping = Mapping(kinds=(("Boots", (KindId("boots-leather"),)),))

    assert read("kind", "boots", mapping=mapping).components[0].kind == "boots-leather"


def test_remembered_columns_are_used_as_they_are() -> None:
    """With columns remembered, no heading is interpreted anew."""
    mapping = Mapping(columns=(Column(header="kind", field=Field.KIND),))

    placed = place_columns(table("kind|serial"), mapping)

    assert [column.field for _, column in placed] == [Field.KIND]


def test_faults_carry_row_column_and_value() -> None:
    """Whoever mends the list finds the cell and what stands in it."""
    with pytest.raises(BadInputError) as error:
        read("serial|kind|made", "A|hood|2021-02-30")

    (fault,) = error.value.faults
    assert dict(fault.values) == {"row": "2", "column": "made", "value": "2021-02-30"}
