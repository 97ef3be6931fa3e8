"""How does a template say a message, name an id, tell a finding, or show a sign?"""

from functools import cache, lru_cache
from typing import Any, Protocol

from django import template
from django.template.context import Context
from django.templatetags.static import static
from django.urls import reverse
from django.utils.html import format_html
from django.utils.safestring import SafeString, mark_safe

from sootline import words
from sootline.paper.engine import PICTURES
from sootline.paper.pictures import Picture

register = template.Library()


class Sayable(Protocol):
    """Anything that is a message with its values."""

    @property
    def message(self) -> str:
        """Which message."""
        ...

    @property
    def values(self) -> tuple[tuple[str, str], ...]:
        """What its sentence names."""
        ...


def _lang(context: Context) -> str:
    return str(context.get("lang", "en"))


@register.simple_tag(takes_context=True)
def say(context: Context, message: str, **values: Any) -> str:  # noqa: ANN401
    """Say a message of the catalogues."""
    given = {key: str(value) for key, value in values.items()}
    return words.say(message, given, lang=_lang(context))


@register.simple_tag(takes_context=True)
def name(context: Context, category: str, identity: object) -> str:
    """Name an id in the reader's language."""
    return words.name(category, str(identity), lang=_lang(context))


@register.simple_tag(takes_context=True)
def tell(context: Context, said: Sayable) -> str:
    """Say a finding, a fault or anything else that is a message with values."""
    return words.say(said.message, said.values, lang=_lang(context))


@register.simple_tag
def icon(sign: str, *, big: bool = False) -> SafeString:
    """Show a sign; its word always stands beside it."""
    return _icon(sign, big=big)


@cache
def _icon(sign: str, *, big: bool) -> SafeString:
    return format_html(
        '<svg class="icon{}" aria-hidden="true"><use href="{}#{}"/></svg>',
        " icon--big" if big else "",
        static("icons.svg"),
        sign,
    )


@register.simple_tag
def at(route: str, identity: str) -> str:
    """Return the address of a person or a piece; a grid names hundreds."""
    return _address(route, str(identity))


@lru_cache(maxsize=20_000)
def _address(route: str, identity: str) -> str:
    return reverse(route, args=(identity,))


@register.simple_tag
def picture(step: str) -> SafeString:
    """Show the line picture of a step, or nothing where there is none."""
    return mark_safe(_picture(step.rpartition(".")[2]))  # noqa: S308  # our own drawing


@cache
def _picture(drawing: str) -> str:
    if not Picture(name=drawing).drawn:
        return ""
    text = (PICTURES / f"{drawing}.svg").read_text(encoding="utf-8")
    return text.replace("<svg ", '<svg class="picture" aria-hidden="true" ', 1)


@register.simple_tag
def css(*files: str) -> SafeString:
    """Link style sheets."""
    return mark_safe(  # noqa: S308  # names of our own files
        "".join(f'<link rel="stylesheet" href="{static(f"css/{file}.css")}">' for file in files)
    )
