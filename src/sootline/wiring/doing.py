"""How is each kind of errand done, on the store? To be imported once the framework is started."""

import time
from collections.abc import Callable, Iterable, Iterator, Mapping
from pathlib import Path
from types import MappingProxyType
from typing import TypeVar

from django.conf import settings

from sootline.core.basis import DeviceId, MessageId
from sootline.core.ledger import verify_chain
from sootline.core.ledger.exports import export_all
from sootline.core.ledger.kinds import Established
from sootline.tasks.errands import ErrandKind, Outcome, Tell, Wish
from sootline.tasks.improve_wash import Search, improve_wash
from sootline.wiring.beside import helps_for
from sootline.wiring.plans import load_planning_times
from sootline.wiring.rules import RULES
from sootline.wiring.store import now, open_store
from sootline.wiring.store_desk import StoreDesks

_T = TypeVar("_T")
_TELL_EVERY = 1000


class StoppedError(Exception):
    """The errand is no longer this worker's, or the worker is to stop."""


def do(wish: Wish, tell: Tell) -> Outcome:
    """Do what was asked for.

    Raises:
        StoppedError: it was told to stop before its end.
    """
    return _WAYS[wish.kind](wish, tell)


def _improve(wish: Wish, tell: Tell) -> Outcome:
    began = time.monotonic()
    desks = StoreDesks(
        wish.by,
        wish.station,
        established=Established(wish.said["established"]),
        device=DeviceId(wish.said["device"]),
    )
    search = Search(
        rules=RULES, planning=load_planning_times(), helps=helps_for, tell=tell,
        spent=lambda: time.monotonic() - began,
    )  # fmt: skip
    return improve_wash(search, desks, wish)


def _verify(_wish: Wish, tell: Tell) -> Outcome:
    found = verify_chain(_told(open_store().entries(), tell))
    name = "errands.damaged" if found.damages else "errands.verified"
    values = (("n", str(found.entries)), ("damages", str(len(found.damages) + found.more)))
    return Outcome(message=MessageId(name), values=values)


def _export(_wish: Wish, tell: Tell) -> Outcome:
    store = open_store()
    anchor = store.anchor(now())
    file = _export_file(settings.DATA_DIR)
    lines = export_all(store.head().installation, _told(store.entries(), tell), anchor)
    part = file.with_suffix(".part")
    with part.open("w", encoding="utf-8", newline="\n") as out:
        part.chmod(0o600)
        out.writelines(f"{line}\n" for line in lines)
    part.replace(file)
    return Outcome(message=MessageId("errands.exported"), values=(("file", str(file)),))


def _export_file(folder: Path) -> Path:
    place = folder / "exports"
    place.mkdir(mode=0o700, exist_ok=True)
    return place / f"record-{now():%Y%m%dT%H%M%SZ}.jsonl"


def _told(entries: Iterable[_T], tell: Tell) -> Iterator[_T]:
    """Hand entries on and say how many there were.

    Raises:
        StoppedError: nobody wants them any more.
    """
    for done, entry in enumerate(entries):
        if done % _TELL_EVERY == 0 and not tell(done):
            raise StoppedError
        yield entry


_WAYS: Mapping[ErrandKind, Callable[[Wish, Tell], Outcome]] = MappingProxyType(
    {ErrandKind.IMPROVE: _improve, ErrandKind.VERIFY: _verify, ErrandKind.EXPORT: _export}
)
