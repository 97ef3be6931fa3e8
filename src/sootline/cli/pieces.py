"""How are components called on a line, and how is a long line broken?"""

import textwrap
from collections.abc import Iterable

from sootline.cli.output import columns_wide, printable
from sootline.core.gear import Component
from sootline.words import name, say

_FEW = 3


def called(component: Component, lang: str) -> str:
    """Return what a component is called on the floor: its kind and its number."""
    return f"{name('kind', component.kind, lang=lang)} {printable(component.id)}"


def whose(component: Component, lang: str) -> str:
    """Return whose a component is, or that it is nobody's."""
    return printable(component.owner or say("decide.nobodys", lang=lang))


def listed(components: Iterable[Component], lang: str, *, among: Iterable[Component] = ()) -> str:
    """Return several components on one line.

    Args:
        among: all components there are; a member's whole gear is then said in one word.
    """
    given = tuple(components)
    owners = {component.owner for component in given}
    if len(given) > _FEW and len(owners) == 1:
        theirs = [component for component in among if component.owner in owners]
        if len(theirs) == len(given):
            return say("decide.everything", {"n": str(len(given))}, lang=lang)
    return ", ".join(called(component, lang) for component in given)


def wrapped(text: str, *, indent: int = 2) -> list[str]:
    """Break a line at the terminal's width, with later lines further in."""
    return textwrap.wrap(
        text,
        columns_wide(),
        initial_indent=" " * indent,
        subsequent_indent=" " * (indent + 4),
        break_long_words=False,
        break_on_hyphens=False,
    )
