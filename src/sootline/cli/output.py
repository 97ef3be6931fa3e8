"""How does a result, a finding or a fault reach whoever typed the command?

Text goes to standard output in 80 to 100 columns, faults to standard error. With `--json` the
result, or the faults, are one JSON document on standard output. `--out FILE` writes the JSON
result to a file, whole or not at all, whatever is printed.
"""

import argparse
import json
import os
import re
import sys
import textwrap
from collections.abc import Iterable, Sequence
from itertools import zip_longest
from pathlib import Path

from sootline.cli.plain import plain
from sootline.core.basis import BadInputError, Fault, Finding, Ground, MessageId
from sootline.words import name, say

_FAULTS_SHOWN = 40
_VALUE_SHOWN = 120
_SOURCE_SHOWN = 500
_UNSEEN = re.compile("[\x00-\x1f\x7f-\x9f\u200b-\u200f\u202a-\u202e\u2066-\u2069\ud800-\udfff]")


def deliver(result: object, lines: Iterable[str], options: argparse.Namespace) -> None:
    """Print a result as text or JSON, and write it to a file if one was named.

    Args:
        result: a dataclass, or what is plain already; `plain` gives its JSON form.
        lines: the result as text; not read when JSON is asked for.
        options: `json`, `out` and `lang`, which every command has.

    Raises:
        BadInputError: the file cannot be written.
    """
    if options.json or options.out:
        document = json.dumps(plain(result, lang=options.lang), ensure_ascii=False, indent=2)
        if options.out:
            write_whole(options.out, document + "\n")
        if options.json:
            print(document)
            return
    for line in lines:
        print("\n".join(map(_seen, line.split("\n"))))


def finding_lines(findings: Iterable[Finding], *, lang: str, width: int | None = None) -> list[str]:
    """Return findings as text: what it does, the sentence, and what that rests on."""
    columns = width or columns_wide()
    every = tuple(findings)
    lines: list[str] = []
    for found, after in zip_longest(every, every[1:]):
        mark = f"  {name('bearing', found.bearing.value, lang=lang).upper()}: "
        lines += _wrapped(mark, _sentence(found, lang), columns)
        # A ground that several findings in a row rest on is said once, after the last of them.
        if after is None or after.ground != found.ground:
            lines += _wrapped("      ", _ground(found.ground, lang), columns)
    return lines


def fault_lines(faults: Sequence[Fault], *, lang: str, width: int | None = None) -> list[str]:
    """Return faults as text: a heading, then each by its place; the longest lists are cut."""
    columns = width or columns_wide()
    lines = _wrapped("", say("cli.faults.heading", {"n": str(len(faults))}, lang=lang), columns)
    for fault in faults[:_FAULTS_SHOWN]:
        lines += _wrapped("  ", f"{printable(fault.place)}: {_sentence(fault, lang)}", columns)
    if len(faults) > _FAULTS_SHOWN:
        rest = str(len(faults) - _FAULTS_SHOWN)
        lines += _wrapped("  ", say("cli.faults.more", {"n": rest}, lang=lang), columns)
    return lines


def print_faults(faults: Sequence[Fault], *, lang: str, as_json: bool) -> None:
    """Print faults: JSON on standard output when it was asked for, text on standard error."""
    if as_json:
        document = {"faults": plain(tuple(faults), lang=lang)}
        print(json.dumps(document, ensure_ascii=False, indent=2))
    else:
        print("\n".join(fault_lines(faults, lang=lang)), file=sys.stderr)


def printable(text: str, *, most: int = _VALUE_SHOWN) -> str:
    """Return a text from outside as one that cannot steer a terminal or flood it.

    Args:
        most: characters shown of it.
    """
    shown = _seen(text[:most])
    return shown if len(text) <= most else f"{shown}... ({len(text)})"


def _seen(text: str) -> str:
    """Spell out what a terminal would obey or hide instead of showing it."""
    return _UNSEEN.sub(lambda match: ascii(match[0])[1:-1], text)


def columns_wide() -> int:
    """Return how many columns to fill: the terminal's, but 80 at least and 100 at most."""
    try:
        return min(100, max(80, os.get_terminal_size(sys.stdout.fileno()).columns))
    except (OSError, ValueError):
        return 100


def write_whole(path: Path, content: str | bytes) -> None:
    """Write a file whole or not at all: beside its place first, then moved over it.

    A text is written as UTF-8 with its line breaks as they are.

    Raises:
        BadInputError: the place cannot be written to, or is no ordinary file.
    """
    target = path.resolve()
    if target.exists() and not target.is_file():
        raise _not_written(path, "cli.out.no_file")
    beside = target.with_name(f".{target.name}.{os.getpid()}.part")
    try:
        with beside.open("wb") as file:
            file.write(content.encode() if isinstance(content, str) else content)
            file.flush()
            os.fsync(file.fileno())
        beside.replace(target)
    except OSError as error:
        reason = error.strerror or str(error)
        raise _not_written(path, "cli.out.refused", reason=reason) from None
    finally:
        beside.unlink(missing_ok=True)


def _not_written(path: Path, message: str, **values: str) -> BadInputError:
    named = (("file", str(path)), *values.items())
    return BadInputError([Fault(place="--out", message=MessageId(message), values=named)])


def _sentence(said: Finding | Fault, lang: str) -> str:
    values = {key: printable(value) for key, value in said.values}
    return say(said.message, values, lang=lang)


def _ground(ground: Ground, lang: str) -> str:
    values = {
        "edition": ground.edition,
        "rule": ground.rule,
        "source": ground.source,
        "confidence": ground.confidence.value,
    }
    message = "cli.ground.line"
    if ground.source == name("confidence", ground.confidence.value):
        message = "cli.ground.plain"
    elif ground.in_force:
        message, values["since"] = "cli.ground.dated", str(ground.in_force)
    shown = {key: printable(value, most=_SOURCE_SHOWN) for key, value in values.items()}
    return say(message, shown, lang=lang)


def _wrapped(mark: str, text: str, width: int) -> list[str]:
    indent = " " * min(len(mark) + 2, 8)
    return textwrap.wrap(
        text,
        width,
        initial_indent=mark,
        subsequent_indent=indent,
        break_long_words=False,
        break_on_hyphens=False,
    )
