"""How is a command line read, with its help said in the reader's language?"""

import argparse
from collections.abc import Sequence
from functools import partial
from pathlib import Path
from textwrap import fill
from typing import NoReturn

from sootline.cli.registry import Command
from sootline.words import say


class UsageError(Exception):
    """A command line that cannot be understood.

    Args:
        message: what is wrong, as a message id.
        values: what the sentence names.
    """

    def __init__(self, message: str, **values: str) -> None:
        super().__init__(message)
        self.message = message
        self.values = values


class WordsFormatter(argparse.HelpFormatter):
    """Prints help texts, which are message ids, in a language."""

    def __init__(self, prog: str, *, lang: str) -> None:
        super().__init__(prog, max_help_position=26)
        self._lang = lang

    def _expand_help(self, action: argparse.Action) -> str:
        return say(action.help or "", {"default": str(action.default)}, lang=self._lang)


class CommandParser(argparse.ArgumentParser):
    """A parser whose help texts are message ids and whose errors are raised, not printed.

    Sub-commands get the common options too, so that `--json` may stand last everywhere.

    Args:
        prog: the words typed so far ("sootline plan").
        lang: the reader's language.
    """

    def __init__(self, *, prog: str, lang: str, description: str | None = None) -> None:
        super().__init__(
            prog=prog,
            description=description,
            add_help=False,
            allow_abbrev=False,
            formatter_class=partial(WordsFormatter, lang=lang),
        )
        self.lang = lang
        absent = argparse.SUPPRESS
        self.add_argument("-h", "--help", action="help", default=absent, help="cli.help.help")
        self.add_argument("--json", action="store_true", default=absent, help="cli.help.as_json")
        self.add_argument("--out", type=Path, metavar="FILE", default=absent, help="cli.help.out")
        self.add_argument("--lang", metavar="LANG", default=absent, help="cli.help.lang")

    def add_sub_commands(self, dest: str) -> "argparse._SubParsersAction[CommandParser]":
        """Open the list of this command's sub-commands, which speak the same language.

        Args:
            dest: the name of the option that will hold which of them was typed.
        """
        return self.add_subparsers(  # type: ignore[call-overload, no-any-return]
            dest=dest,
            required=True,
            metavar=dest.upper(),
            parser_class=partial(CommandParser, lang=self.lang),
        )

    def error(self, message: str) -> NoReturn:
        """Refuse the command line.

        Raises:
            UsageError: always.
        """
        raise UsageError("cli.usage.refused", problem=message, help=f"{self.prog} --help")


def command_parser(command: Command, lang: str) -> CommandParser:
    """Make the parser of one command, still without the command's own arguments."""
    description = say(command.help, lang=lang)
    return CommandParser(prog=f"sootline {command.name}", lang=lang, description=description)


def read_options(parser: CommandParser, typed: Sequence[str]) -> argparse.Namespace:
    """Read a command's arguments; `json`, `out` and `lang` are always there.

    Raises:
        UsageError: the arguments cannot be understood.
    """
    common = argparse.Namespace(json=False, out=None, lang=parser.lang)
    return parser.parse_args(typed, common)


def command_named(name: str, commands: Sequence[Command]) -> Command:
    """Return the command that was typed.

    Raises:
        UsageError: there is none of that name.
    """
    for command in commands:
        if command.name == name:
            return command
    known = ", ".join(command.name for command in commands)
    raise UsageError("cli.command.unknown", command=name, known=known)


def front_help(commands: Sequence[Command], lang: str) -> str:
    """Return what `sootline --help` prints: every command with its one line."""
    listed = [(command.name, command.help) for command in commands]
    options = [
        ("--json", "cli.help.as_json"),
        ("--out FILE", "cli.help.out"),
        ("--lang LANG", "cli.help.lang"),
        ("--version", "cli.help.version"),
    ]
    return "\n".join(
        (
            "sootline COMMAND ...",
            "",
            fill(say("cli.help.about", lang=lang), 90),
            "",
            say("cli.help.commands", lang=lang),
            *(f"  {typed:<15}{say(message, lang=lang)}" for typed, message in listed),
            "",
            *(f"  {typed:<15}{say(message, lang=lang)}" for typed, message in options),
            "",
            fill(say("cli.help.defer", lang=lang), 90),
        )
    )
