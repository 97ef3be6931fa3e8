"""Shipments whose truth is known: what was sent, what each piece that came back really is.

Everything here is invented. Some pieces stay away, some come with no number or one that was read
wrongly, some are ours and were not sent, some are another department's, marked or not, and some of
those wear one of our own numbers.
"""

import datetime as dt
import random
from dataclasses import dataclass

from sootline.core.basis import ComponentId, KindId
from sootline.core.gear import Component
from sootline.core.upkeep.contractor import Manifest, Receipt, Received, Sent, Service

AT = dt.datetime(2026, 2, 2, 9, tzinfo=dt.UTC)
_KINDS = ("coat-shell", "coat-liner", "trouser-shell", "trouser-liner", "hood")
_SLIPS = {"0": "O", "1": "I", "5": "S", "8": "B"}


@dataclass(frozen=True, kw_only=True)
class Shipped:
    """A shipment and its truth.

    Args:
        truth: for each piece of the delivery, which component of ours it truly is; None is
            another department's.
        plain: places of pieces of ours that were sent and whose number was read as it stands.
    """

    manifest: Manifest
    receipt: Receipt
    register: tuple[Component, ...]
    truth: tuple[ComponentId | None, ...]
    plain: tuple[int, ...]


def seeded_shipment(seed: int) -> Shipped:
    """Make one shipment."""
    chance = random.Random(seed)  # noqa: S311
    register = tuple(
        Component(id=ComponentId(f"{1000 + 3 * n:04}"), kind=KindId(chance.choice(_KINDS)))
        for n in range(40)
    )
    sent = chance.sample(register, chance.randrange(5, 20))
    rest = [one for one in register if one not in sent]
    came: list[tuple[ComponentId | None, Received, bool]] = []
    for one in sent:
        if chance.random() < 0.85:
            came.append(_ours(one, chance))
    for one in chance.sample(rest, chance.randrange(3)):
        came.append((one.id, Received(read=one.id, kind=one.kind), False))
    came += [_foreign(register, chance) for _ in range(chance.randrange(4))]
    chance.shuffle(came)
    services = (Service.ADVANCED_CLEANING,)
    manifest = Manifest(
        id=f"s{seed}",
        provider="Mendwell",
        at=AT,
        by="118",
        pieces=tuple(Sent(component=one.id, services=services) for one in sent),
    )
    pieces = tuple(piece for _, piece, _ in came)
    receipt = Receipt(manifest=manifest.id, at=AT + dt.timedelta(days=9), by="118", pieces=pieces)
    return Shipped(
        manifest=manifest,
        receipt=receipt,
        register=register,
        truth=tuple(one for one, _, _ in came),
        plain=tuple(place for place, (_, _, plain) in enumerate(came) if plain),
    )


def _ours(one: Component, chance: random.Random) -> tuple[ComponentId, Received, bool]:
    """Return a piece that was sent, with its number as somebody read it."""
    kind = one.kind if chance.random() < 0.7 else None
    way = chance.randrange(10)
    if way == 0:
        return one.id, Received(kind=kind), False
    if way == 1:
        read = "".join(_SLIPS.get(sign, sign) for sign in one.id)
        return one.id, Received(read=read, kind=kind), read == one.id
    if way == 2:
        return one.id, Received(read=f"{one.id[:-1]}?", kind=kind), False
    return one.id, Received(read=f" {one.id} ", kind=kind), True


def _foreign(
    register: tuple[Component, ...], chance: random.Random
) -> tuple[ComponentId | None, Received, bool]:
    """Return another department's piece; it may wear a number of ours."""
    twin = chance.choice(register)
    way = chance.randrange(3)
    if way == 0:
        return None, Received(read=twin.id, marked="Ostrey Fire"), False
    if way == 1:
        other = next(kind for kind in _KINDS if kind != twin.kind)
        return None, Received(read=twin.id, kind=KindId(other)), False
    return None, Received(read=f"OF-{chance.randrange(100, 999)}"), False
