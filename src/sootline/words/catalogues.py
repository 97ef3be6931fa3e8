"""Which text does a message id have in a language?

One gettext catalogue per first part of the message ids ("care.hold.powder" is looked up in
"care"). English is a catalogue like any other; whatever another language lacks is read from it.
A catalogue is opened when the first of its messages is asked for.
"""

import re
from functools import cache
from gettext import GNUTranslations
from pathlib import Path

LOCALE = Path(__file__).parent / "locale"
FIRST_LANGUAGE = "en"
_DOMAIN = re.compile(r"[a-z][a-z0-9_]*", re.ASCII)
_LANGUAGE = re.compile(r"[a-z]{2,3}(_[A-Z]{2})?", re.ASCII)


def languages() -> tuple[str, ...]:
    """Return the languages that have catalogues, English first."""
    found = {folder.name for folder in LOCALE.iterdir() if _LANGUAGE.fullmatch(folder.name)}
    return (FIRST_LANGUAGE, *sorted(found - {FIRST_LANGUAGE}))


def text_of(message_id: str, lang: str, count: int | None = None) -> str | None:
    """Return the text with its placeholders, or None when no catalogue has it.

    Args:
        lang: a language, with or without its country ("es", "es_MX").
        count: chooses among the plural forms of a message that has them.
    """
    for language in dict.fromkeys((lang, lang.partition("_")[0], FIRST_LANGUAGE)):
        catalogue = _catalogue(message_id.partition(".")[0], language)
        text = _text_in(catalogue, message_id, count) if catalogue else message_id
        if text != message_id:
            return text
    return None


def _text_in(catalogue: GNUTranslations, message_id: str, count: int | None) -> str:
    """Look up one catalogue; gettext answers with the id itself when it has no text."""
    if count is not None:
        text = catalogue.ngettext(message_id, message_id, count)
        if text != message_id:
            return text
    return catalogue.gettext(message_id)


@cache
def _catalogue(domain: str, lang: str) -> GNUTranslations | None:
    """Open a catalogue; an absent or damaged one is no reason to stop at 03:30."""
    if not _DOMAIN.fullmatch(domain) or not _LANGUAGE.fullmatch(lang):
        return None
    try:
        with (LOCALE / lang / "LC_MESSAGES" / f"{domain}.mo").open("rb") as file:
            return GNUTranslations(file)
    except OSError:
        return None
