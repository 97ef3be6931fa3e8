"""How is a message said in a language?

A text names its values in braces. `{limit}` puts the value in as it was given. A value that is
itself an id is called by its name in the reader's language: `{worn:kind}` looks up
"name.kind.<value>", and `{kind}` alone means `{kind:kind}`. A value that has no name there stays
as it is, so members' codes, amounts and dates need no marker. Ids listed with commas
("coat-shell, hood") are named one by one. A value that is a message id itself is said:
`{point:message}`; a place on an outline there is named, somebody's own words stay as they are. A
value called `n` chooses the plural form.
"""

import re
from collections.abc import Iterable, Mapping

from sootline.words.catalogues import FIRST_LANGUAGE, text_of

PLACEHOLDER = re.compile(r"\{([a-z][a-z0-9_]*)(?::([a-z_]+))?\}", re.ASCII)
_MESSAGE = re.compile(r"[a-z_]+(?:\.[a-z0-9_-]+)+", re.ASCII)
_MANY = 2


def say(
    message_id: str,
    values: Mapping[str, str] | Iterable[tuple[str, str]] = (),
    *,
    lang: str = FIRST_LANGUAGE,
) -> str:
    """Return the sentence of a message, with its values put in.

    Never raises for want of words: a message without text is shown as its id and its values, and
    a value the text names but nobody gave as `[name?]`.

    Args:
        values: what the sentence names, as a mapping or as (name, text) pairs.
        lang: the reader's language ("en", "es", "fr_CA"); what it lacks is said in English.
    """
    given = dict(values)
    text = text_of(message_id, lang, _count(given.get("n")))
    if text is None:
        listed = "; ".join(f"{key} = {value}" for key, value in given.items())
        return f"[{message_id}] {listed}".rstrip()
    return PLACEHOLDER.sub(lambda match: _value(match, given, lang), text)


def name(category: str, identity: str, *, lang: str = FIRST_LANGUAGE) -> str:
    """Return what a person calls an id ("kind", "coat-shell"), or the id where it has no name."""
    return text_of(f"name.{category}.{identity}", lang) or identity


def _value(match: re.Match[str], given: Mapping[str, str], lang: str) -> str:
    """Return the text that takes a placeholder's place, capitalised at a sentence's start."""
    key, category = match[1], match[2] or match[1]
    if key not in given:
        return f"[{key}?]"
    value = str(given[key])
    if category == "message":
        return ", ".join(
            say(part, lang=lang) if _MESSAGE.fullmatch(part) else name("spot", part, lang=lang)
            for part in value.split(", ")
        )
    called = name(category, value, lang=lang)
    if called == value:
        called = ", ".join(name(category, part, lang=lang) for part in value.split(", "))
    starts_sentence = match.start() == 0 and called != value
    return called[:1].upper() + called[1:] if starts_sentence else called


def _count(number: str | None) -> int | None:
    """Return the number that chooses the plural; one that is no whole number counts as many."""
    if number is None:
        return None
    text = str(number).strip()
    return int(text) if text.isdecimal() and len(text) < 10 else _MANY
