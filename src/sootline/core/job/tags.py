"""Is a scanned text one of our tags, and of which component?

A tag is the component's id and nothing else: letters and digits in groups, one "-", "." or "/"
between two of them. Whatever else a scanner reads (a web address, a network, a maker's bar code
with other signs) is no tag: it may be shown as text, and nothing is opened or done by it.
"""

import re

from sootline.core.basis import ComponentId

LONGEST_TAG = 32
_TAG = re.compile(r"[A-Za-z0-9]+(?:[-./][A-Za-z0-9]+)*", re.ASCII)


def read_tag(text: str) -> ComponentId | None:
    """Return the component a scanned text names, or None when the text is no tag.

    Nothing is trimmed or mended: a reader that ends its text with a line break must take that off
    itself, and a text with anything more in it stays a text.
    """
    if len(text) > LONGEST_TAG or not _TAG.fullmatch(text):
        return None
    return ComponentId(text)


def tag_of(component: ComponentId) -> str | None:
    """Return the text of a component's tag, or None when its id does not make one."""
    return component if read_tag(component) else None
