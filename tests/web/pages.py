"""Which pages are there to look at in the demonstration, and how is a form sent?"""

import re
from html.parser import HTMLParser
from typing import Any

from django.test import Client
from tests.web import floor_pages

PAGES = (
    *floor_pages.PAGES,
    "/", "/?crew=Engine+1", "/wall/", "/more/", "/call/", "/call/26-0311/",
    "/call/26-0311/who/218/", "/call/26-0311/hazards/", "/needs/", "/wash/", "/wash/load/1/",
    "/wash/load/4/", "/wash/drying/", "/wash/machines/", "/wash/costs/", "/pieces/0473/soil/",
    "/wash/machines/?diameter=36+in&limit=100+G&speed=440", "/check/", "/check/piece/0402/",
    "/pieces/", "/pieces/?q=liner", "/pieces/0473/",
    "/people/", "/people/219/", "/due/", "/due/?all=1",
    "/handover/", "/paper/",
    "/rules/", "/rules/compare/?with=nfpa-1850/2026", "/history/",
    "/between/", "/inspect/", "/inspect/day/", "/inspect/day/advanced/2026-03-11/",
    "/inspect/routine/0533/", "/inspect/advanced/0534/", "/inspect/liner/0534/", "/repairs/",
    "/repairs/0509/", "/repairs/0461/", "/contractor/", "/contractor/send/", "/contractor/26-01/",
    "/contractor/25-07/", "/contractor/25-07/invoice/", "/recalls/",
    "/inspect/day/advanced/2026-03-11/typed/",
    "/recalls/new/", "/recalls/26-02/", "/recalls/26-02/?others=1", "/due/today/", "/due/month/",
    "/stores/", "/fit/", "/fit/226/",
)  # fmt: skip
_SAID = re.compile(r'<div class="said" role="status"><p>(.*?)</p>', re.DOTALL)


class _Text(HTMLParser):
    """Collects what a reader reads."""

    def __init__(self, *, cited: bool) -> None:
        super().__init__()
        self.parts: list[str] = []
        self._cited = cited
        self._within = False

    def handle_starttag(self, tag: str, attrs: object) -> None:  # noqa: ARG002
        """Enter a citation."""
        self._within = self._within or tag == "cite"

    def handle_endtag(self, tag: str) -> None:
        """Leave a citation."""
        self._within = self._within and tag != "cite"

    def handle_data(self, data: str) -> None:
        """Keep a stretch of text."""
        if self._cited or not self._within:
            self.parts.append(data)


def text_of(html: str, *, cited: bool = True) -> str:
    """Return what a page says, without its markup.

    Args:
        cited: with the names of documents, which are called what they are called.
    """
    reader = _Text(cited=cited)
    reader.feed(html)
    return " ".join(" ".join(reader.parts).split())


def read(client: Client, path: str, lang: str = "en") -> str:
    """Return a page that must be there."""
    answer = client.get(path, headers={"accept-language": lang})
    assert answer.status_code == 200, path
    return answer.content.decode()


def send(client: Client, path: str, **given: Any) -> tuple[int, str, tuple[str, ...]]:  # noqa: ANN401
    """Send a form; return the status, where one lands, and what was said."""
    answer = client.post(path, given, follow=True)
    html = answer.content.decode()
    where = answer.redirect_chain[-1][0] if answer.redirect_chain else path
    return answer.status_code, where, tuple(_SAID.findall(html))


def points(html: str) -> list[str]:
    """Return the touch points a check asks for."""
    return sorted(set(re.findall(r'name="(gear\.[^"]+)"', html)))
