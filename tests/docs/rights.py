"""The reference page of who may do what, from the tables that every request is held to."""

from collections.abc import Iterator
from pathlib import Path

from sootline.tasks.rights import AT_A_DEVICE, GUARDED, RIGHTS, Right, Role
from sootline.web.routes import ROUTES, Access
from sootline.words import name

PAGE = Path(__file__).parents[2] / "docs" / "reference" / "rights.md"
HEAD = """# Who may do what

Made from the program's own tables by `make docs`; do not edit.

An account holds offices, an office gives rights, and every address asks for rights. An address that
is missing from the table is refused to everybody. Offices count from the next request on.

What a person was in is health data: `see-exposure` is a right of its own, and every look is kept,
whoever's it is. An account of one station sees that station's gear and people, and what belongs to
none.
"""


def reference() -> dict[Path, bytes]:
    """Return the page: rights by office, what takes more than a password, rights by address."""
    parts = [HEAD, "## Offices\n", *_offices()]
    parts += ["\n## What takes a second factor\n", *_guarded()]
    parts += ["\n## At a station device\n", *_device(), "\n## Addresses\n", *_addresses()]
    return {PAGE: ("\n".join(parts).rstrip() + "\n").encode()}


def _offices() -> Iterator[str]:
    yield "| Office | Rights |"
    yield "|---|---|"
    for role in Role:
        rights = ", ".join(f"`{right}`" for right in Right if right in RIGHTS[role])
        yield f"| {name('role', role, lang='en')} (`{role}`) | {rights} |"


def _guarded() -> Iterator[str]:
    listed = ", ".join(f"`{right}`" for right in Right if right in GUARDED)
    yield f"{listed}: asked for once in a session. Taking back what one wrote oneself within a"
    yield "shift takes none."


def _device() -> Iterator[str]:
    listed = ", ".join(f"`{right}`" for right in Right if right in AT_A_DEVICE)
    yield f"A device shows what {listed} shows, at the addresses marked below. Each act there takes"
    yield "a name and a PIN, and the rights of that person."


def _addresses() -> Iterator[str]:
    yield "| Address by name | To look | To send | Notes |"
    yield "|---|---|---|---|"
    for route, access in sorted(ROUTES.items()):
        send = _right(access.send, access) if access.sends else "–"
        yield f"| `{route}` | {_right(access.see, access)} | {send} | {', '.join(_notes(access))} |"


def _right(right: Right | None, access: Access) -> str:
    if right is None:
        return "anybody" if access.open else "signed in"
    return f"`{right}`"


def _notes(access: Access) -> Iterator[str]:
    if {access.see, access.send} & GUARDED:
        yield "second factor"
    if access.device:
        yield "station device"
    if access.whole:
        yield "not for an account of one station"
