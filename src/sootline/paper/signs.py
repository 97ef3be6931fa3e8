"""How is a text shown on paper so that nothing in it is lost, hidden or reordered?"""

import re
import unicodedata
from functools import cache
from pathlib import Path

SIGNS = Path(__file__).with_name("fonts") / "signs.txt"
_UNUSUAL = re.compile(r"\S{24,}")
_MAY_BREAK = "\u200b"
_BLANKS = " \t\n\r\x0b\x0c\x85\xa0\u2028\u2029"


def visible(text: str) -> str:
    """Return a text with every sign it has: blanks as one kind, what cannot be drawn by its code.

    Controls, invisible signs and orders of direction become "[U+202E]", as does whatever the
    typefaces lack. A text is composed first, so that an accent stays on its letter.
    """
    return "".join(_shown(sign) for sign in unicodedata.normalize("NFC", text))


def breakable(text: str) -> str:
    """Return a text that may break within words of unusual length, which fit on no line."""
    return _UNUSUAL.sub(lambda word: _MAY_BREAK.join(word[0]), text)


def _shown(sign: str) -> str:
    if sign in _BLANKS:
        return " "
    return sign if ord(sign) in drawable() else f"[U+{ord(sign):04X}]"


@cache
def drawable() -> frozenset[int]:
    """Return the code points the sheets can draw."""
    lines = SIGNS.read_text(encoding="ascii").splitlines()
    ranges = " ".join(line for line in lines if not line.startswith("#")).split()
    bounds = (part.partition("-") for part in ranges)
    return frozenset(
        point
        for first, _, last in bounds
        for point in range(int(first, 16), int(last or first, 16) + 1)
    )
