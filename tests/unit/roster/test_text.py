"""Is a text kept as typed, and recognised when it is written another way?"""

import pytest

from sootline.core.basis import UnreadableValueError
from sootline.core.roster.text import folded, has_unseen, kept, marked, skeleton, unmarked


@pytest.mark.parametrize(
    "typed", ["'); DROP TABLE gear;--", "../../etc/passwd", "C:\\x", "=1+1", "＝1+1", "|calc", "é"]
)
def test_a_text_is_only_text(typed: str) -> None:
    """What looks like a command, a path or a formula is kept letter by letter."""
    assert kept(typed) == typed


def test_a_text_is_composed_and_bared_of_spaces() -> None:
    """Composed and decomposed letters become one; spaces around go."""
    assert kept(" Cafe\u0301-1\u00a0") == "Caf\u00e9-1"


def test_unseen_characters_are_taken_out() -> None:
    """Nobody can type a zero-width space, so none is kept."""
    assert has_unseen("SN-10\u200b")
    assert kept("SN-10\u200b") == "SN-10"


@pytest.mark.parametrize(
    "typed", ["SN-\u202e01", "SN-\a", "\x1b[31m", "a\tb", "\rx", "\u2066x", "\ue000", "a\u2028b"]
)
def test_what_steers_is_refused(typed: str) -> None:
    """Control characters and those that turn the reading direction are no text."""
    with pytest.raises(UnreadableValueError) as refused:
        kept(typed)

    assert refused.value.message == "roster.text.control"


def test_a_lost_character_is_refused() -> None:
    """The mark of an earlier loss tells that the serial is not what the label says."""
    with pytest.raises(UnreadableValueError) as refused:
        kept("SN-\ufffd1")

    assert refused.value.message == "roster.text.damaged"


@pytest.mark.parametrize(
    "other",
    ["sn-10", " SN-10 ", "SN\u201110", "\u0405N-10", "SN-\uff110", "SN-10\u200b", "SN 10", "SN-1O"],
)
def test_look_alikes_have_one_skeleton(other: str) -> None:
    """Case, dash, width, Cyrillic letters, unseen characters and O for 0 look the same.

    Source: Unicode Technical Standard 39 (confusable characters), a few pairs from memory.
    """
    assert skeleton(other) == skeleton("SN-10")


def test_other_serials_have_other_skeletons() -> None:
    """One digit apart is apart."""
    assert skeleton("SN-10") != skeleton("SN-11")


def test_words_are_folded() -> None:
    """Case, accents and signs make no difference to a heading."""
    assert folded(" Fecha de  Fabricación: ") == "fecha de fabricacion"


@pytest.mark.parametrize("typed", ["=1", "+1", "-2", "@x", "\t=1", "＝1", "'=1", "  =1", "|x"])
def test_formulas_are_marked_and_unmarked(typed: str) -> None:
    """A cell that could run gets its mark, and reading takes off just that."""
    assert marked(typed) == f"'{typed}"
    assert unmarked(marked(typed)) == typed


@pytest.mark.parametrize("typed", ["'); DROP", "SN-1", "", "a=b"])
def test_other_texts_are_left_alone(typed: str) -> None:
    """Nothing is put before, or taken off, what no spreadsheet runs."""
    assert marked(typed) == typed == unmarked(typed)
