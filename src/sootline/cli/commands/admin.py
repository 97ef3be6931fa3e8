"""`sootline admin`: the first administrator is made here, on the console, and nowhere else."""

import argparse
import getpass
import sys
from types import ModuleType

from sootline.cli.parser import CommandParser, UsageError
from sootline.cli.registry import DONE
from sootline.wiring.framework import start
from sootline.words import say

_ACTIONS = ("create", "password", "pin", "factor", "roles", "end", "close")
# What changes who may do what; that stands in the record.
_OFFICES = ("create", "roles", "close")


def add_arguments(parser: CommandParser) -> None:
    """Add what can be done to an account."""
    actions = parser.add_sub_commands("action")
    for action in _ACTIONS:
        one = actions.add_parser(action, help=f"accounts.help.{action}")
        one.add_argument("name", metavar="NAME", help="accounts.help.name")
        if action == "roles":
            one.add_argument("roles", nargs="*", metavar="ROLE", help="accounts.help.role")
        if action == "create":
            one.add_argument("--member", default="", help="accounts.help.member")
            one.add_argument("--station", default="", help="accounts.help.station")
            one.add_argument("--role", action="append", dest="roles", metavar="ROLE",
                             help="accounts.help.role")  # fmt: skip


def run(options: argparse.Namespace) -> int:
    """Make, change or close an account."""
    start()
    from sootline.wiring import accounts  # noqa: PLC0415
    from sootline.wiring.store import open_store, prepare  # noqa: PLC0415

    prepare(open_store())
    _act(accounts, options)
    if options.action in _OFFICES:
        accounts.note_offices(options.name)
    print(say(f"accounts.done.{options.action}", {"name": options.name}, lang=options.lang))
    return DONE


def _act(accounts: ModuleType, options: argparse.Namespace) -> None:
    """Do one thing to an account.

    Raises:
        BadInputError: there is no such account, or it cannot be done to this one.
    """
    if options.action == "create":
        accounts.make_account(
            options.name, _asked("password", options.lang), options.roles or ["administrator"],
            member=options.member, station=options.station,
        )  # fmt: skip
    elif options.action == "password":
        accounts.find_account(options.name)
        accounts.set_password(options.name, _asked("password", options.lang))
    elif options.action == "pin":
        accounts.give_first_pin(options.name, _asked("pin", options.lang))
    elif options.action == "factor":
        accounts.reset_factor(options.name)
    elif options.action == "roles":
        accounts.set_roles(options.name, options.roles)
    elif options.action == "end":
        accounts.end_sessions(accounts.find_account(options.name))
    else:
        accounts.close_account(options.name)


def _asked(what: str, lang: str) -> str:
    """Ask twice at a terminal; read one line where there is none.

    Raises:
        UsageError: the two are not the same.
    """
    if not sys.stdin.isatty():
        return sys.stdin.readline().rstrip("\r\n")
    first = getpass.getpass(say(f"accounts.ask.{what}", lang=lang))
    if getpass.getpass(say("accounts.ask.again", lang=lang)) != first:
        raise UsageError("accounts.ask.differ")
    return first
