"""The reference page of the commands, from the parsers that read them."""

import argparse
import importlib
import importlib.util
from collections.abc import Iterator
from pathlib import Path

from sootline.cli.parser import command_parser
from sootline.cli.registry import COMMANDS, Command
from sootline.words import say

PAGE = Path(__file__).parents[2] / "docs" / "reference" / "commands.md"
HEAD = """# Commands

Made from the program itself by `make docs`; do not edit.

Exit codes: 0 done; 1 a problem was found, or the program failed; 2 bad input; 130 stopped from the
keyboard.
"""
COMMON = frozenset({"help", "json", "out", "lang"})


def reference() -> dict[Path, bytes]:
    """Return the page: every command that is there, its arguments, and the common options."""
    parts = [HEAD, *_common()]
    for command in COMMANDS:
        if importlib.util.find_spec(command.module):
            parts += _command(command)
    return {PAGE: ("\n".join(parts).rstrip() + "\n").encode()}


def _common() -> Iterator[str]:
    parser = command_parser(COMMANDS[0], "en")
    yield "## Options of every command\n"
    yield from _table(parser, common=True)


def _command(command: Command) -> Iterator[str]:
    parser = command_parser(command, "en")
    importlib.import_module(command.module).add_arguments(parser)
    yield f"## sootline {command.name}\n"
    yield _sentence(say(command.help))
    yield from _table(parser, common=False)
    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            for listed in action._choices_actions:
                yield f"### sootline {command.name} {listed.dest}\n"
                yield _sentence(_meant(listed))
                yield from _table(action.choices[listed.dest], common=False)


def _table(parser: argparse.ArgumentParser, *, common: bool) -> Iterator[str]:
    rows = [
        f"| `{_typed(action)}` | {_meant(action)} |"
        for action in parser._actions
        if (action.dest in COMMON) is common and not isinstance(action, argparse._SubParsersAction)
    ]
    if rows:
        yield "\n".join(["| Typed | Meaning |", "|---|---|", *rows]) + "\n"


def _typed(action: argparse.Action) -> str:
    value = action.metavar or (", ".join(map(str, action.choices)) if action.choices else "")
    if not action.option_strings:
        return str(value or action.dest)
    value = "" if action.nargs == 0 else str(value or action.dest.upper())
    return f"{', '.join(action.option_strings)} {value}".rstrip()


def _meant(action: argparse.Action) -> str:
    return say(action.help, {"default": str(action.default)}) if action.help else ""


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}.\n"
