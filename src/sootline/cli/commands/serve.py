"""`sootline serve`: the app for browsers, on this machine or for the station's network."""

import argparse
import hashlib
import ipaddress
import os
import secrets
from pathlib import Path
from typing import TYPE_CHECKING

from sootline.cli.parser import CommandParser, UsageError
from sootline.cli.registry import DONE
from sootline.wiring.framework import start
from sootline.words import say

if TYPE_CHECKING:
    from sootline.wiring.supervising import Kept

_SAID = {False: "store.serve.at", True: "store.serve.demo_at"}
_LOCAL_NAMES = ("localhost",)


def add_arguments(parser: CommandParser) -> None:
    """Add where to listen, with which certificate, for how many at once."""
    parser.add_argument("--host", default="127.0.0.1", help="store.help.host")
    parser.add_argument("--port", type=int, default=8000, help="store.help.port")
    parser.add_argument("--tls-file", type=Path, metavar="FILE", help="store.help.tls_file")
    parser.add_argument("--key", type=Path, metavar="FILE", help="store.help.key")
    parser.add_argument("--plain-http", action="store_true", help="store.help.plain_http")
    parser.add_argument("--demo", action="store_true", help="store.help.demo")
    parser.add_argument("--workers", type=int, default=1, help="store.help.workers")


def run(options: argparse.Namespace) -> int:
    """Prepare the store and keep the server's processes at work until stopped."""
    _choose(options)
    start()
    from sootline.wiring.daily import begin_daily  # noqa: PLC0415
    from sootline.wiring.own_record import open_record  # noqa: PLC0415
    from sootline.wiring.supervising import supervise, until_told  # noqa: PLC0415

    begin_daily(open_record())
    over = until_told()
    scheme = "https" if options.tls_file else "http"
    address = {"address": f"{scheme}://{options.host}:{options.port}/{_door(options)}"}
    print(say(_SAID[bool(options.demo)], address, lang=options.lang), flush=True)
    supervise(_processes(options), over)
    return DONE


def _processes(options: argparse.Namespace) -> "list[Kept]":
    """Name the web process and, where there is a record, the one that does what takes long."""
    from sootline.wiring.server import words_of  # noqa: PLC0415
    from sootline.wiring.supervising import Kept, python  # noqa: PLC0415

    words = words_of(
        host=options.host,
        port=options.port,
        certificate=options.tls_file,
        key=options.key,
        workers=options.workers,
    )
    web = Kept("web", python("sootline.wiring.server", *words))
    worker = Kept("worker", python("sootline.wiring.worker"))
    return [web] if options.demo else [web, worker]


def _door(options: argparse.Namespace) -> str:
    """Make the one address by which somebody comes into the demonstration, once."""
    if not options.demo:
        return ""
    token = secrets.token_urlsafe(24)
    os.environ["SOOTLINE_DEMO_DOOR"] = hashlib.sha256(token.encode()).hexdigest()
    return f"come-in/{token}/"


def _choose(options: argparse.Namespace) -> None:
    """Turn options into settings, and refuse what would put passwords on the air.

    Raises:
        UsageError: plain http beyond this machine, a certificate without its key, or a
            demonstration for others.
    """
    local = _is_local(options.host)
    if (options.tls_file is None) != (options.key is None):
        raise UsageError("store.serve.half_tls")
    if not local and options.tls_file is None and not options.plain_http:
        raise UsageError("store.serve.plain_http", host=options.host)
    if options.demo and not local:
        raise UsageError("store.serve.demo_local", host=options.host)
    switches = {
        "SOOTLINE_TLS": options.tls_file is not None,
        "SOOTLINE_PLAIN_HTTP": options.plain_http and options.tls_file is None,
        "SOOTLINE_DEMO": options.demo,
    }
    os.environ.update({name: "1" for name, on in switches.items() if on})
    if not local:
        os.environ.setdefault("SOOTLINE_HOSTS", options.host)


def _is_local(host: str) -> bool:
    try:
        return ipaddress.ip_address(host.strip("[]")).is_loopback
    except ValueError:
        return host in _LOCAL_NAMES
