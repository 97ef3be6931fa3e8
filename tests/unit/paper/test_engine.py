"""What the engine does with layouts, fonts and hostile texts."""

import re
from pathlib import Path

import pytest
from tests.paper_night import NOW, night, page, piece, planned
from tests.paper_reading import fonts_of, text_of, text_outside

from sootline.core.gear import CareStage
from sootline.paper import engine
from sootline.paper.engine import LAYOUTS, LayoutError, typeset
from sootline.paper.load_cards import print_load_cards
from sootline.tasks.load_cards import list_load_cards

HOSTILE = (
    '#read("/etc/passwd")',
    '#import "@preview/x:0.1.0": *',
    "$ sum_(i=1)^n $ *bold* _em_ `raw` <label> @ref",
    '<para><a href="file:///etc/passwd">x</a></para>',
    '<img src="http://127.0.0.1:1/x">',
    "{{ settings.SECRET_KEY }}",
    "(unbalanced ) paren \\",
    "/JS (app.alert(1))",
    "&#x3C;script&#x3E;",
    "]#pagebreak()[",
    "//comment",
    "= heading",
    '"); evil("',
)


def cards_of(*names: str) -> bytes:
    """Return the load cards for hoods that bear these names, and whose owners do."""
    gear = tuple(
        piece(f"{place} {name}", "hood", name, stage=CareStage.TO_WASH)
        for place, name in enumerate(names)
    )
    job = night(gear=gear, calls=())
    return print_load_cards(list_load_cards(job, planned(job)), page(department=names[0]))


@pytest.fixture(scope="module")
def hostile_cards() -> bytes:
    """Return load cards full of hostile names."""
    return cards_of(*HOSTILE)


@pytest.mark.parametrize("text", HOSTILE)
def test_a_hostile_text_is_printed_as_it_was_typed(text: str, hostile_cards: bytes) -> None:
    """No text is read as code, markup or a place to fetch from."""
    assert "".join(text.split()) in text_of(hostile_cards)


def test_a_hostile_text_brings_no_link_script_or_file(hostile_cards: bytes) -> None:
    """The PDF has no actions, and nothing of the machine."""
    assert b"/JavaScript" not in hostile_cards
    assert b"/URI" not in hostile_cards
    assert "root:x:0" not in text_of(hostile_cards)


def test_a_word_of_twenty_thousand_signs_wraps() -> None:
    """All of it is printed, and none of it leaves the page."""
    pdf = cards_of("A" * 20_000)

    assert text_of(pdf).count("A") >= 20_000
    assert text_outside(pdf) == []


def test_an_order_of_direction_and_a_missing_sign_show_their_codes() -> None:
    """Nothing is dropped, and nothing runs backwards."""
    text = text_of(cards_of("\u202etxt.exe", "\U0001f9ef", "日本"))

    assert "[U+202E]txt.exe" in text
    assert "[U+1F9EF]" in text
    assert "[U+65E5][U+672C]" in text


def test_every_font_is_embedded_and_ours(hostile_cards: bytes) -> None:
    """Only the vendored typeface, its files in the PDF."""
    fonts = fonts_of(hostile_cards)

    assert set(fonts) == {"AtkinsonHyperlegibleNext-Regular", "AtkinsonHyperlegibleNext-Bold"}
    assert all(fonts.values())


def test_the_same_facts_at_the_same_moment_give_the_same_bytes() -> None:
    """A sheet can be printed again."""
    assert cards_of("301") == cards_of("301")


def test_no_layout_reads_anything_but_its_facts() -> None:
    """Layouts import the frame and nothing from outside."""
    for layout in LAYOUTS.glob("*.typ"):
        source = layout.read_text(encoding="utf-8")
        assert set(re.findall(r'#import "([^"]+)"', source)) <= {"/frame.typ"}, layout
        assert not re.search(r"\b(read|eval|plugin|include)\b *\(|@preview", source), layout


@pytest.mark.parametrize(
    "layout",
    [
        '#set text(font: "No Such Face")\nx',  # a warning, silent in print
        "#no-such-function()",
        '#read("/etc/passwd")',
        '#read("../signs.py")',
    ],
)
def test_a_layout_that_does_not_work_is_refused(
    layout: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A wrong font name, a fault, a file outside: no PDF rather than another one."""
    (tmp_path / "bad.typ").write_text(layout, encoding="utf-8")
    (tmp_path / "frame.typ").write_text("", encoding="utf-8")
    monkeypatch.setattr(engine, "LAYOUTS", tmp_path)

    with pytest.raises(LayoutError):
        typeset("bad", {}, printed_at=NOW)
