"""Eight ways of changing a kept record behind its back."""

import dataclasses
import json
import random
from collections.abc import Callable
from hashlib import sha256

from sootline.core.ledger import Entry
from sootline.core.ledger.hashing import BEGINNING

Tampering = Callable[[list[Entry], random.Random], list[Entry]]


def _rehashed(entry: Entry, header: str) -> Entry:
    # The hash is worked out here by its definition, as an outsider would.
    digest = sha256(b"\x00" + header.encode()).hexdigest()
    return dataclasses.replace(entry, header=header, hash=digest)


def _other_person(entry: Entry) -> str:
    return json.dumps(json.loads(entry.header) | {"actor": "999"}, ensure_ascii=False,
                      separators=(",", ":"), sort_keys=True)  # fmt: skip


def _place(kept: list[Entry], chance: random.Random) -> int:
    return chance.randrange(len(kept))


def edit_header(kept: list[Entry], chance: random.Random) -> list[Entry]:
    """Put another person's name into a header."""
    at = _place(kept, chance)
    kept[at] = dataclasses.replace(kept[at], header=_other_person(kept[at]))
    return kept


def edit_payload(kept: list[Entry], chance: random.Random) -> list[Entry]:
    """Put other words into a payload."""
    at = _place(kept, chance)
    kept[at] = dataclasses.replace(kept[at], payload='{"said":"it was never worn"}')
    return kept


def edit_and_hash(kept: list[Entry], chance: random.Random) -> list[Entry]:
    """Put another person's name into a header, and make its hash anew."""
    at = _place(kept, chance)
    kept[at] = _rehashed(kept[at], _other_person(kept[at]))
    return kept


def delete(kept: list[Entry], chance: random.Random) -> list[Entry]:
    """Take an entry out of the middle."""
    del kept[chance.randrange(len(kept) - 1)]
    return kept


def swap(kept: list[Entry], chance: random.Random) -> list[Entry]:
    """Exchange two neighbours."""
    at = chance.randrange(len(kept) - 1)
    kept[at], kept[at + 1] = kept[at + 1], kept[at]
    return kept


def flip_bit(kept: list[Entry], chance: random.Random) -> list[Entry]:
    """Flip one bit of a header or a payload."""
    at = _place(kept, chance)
    entry = kept[at]
    part = "payload" if entry.payload and chance.random() < 0.5 else "header"
    raw = bytearray(str(getattr(entry, part)).encode())
    raw[chance.randrange(len(raw))] ^= 1 << chance.randrange(7)
    flipped = raw.decode(errors="surrogateescape")
    changed = {"payload": entry.payload, "header": entry.header, part: flipped}
    kept[at] = dataclasses.replace(entry, payload=changed["payload"], header=str(changed["header"]))
    return kept


def cut_tail(kept: list[Entry], chance: random.Random) -> list[Entry]:
    """Leave out the last entries."""
    return kept[: -chance.randrange(1, len(kept))]


def rewrite(kept: list[Entry], chance: random.Random) -> list[Entry]:
    """Write everything from one entry on anew, so that the chain joins again."""
    at = _place(kept, chance)
    prev = kept[at - 1].hash if at else BEGINNING
    done = kept[:at]
    for entry in kept[at:]:
        fields = json.loads(entry.header) | {"prev": prev, "device": "another"}
        header = json.dumps(fields, ensure_ascii=False, separators=(",", ":"), sort_keys=True)
        done.append(_rehashed(entry, header))
        prev = done[-1].hash
    return done


KINDS: tuple[Tampering, ...] = (edit_header, edit_payload, edit_and_hash, delete, swap, flip_bit,
                                cut_tail, rewrite)  # fmt: skip
# What the chain shows by itself; the other two, and a change of the last entry, need an anchor.
BY_CHAIN = (edit_header, edit_payload, delete, swap, flip_bit)
