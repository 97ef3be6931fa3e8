"""Words that can be spoken stand for the beginning of a hash."""

import pytest

from sootline.core.basis import BadInputError
from sootline.core.ledger.check_words import check_words, read_printed, words_at


def test_the_words_of_the_published_examples() -> None:
    """Addresses and their words as the proposal lists them.

    Source: arXiv:0901.4016, table of examples (127.0.0.1, 63.84.220.193, 63.118.7.35,
    140.98.193.141); confidence high.
    """
    assert check_words("7f0000013f54dcc1") == "lusab-babad-gutih-tugad"
    assert check_words("3f7607238c62c18d") == "gutuk-bisog-mudof-sakat"


def test_what_is_printed_is_read_as_typed() -> None:
    """Capitals and spaces around do not matter."""
    assert read_printed(" 418: LUSAB-babad-gutih-tugad ") == (418, "lusab-babad-gutih-tugad")


@pytest.mark.parametrize(
    "text",
    ["", "418", "0:lusab-babad-gutih-tugad", "x:lusab-babad-gutih-tugad", "418:lusab-babad-gutih",
     "418:lusab-babad-gutih-tugab-x", "418:lusax-babad-gutih-tugad", "418:lusab-babad-gutih-tuga",
     "418:usabl-babad-gutih-tugad"],
)  # fmt: skip
def test_anything_else_is_refused(text: str) -> None:
    """A slip of the pen is said, not compared."""
    with pytest.raises(BadInputError):
        read_printed(text)


def test_the_words_of_a_record_of_one_entry_are_its_hash() -> None:
    """The root over one entry is that entry's hash; a length it never had has no words.

    Source: RFC 9162, section 2.1.1 (the hash of a tree of one leaf); confidence high.
    """
    digest = "7f0000013f54dcc1" + "0" * 48

    assert words_at([digest, digest], 1) == "lusab-babad-gutih-tugad"
    assert words_at([digest, digest], 3) is None
