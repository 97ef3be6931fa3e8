"""Sends the forms of the year as somebody fills them in."""

import re

from django.test import Client
from tests.web.pages import read, send

# As the record names the officer of the tests.
OFFICER = "118"


def looked(html: str, but: tuple[str, ...] = ()) -> dict[str, str]:
    """Answer every point of a form with "looked, nothing", but some."""
    names = dict.fromkeys(re.findall(r'name="(p\d+)"', html), "nothing")
    return {name: answer for name, answer in names.items() if name not in but}


def inspect(client: Client, path: str, by: str, **more: str) -> tuple[str, ...]:
    """Look at every point of one piece and keep it; return what was said."""
    html = read(client, path)
    given = looked(html) | {f"t-{test}": "yes" for test in re.findall(r'name="t-([a-z]+)"', html)}
    return send(client, path, by=by, **given | more)[2]
