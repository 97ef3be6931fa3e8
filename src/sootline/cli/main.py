"""What was typed, and with which exit code does it end?

0 done, 1 a problem was found or the program failed, 2 bad input, 130 stopped from the keyboard.
No traceback reaches a reader unless SOOTLINE_DEBUG=1 asks for it. Little is imported here: a
command's module, and all it needs, is loaded when the command is called.
"""

import importlib
import os
import sys
from collections.abc import Sequence
from itertools import pairwise
from types import ModuleType

from sootline import __version__
from sootline.cli.parser import (
    UsageError,
    command_named,
    command_parser,
    front_help,
    read_options,
)
from sootline.cli.registry import BAD_INPUT, COMMANDS, DONE, PROBLEM, STOPPED, Command
from sootline.words import languages, say


def main(argv: Sequence[str] | None = None, commands: Sequence[Command] = COMMANDS) -> int:
    """Run one command line and return its exit code.

    Args:
        argv: what was typed after "sootline"; the process's own arguments when None.
        commands: the commands there are.
    """
    # The document library looks through every installed package for plug-ins unless told not to.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    typed = list(sys.argv[1:] if argv is None else argv)
    lang = _language(typed)
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")
    try:
        code = _run(typed, lang, commands)
        sys.stdout.flush()
    except KeyboardInterrupt:
        print(say("cli.stop.keyboard", lang=lang), file=sys.stderr)
        return STOPPED
    except BrokenPipeError:
        return _reader_gone()
    except UsageError as error:
        print(say(error.message, error.values, lang=lang), file=sys.stderr)
        return BAD_INPUT
    except Exception as error:
        return _failed(error, lang, "--json" in typed)
    return code


def _run(typed: list[str], lang: str, commands: Sequence[Command]) -> int:
    if lang not in languages() and lang.partition("_")[0] not in languages():
        raise UsageError("cli.lang.unknown", lang=lang, known=", ".join(languages()))
    rest = _without_language(typed)
    if not rest or rest[0] in ("-h", "--help"):
        print(front_help(commands, lang))
        return DONE
    if rest[0] == "--version":
        print(f"sootline {__version__}")
        return DONE
    command = command_named(rest[0], commands)
    module = _module_of(command)
    if module is None:
        print(say("cli.command.absent", {"command": command.name}, lang=lang), file=sys.stderr)
        return PROBLEM
    parser = command_parser(command, lang)
    module.add_arguments(parser)
    try:
        options = read_options(parser, rest[1:])
    except SystemExit:
        return DONE
    return int(module.run(options))


def _module_of(command: Command) -> ModuleType | None:
    """Import a command's module, or None where this copy came without it."""
    try:
        return importlib.import_module(command.module)
    except ModuleNotFoundError as error:
        if error.name != command.module:
            raise
        return None


def _language(typed: Sequence[str]) -> str:
    """Find the language wherever it stands: help and refusals need it before parsing."""
    for word, after in pairwise([*typed, ""]):
        if word == "--lang" and after:
            return after
        if word.startswith("--lang="):
            return word.partition("=")[2]
    return "en"


def _without_language(typed: list[str]) -> list[str]:
    """Drop a language named before the command, so that the command comes first."""
    if typed[:1] == ["--lang"]:
        return typed[2:]
    return typed[1:] if typed and typed[0].startswith("--lang=") else typed


def _failed(error: Exception, lang: str, as_json: bool) -> int:
    """Print faults of the input, or one line about a failure of ours."""
    # Loaded here because only a failing command pays for it.
    from sootline.cli.output import print_faults, printable  # noqa: PLC0415
    from sootline.core.basis import (  # noqa: PLC0415
        BadInputError,
        Fault,
        UnreadableValueError,
    )

    if isinstance(error, BadInputError):
        print_faults(error.faults, lang=lang, as_json=as_json)
        return BAD_INPUT
    if isinstance(error, UnreadableValueError):
        fault = Fault(place="input", message=error.message, values=error.values)
        print_faults([fault], lang=lang, as_json=as_json)
        return BAD_INPUT
    if os.environ.get("SOOTLINE_DEBUG") == "1":
        import traceback  # noqa: PLC0415

        traceback.print_exception(error)
    what = printable(f"{type(error).__name__}: {error}")
    print(say("cli.stop.unexpected", {"what": what}, lang=lang), file=sys.stderr)
    return PROBLEM


def _reader_gone() -> int:
    """Whoever read the output closed it; keep the interpreter from complaining at its exit."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, sys.stdout.fileno())
    return PROBLEM
