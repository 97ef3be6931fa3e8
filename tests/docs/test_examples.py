"""The examples in the documents run, and print what the documents say they print.

A fenced `console` block holds commands after "$ " and the lines they print, in order; "..." stands
for lines left out. The blocks of one page run in one empty folder, one after the other.
"""

import re
import shlex
from pathlib import Path

import pytest

from sootline.cli.main import main

ROOT = Path(__file__).parents[2]
PAGES = sorted([ROOT / "README.md", *(ROOT / "docs").rglob("*.md")])
BLOCK = re.compile(r"^```console\n(.*?)^```$", re.MULTILINE | re.DOTALL)


def examples(page: Path) -> list[tuple[str, list[str]]]:
    """Return a page's commands, each with the lines it is said to print."""
    found: list[tuple[str, list[str]]] = []
    for block in BLOCK.findall(page.read_text(encoding="utf-8")):
        for line in block.splitlines():
            if line.startswith("$ "):
                found.append((line[2:], []))
            else:
                found[-1][1].append(line)
    return found


@pytest.mark.parametrize(
    "page", [page for page in PAGES if examples(page)], ids=lambda page: page.stem
)
def test_the_examples_of_a_page_print_what_it_says(
    page: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    """Every command runs, and its lines stand in the output in the order given."""
    monkeypatch.chdir(tmp_path)
    for command, said in examples(page):
        program, *words = shlex.split(command)
        assert program == "sootline"

        code = main(words)

        printed = iter(" ".join(capsys.readouterr().out.split("\n")).split())
        assert code in (0, 1), command
        for word in " ".join(line for line in said if line != "...").replace(" ...", "").split():
            assert word in printed, f"{command}: not printed in this order: {word}"


def test_there_are_examples_to_run() -> None:
    """The pattern that finds examples finds some."""
    assert any(examples(page) for page in PAGES)
