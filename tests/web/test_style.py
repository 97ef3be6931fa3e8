"""The style sheets keep to the house: one file of colours and sizes, contrast, plain templates."""

import re
from pathlib import Path

import pytest

WEB = Path(__file__).parents[2] / "src" / "sootline" / "web"
SHEETS = sorted((WEB / "static" / "css").glob("*.css"))
TEMPLATES = sorted((WEB / "templates").rglob("*.html"))
_NAMED = r"(?<![-.])\b(?:red|green|black|white)\b(?!-)"
_COLOUR = re.compile(rf"#[0-9a-f]{{3,8}}\b|\brgb|\bhsl|\bcolor-mix|{_NAMED}")
_SIZE = re.compile(r"\b\d*\.?\d+(?:px|rem|pt|mm|cm)\b")
# Contrast ratio by WCAG 2.2, success criterion 1.4.6 (enhanced), https://www.w3.org/TR/WCAG22/.
_ENHANCED = 7.0


def _tokens(block: str) -> dict[str, str]:
    return dict(re.findall(r"--([a-z-]+): (#[0-9a-f]{6});", block))


def _themes() -> dict[str, dict[str, str]]:
    text = (WEB / "static" / "css" / "tokens.css").read_text(encoding="utf-8")
    day = _tokens(text.split("@media (prefers-color-scheme: dark)")[0])
    night = _tokens(text.split(':root[data-theme="night"] {')[1].split("}")[0])
    device = _tokens(text.split(':root:not([data-theme="day"]) {')[1].split("}")[0])
    assert night == device
    return {"day": day, "night": {**day, **night}}


def _light(colour: str) -> float:
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def _contrast(first: str, second: str) -> float:
    high, low = sorted((_light(first), _light(second)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_the_measure_of_contrast_is_the_standards() -> None:
    """Black on white is 21:1, and a grey the standard's notes name is 4.54:1."""
    assert _contrast("#000000", "#ffffff") == pytest.approx(21)
    assert _contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.01)


@pytest.mark.parametrize("theme", ["day", "night"])
@pytest.mark.parametrize(
    ("text", "ground"),
    [("soot", "canvas"), ("soot", "sheet"), ("ash", "canvas"), ("ash", "sheet"),
     ("soot", "why"), ("on-pressed", "pressed")],
)  # fmt: skip
def test_text_stands_out_by_seven_to_one(theme: str, text: str, ground: str) -> None:
    """By day and by night, on every ground that carries text."""
    tokens = _themes()[theme]

    assert _contrast(tokens[text], tokens[ground]) >= _ENHANCED


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.stem)
def test_colours_and_sizes_stand_in_one_file(sheet: Path) -> None:
    """Every other sheet names tokens; the widths at which a page changes cannot."""
    if sheet.stem == "tokens":
        return
    lines = [
        line for line in sheet.read_text(encoding="utf-8").splitlines() if "@media" not in line
    ]
    lines = [re.sub(r'\[[a-z]+="#[0-9a-f]+"\]|/\*.*?\*/', "", line) for line in lines]

    assert [line for line in lines if _COLOUR.search(line) or _SIZE.search(line)] == []


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda one: f"{one.parent.name}/{one.stem}")
def test_a_template_is_short_and_plain(template: Path) -> None:
    """At most 150 lines, no style or script of its own, no sentence that is not a message."""
    text = template.read_text(encoding="utf-8")
    said = re.sub(r"{%.*?%}|{{.*?}}|<[^>]*>", " ", text, flags=re.DOTALL)

    assert len(text.splitlines()) <= 150
    assert "style=" not in text
    assert not re.search(r"[a-zA-Z]{3,} [a-zA-Z]{3,}", said)


def test_every_sign_has_its_word() -> None:
    """Each mark has a symbol in the sprite; none is told by colour."""
    # Only once the framework is set up.
    from sootline.web.reading.marks import Mark  # noqa: PLC0415

    sprite = (WEB / "static" / "icons.svg").read_text(encoding="utf-8")
    symbols = set(re.findall(r'<symbol id="([a-z]+)"', sprite))

    assert {mark.value for mark in Mark} <= symbols
    assert "fill=" not in sprite
