"""Is a text from outside fit to be kept, and which other texts would a reader take it for?

A text is kept as it was typed, composed (NFC) and without spaces around it. It is never run,
never made part of a command, never used as a file's name.
"""

import re
import unicodedata
from itertools import groupby

from sootline.core.roster.unreadable import UnreadableCellError

# Invisible, and without effect on the order of the letters: taken out, and said.
UNSEEN = frozenset("\u00ad\u200b\u200c\u200d\u2060\ufeff")
_NOT_TEXT = frozenset(("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"))
_DAMAGED = "\ufffd"
_AROUND = " \u00a0\u2002\u2003\u2009\u202f\u3000"
_FORMULA = re.compile(r"'*\s*[=+\-@|＝＋－＠\t\r\n]")
_LOOK_ALIKE = str.maketrans(
    "АВЕЅІЈКМНОРСТУХԚԜΑΒΕΖΗΙΚΜΝΟΡΤΥΧOI",  # Cyrillic, Greek, Latin
    "ABES1JKMH0PCTYXQWABEZH1KMN0PTYX01",
)
_UNKNOWN = frozenset(
    (
        "", "-", "--", "?", "??", "???", "n/a", "na", "unknown", "unk", "not known", "tbd",
        "illegible", "unreadable", "not legible", "missing label", "desconocido", "desconocida",
        "sin dato", "sin datos", "s/d", "ilegible", "no legible", "no se sabe", "se desconoce",
    )
)  # fmt: skip


def kept(text: str) -> str:
    """Return a text as it is kept: composed, without the spaces around it or unseen characters.

    Raises:
        UnreadableCellError: it holds a control character, one that turns the reading direction,
            one that is no character, or the mark of an earlier loss.
    """
    if text.isascii() and text.isprintable():
        return text.strip(_AROUND)
    composed = unicodedata.normalize("NFC", text)
    visible = "".join(sign for sign in composed if sign not in UNSEEN).strip(_AROUND)
    for sign in visible:
        if sign == _DAMAGED:
            raise UnreadableCellError("roster.text.damaged")
        if unicodedata.category(sign) in _NOT_TEXT:
            raise UnreadableCellError("roster.text.control", sign=f"U+{ord(sign):04X}")
    return visible


def has_unseen(text: str) -> bool:
    """Whether a text holds characters that nobody can see or type."""
    return not text.isascii() and not UNSEEN.isdisjoint(text)


def is_unknown(text: str) -> bool:
    """Whether a cell says that nobody knows, in English or Spanish, or says nothing."""
    return text.casefold() in _UNKNOWN


def skeleton(text: str) -> str:
    """Return what a tired reader sees: equal for texts that are easily taken for each other.

    Case, width, unseen characters, kinds of dash and space, Cyrillic and Greek look-alikes of
    Latin capitals, and O for 0 or I for 1 make no difference.
    """
    plain = unicodedata.normalize("NFKC", text).upper()
    shown = "".join(sign for sign in plain if unicodedata.category(sign) not in _NOT_TEXT)
    joined = ("-" if apart else "".join(signs) for apart, signs in groupby(shown, key=_sets_apart))
    return "".join(joined).translate(_LOOK_ALIKE).strip("-")


def folded(text: str) -> str:
    """Return a word for looking up: lower case, without accents, one space between parts."""
    plain = unicodedata.normalize("NFKD", text.casefold())
    bare = (sign for sign in plain if not unicodedata.combining(sign))
    return " ".join("".join(sign if sign.isalnum() else " " for sign in bare).split())


def marked(text: str) -> str:
    """Return a text that no spreadsheet takes for a formula: with a ' before it, if it could."""
    return f"'{text}" if _FORMULA.match(text) else text


def unmarked(text: str) -> str:
    """Take off the mark that `marked` puts before a text."""
    return text[1:] if text.startswith("'") and _FORMULA.match(text, 1) else text


def _sets_apart(sign: str) -> bool:
    return sign in "_./\u2212" or sign.isspace() or unicodedata.category(sign) == "Pd"
