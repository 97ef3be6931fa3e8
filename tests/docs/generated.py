"""Writes every file that is made from the code: `make docs`; `--check` compares and changes none.

To add one: write a function that returns {path: content} and list it in PRODUCERS.
"""

import sys
from collections.abc import Callable, Mapping
from pathlib import Path

from tests.docs import commands, rights, rules, states, words

ROOT = Path(__file__).parents[2]
PRODUCERS: tuple[Callable[[], Mapping[Path, bytes]], ...] = (
    words.compiled,
    commands.reference,
    states.reference,
    rules.reference,
    rights.reference,
)


def bring_up_to_date(wanted: Mapping[Path, bytes], *, check: bool) -> int:
    """Write what differs, or only name it; return the exit code."""
    stale = [
        path
        for path, content in wanted.items()
        if not path.exists() or path.read_bytes() != content
    ]
    for path in stale:
        if check:
            print(f"{path.relative_to(ROOT)} is out of date: run `make words docs` and commit it")
            continue
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(wanted[path])
        print(f"wrote {path.relative_to(ROOT)}")
    return 1 if check and stale else 0


def main() -> int:
    """Bring every generated file up to date, or check that each is; words first, pages use them."""
    check = "--check" in sys.argv
    return max(bring_up_to_date(producer(), check=check) for producer in PRODUCERS)


if __name__ == "__main__":
    sys.exit(main())
