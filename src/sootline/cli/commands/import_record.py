"""How does a list come into the store's own record, and how is that told?"""

import argparse
import hashlib
import platform
from collections.abc import Iterator
from pathlib import Path

from sootline.cli.output import printable
from sootline.core.basis import DeviceId, MemberId
from sootline.core.ledger import ClockSource, Established, Occurred
from sootline.core.ledger.acts import Act
from sootline.tasks.import_roster import Register
from sootline.tasks.take_in_roster import TakenRoster, take_in_roster
from sootline.wiring.framework import start
from sootline.words import say


def register_of_record() -> Register:
    """Return the members and the gear that the record knows."""
    start()
    from sootline.wiring.own_record import open_record, registered  # noqa: PLC0415

    open_record()
    return registered()


def take_into_record(options: argparse.Namespace, register: Register) -> TakenRoster:
    """Record what a list became; the same file again adds nothing, unless it was taken back."""
    start()
    from sootline.wiring.own_record import free_key, open_record  # noqa: PLC0415
    from sootline.wiring.store import now, open_book  # noqa: PLC0415

    open_record()
    actor = MemberId(options.by)
    act = Act(
        idem=free_key(actor, f"import-{_digest(options.file)}"),
        occurred=Occurred.at(now(), ClockSource.SERVER),
        device=DeviceId(platform.node() or "console"),
        actor=actor,
        established=Established.IMPORTED,
    )
    return take_in_roster(open_book(), act, register, station=options.station)


def taken_lines(taken: TakenRoster, lang: str) -> Iterator[str]:
    """Say what came in, and how it is taken back."""
    values = {
        "members": str(taken.members),
        "components": str(taken.components),
        "deeds": str(taken.deeds),
        "n": str(taken.entries),
        "act": printable(taken.act),
    }
    yield say("roster.said.recorded" if taken.entries else "roster.said.again", values, lang=lang)


def _digest(file: Path) -> str:
    return hashlib.sha256(file.read_bytes()).hexdigest()[:24]
