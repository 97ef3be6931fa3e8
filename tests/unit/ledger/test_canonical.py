"""Canonical JSON: what is refused, where, and how texts enter."""

import pytest

from sootline.core.basis import BadInputError
from sootline.core.ledger import canonical, entered, read_canonical
from sootline.core.ledger.canonical import LARGEST, read_strictly

SPLIT = "e\u0301"


def refusals(value: object) -> list[tuple[str, str]]:
    """Return place and message of every fault."""
    with pytest.raises(BadInputError) as error:
        canonical(value)
    return [(fault.place, fault.message.rpartition(".")[2]) for fault in error.value.faults]


def test_everything_outside_the_subset_is_listed_by_place() -> None:
    """All faults at once, each where a reader finds it."""
    value = {"a": [1.5, {"b": LARGEST + 1}], "c": "\ud800", 7: b"x", "\udfff": None}
    assert refusals(value) == [
        ("document.a[0]", "fraction"),
        ("document.a[1].b", "large"),
        ("document.c", "half_character"),
        ("document", "name"),
        ("document.7", "kind"),
        ("document", "half_character"),
    ]


@pytest.mark.parametrize("value", [float("nan"), float("inf"), -0.0])
def test_no_number_is_without_end(value: float) -> None:
    """NaN, infinity and a negative zero have no canonical text."""
    assert refusals({"n": value}) == [("document.n", "fraction")]


def test_the_largest_whole_number_is_written() -> None:
    """Up to 2^53 - 1 every program reads the same number."""
    assert canonical([LARGEST, -LARGEST, 0, True, None]) == f"[{LARGEST},-{LARGEST},0,true,null]"


def test_nesting_has_a_limit() -> None:
    """A thousand brackets are no entry."""
    deep: object = "x"
    for _ in range(60):
        deep = [deep]
    assert [message for _, message in refusals(deep)] == ["depth"]


def test_texts_and_names_enter_composed() -> None:
    """An accent typed as two signs is the same accent."""
    assert entered({SPLIT: [SPLIT, 1, None, True]}) == {"\u00e9": ["\u00e9", 1, None, True]}


def test_two_spellings_of_one_name_are_refused() -> None:
    """Which of the two would count?"""
    with pytest.raises(BadInputError) as error:
        entered({"x": [{SPLIT: 1, "\u00e9": 2}]})
    assert [fault.place for fault in error.value.faults] == ["document.x[0]"]


def test_what_has_no_canonical_form_does_not_enter() -> None:
    """A fraction is refused before it is stored."""
    with pytest.raises(BadInputError):
        entered({"kg": 7.2})


@pytest.mark.parametrize(
    "text", ["", "{", '{"a":1,"a":2}', '{"b":1,"a":2}', '{ "a":1}', '{"a":1.0}', "[" * 5000]
)
def test_only_the_one_text_of_a_document_is_read(text: str) -> None:
    """Doubled names, other orders and spaces are somebody else's writing."""
    with pytest.raises(BadInputError):
        read_canonical(text)


@pytest.mark.parametrize(
    "text", ["", "{", "[]", '{"a":1,"a":2}', '{"b":1,"a":2}', '{"a": 1}', '{"a":1.0}',
             '{"a":NaN}', "[" * 100_000]
)  # fmt: skip
def test_the_strict_reader_reads_no_other_text(text: str) -> None:
    """A header that two programs could read in two ways is damage."""
    assert read_strictly(text) is None


def test_the_strict_reader_reads_objects() -> None:
    """What was written comes back."""
    assert read_strictly('{"a":{"b":[1,"\u00e9"]}}') == {"a": {"b": [1, "\u00e9"]}}
