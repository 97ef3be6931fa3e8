"""How does a person hold a printed anchor against a screen, or read it over the radio?

Four short words that can be spoken stand for the first 64 bits of an anchor's root. They show any
change that happens by itself and make one by intent hard; the whole anchor shows every change.

Source: the sixteen-bit words of consonants and vowels in turn follow the open proposal
arXiv:0901.4016 (confidence high: the published example 127.0.0.1 is in the tests).
"""

from collections.abc import Iterable

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.ledger.merkle import Frontier

_CONSONANTS, _VOWELS = "bdfghjklmnprstvz", "aiou"
# From the highest bit of sixteen: how far to shift, and which letters the bits choose.
_LETTERS = (
    (12, _CONSONANTS), (10, _VOWELS), (6, _CONSONANTS), (4, _VOWELS), (0, _CONSONANTS),
)  # fmt: skip
_WORDS = 4


def check_words(digest: str) -> str:
    """Return the words for the beginning of a hash ("lusab-babad-gutih-tugad").

    Args:
        digest: hexadecimal, sixteen signs or more.
    """
    parts = (int(digest[at : at + 4], 16) for at in range(0, _WORDS * 4, 4))
    return "-".join(_word(part) for part in parts)


def read_printed(text: str) -> tuple[int, str]:
    """Read what stands in the foot of a sheet: how many entries, and the words ("418:lusab-...").

    Raises:
        BadInputError: it is no such text.
    """
    count, _, words = text.strip().partition(":")
    spoken = words.strip().lower()
    if not count.isdecimal() or int(count) < 1 or not _spoken(spoken):
        values = (("text", text),)
        fault = Fault(place="printed", message=MessageId("ledger.printed.unreadable"),
                      values=values)  # fmt: skip
        raise BadInputError([fault])
    return int(count), spoken


def words_at(hashes: Iterable[str], n: int) -> str | None:
    """Return the words a record had when it had so many entries; None if it never had.

    Args:
        hashes: of its entries, in order.
    """
    frontier = Frontier()
    for digest in hashes:
        frontier.add(bytes.fromhex(digest))
        if frontier.size == n:
            return check_words(frontier.root().hex())
    return None


def _word(part: int) -> str:
    return "".join(letters[part >> shift & len(letters) - 1] for shift, letters in _LETTERS)


def _spoken(words: str) -> bool:
    parts = words.split("-")
    return len(parts) == _WORDS and all(
        len(part) == len(_LETTERS)
        and all(sign in letters for sign, (_, letters) in zip(part, _LETTERS, strict=True))
        for part in parts
    )
