"""Does a text claim what this program must never claim of a piece, a person or a place?

The lists are data: `never_say.toml` has the claims of each language as word patterns, and the
phrases in which such a word claims nothing, each with its reason. A hit counts unless it lies
wholly inside an excepted phrase, so "advanced cleaning left it clean" is still found.
"""

import re
import tomllib
import unicodedata
from dataclasses import dataclass
from functools import cache
from pathlib import Path

LISTS = Path(__file__).with_name("never_say.toml")
_INVISIBLE = re.compile("[\u00ad\u200b-\u200d\u2060\ufeff]")
_MARKUP = str.maketrans({"*": "", "`": "", "~": "", "_": " ", "’": "'"})


@dataclass(frozen=True, kw_only=True)
class Claim:
    """A claim found in a text.

    Args:
        words: as they stand in the text.
        around: the words before and after, to find the place by.
    """

    words: str
    around: str


@dataclass(frozen=True, kw_only=True)
class Exemption:
    """A phrase in which a listed word claims nothing, and why."""

    phrase: str
    reason: str


def find_claims(text: str, lang: str) -> tuple[Claim, ...]:
    """Return every claim in a text of a language, in reading order.

    Raises:
        KeyError: no list of claims exists for the language.
    """
    plain = _plain(text)
    claims, excepted = _patterns(lang)
    free = [match.span() for match in excepted.finditer(plain)]
    return tuple(
        Claim(words=match[0], around=plain[max(0, match.start() - 30) : match.end() + 30])
        for match in claims.finditer(plain)
        if not any(start <= match.start() and match.end() <= end for start, end in free)
    )


def exemptions(lang: str) -> tuple[Exemption, ...]:
    """Return the excepted phrases of a language with their reasons.

    Raises:
        KeyError: no list exists for the language.
    """
    listed = _lists()[lang]["except"]
    return tuple(Exemption(phrase=entry["phrase"], reason=entry["reason"]) for entry in listed)


def listed_languages() -> tuple[str, ...]:
    """Return the languages that have a list of claims."""
    return tuple(_lists())


def _plain(text: str) -> str:
    """Return a text without what could hide a word: markup, invisible signs, line breaks."""
    composed = unicodedata.normalize("NFC", _INVISIBLE.sub("", text))
    return " ".join(composed.translate(_MARKUP).casefold().split())


@cache
def _lists() -> dict[str, dict[str, list[dict[str, str]]]]:
    return tomllib.loads(LISTS.read_text(encoding="utf-8"))


@cache
def _patterns(lang: str) -> tuple[re.Pattern[str], re.Pattern[str]]:
    claims = "|".join(entry["words"] for entry in _lists()[lang]["claim"])
    phrases = "|".join(re.escape(_plain(entry.phrase)) for entry in exemptions(lang))
    return re.compile(rf"\b(?:{claims})\b"), re.compile(rf"\b(?:{phrases})(?!\w)")
