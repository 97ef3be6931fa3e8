"""Every screen of the demonstration: there, plain, small, and without a claim."""

import gzip
import re

import pytest
from django.test import Client
from tests.web.pages import PAGES, read, text_of

from sootline.words.never_say import find_claims

_MOST_KB = 60


@pytest.mark.parametrize("path", PAGES)
@pytest.mark.parametrize("lang", ["en", "es"])
def test_a_screen_is_there_in_both_languages(demo: Client, path: str, lang: str) -> None:
    """It says its language, has one heading of the first rank, and no message lacks words."""
    html = read(demo, path, lang)

    assert f'<html lang="{lang}"' in html
    assert len(re.findall(r"<h1[ >]", html)) == 1
    assert not re.findall(r"\[[a-z_]+\.[a-z_.-]+\]|\[[a-z_]+\?\]", text_of(html))


@pytest.mark.parametrize("path", PAGES)
@pytest.mark.parametrize("lang", ["en", "es"])
def test_a_screen_claims_nothing_of_gear_people_or_places(
    demo: Client, path: str, lang: str
) -> None:
    """The never-say lists find nothing on a rendered page but in the names of documents."""
    assert find_claims(text_of(read(demo, path, lang), cited=False), lang) == ()


@pytest.mark.parametrize("path", PAGES)
def test_a_screen_has_no_style_or_script_of_its_own(demo: Client, path: str) -> None:
    """The policy of the browser allows files alone; every script is one."""
    html = read(demo, path)

    assert "style=" not in html
    assert "<style" not in html
    assert not re.findall(r"<script(?![^>]* src=)", html)
    assert not re.findall(r"\son[a-z]+=", html)


@pytest.mark.parametrize("path", PAGES)
def test_a_screen_is_small_enough_for_a_slow_line(demo: Client, path: str) -> None:
    """A page is under 60 kB compressed."""
    assert len(gzip.compress(read(demo, path).encode())) < _MOST_KB * 1024


def test_the_radio_page_is_words_alone(demo: Client) -> None:
    """The radio room gets plain text, with who cannot ride and when."""
    answer = demo.get("/radio/")

    assert answer["Content-Type"].startswith("text/plain")
    assert "218" in answer.content.decode()
    assert "<" not in answer.content.decode()


def test_those_who_cannot_ride_stand_first_in_each_crew(demo: Client) -> None:
    """In a crew's rows, "cannot ride" comes before "can ride"."""
    page = read(demo, "/?crew=Engine+1")
    verdicts = re.findall(r"<b>(can[^<]*ride[^<]*)</b>", page)

    assert verdicts == sorted(verdicts, key=lambda said: not said.startswith("cannot"))
    assert {said[:6] for said in verdicts} == {"cannot", "can ri"}


def test_a_crew_is_shown_alone(demo: Client) -> None:
    """The filter leaves other crews' members out."""
    page = read(demo, "/?crew=Ladder+1")

    assert "/people/224/" in page
    assert "/people/218/" not in page


@pytest.mark.parametrize(
    "sheet", ["load-cards", "hold-labels", "check-sheets", "handover", "radio", "tags"]
)
def test_a_sheet_is_a_pdf(demo: Client, sheet: str) -> None:
    """Every listed sheet prints."""
    answer = demo.get(f"/paper/{sheet}.pdf?size=letter&second=es")

    assert answer["Content-Type"] == "application/pdf"
    assert answer.content.startswith(b"%PDF")


@pytest.mark.parametrize(
    "path",
    ["/pieces/none/", "/people/none/", "/call/none/", "/wash/load/99/", "/paper/none.pdf",
     "/check/piece/none/", "/check/build/none/", "/call/26-0311/who/999/"],
)  # fmt: skip
def test_what_is_not_there_says_so(demo: Client, path: str) -> None:
    """An unknown number is a page of its own, with a way on."""
    answer = demo.get(path)

    assert answer.status_code == 404
    assert "/pieces/" in answer.content.decode()


def test_an_unknown_edition_is_refused_in_words(demo: Client) -> None:
    """Comparing with an edition that does not exist lists those that do."""
    answer = demo.get("/rules/compare/?with=none")

    assert answer.status_code == 422
    assert "nfpa-1851/2020" in answer.content.decode()


def test_a_number_opens_its_piece_at_once(demo: Client) -> None:
    """Typing a whole number, or scanning it, needs no list."""
    answer = demo.get("/pieces/?q=0473")

    assert (answer.status_code, answer["Location"]) == (302, "/pieces/0473/")


def test_light_and_language_stay_on_the_device(demo: Client) -> None:
    """Night and Spanish are kept, and one is back where one was."""
    answer = demo.post("/light/", {"light": "night", "language": "es", "back": "/wash/"})
    page = demo.get("/wash/").content.decode()

    assert answer["Location"] == "/wash/"
    assert 'data-theme="night"' in page
    assert '<html lang="es"' in page


def test_a_way_back_never_leads_elsewhere(demo: Client) -> None:
    """An address of another house is not followed."""
    answer = demo.post("/light/", {"light": "day", "back": "//elsewhere.example/"})

    assert answer["Location"] == "/"
