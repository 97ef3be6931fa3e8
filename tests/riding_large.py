"""A department of any size after a bad night: everything drawn, everything invented.

`python -m tests.riding_large SOILED SPARES LOANS` answers for 600 members and prints the seconds of
processor time, how many ride and how many could at the most.
"""

import random
import sys
from time import process_time

from sootline.core.basis import MemberId, MinuteSpan
from sootline.core.gear import Element
from sootline.core.riding import Rider, Situation, Slot, Unit, who_rides
from tests.riding_gear import EVERY_SLOT, FIT, NOW

READY = MinuteSpan.exactly(0)
ELEMENTS: dict[Slot, tuple[Element, ...]] = {
    slot: (Element.COAT, Element.TROUSERS) if slot is Slot.SET else (Element(slot),)
    for slot in EVERY_SLOT
}
DIMENSIONS: dict[Slot, tuple[str, ...]] = {
    Slot.SET: ("chest", "waist", "inseam"),
    Slot.HOOD: (),
    Slot.GLOVES: ("hand",),
    Slot.BOOTS: ("foot",),
    Slot.HELMET: ("head",),
    Slot.MASK: ("mask",),
}
Measures = tuple[tuple[str, str], ...]


def large_department(
    people: int, seed: int, *, soiled: float, spares: float, loans: int = 0
) -> Situation:
    """Return a situation in which part of everybody's gear is in the wash.

    Args:
        soiled: the share of people whose gear met the fire; four in five of their pieces did.
        spares: how many pieces of each kind are on the rack, as a share of the soiled people.
        loans: how many sets come in 45 minutes.
    """
    draw = random.Random(seed)  # noqa: S311 - repeatable cases, nothing secret
    riders, units = [], []
    for n in range(people):
        name = MemberId(f"M{n:03}")
        dirty = draw.random() < soiled
        riders.append(Rider(id=name, interior=True, needs=EVERY_SLOT, measures=_measures(draw)))
        for slot in EVERY_SLOT:
            back = None if dirty and draw.random() < 0.8 else READY
            units.append(_unit(f"{name}-{slot}", slot, (), back, name))
    for slot in EVERY_SLOT:
        for n in range(int(people * soiled * spares)):
            units.append(_unit(f"spare-{slot}-{n}", slot, _measures(draw), READY))
    for n in range(loans):
        units.append(_unit(f"loan-{n}", Slot.SET, _measures(draw), MinuteSpan.exactly(45)))
    return Situation(
        now=NOW, riders=tuple(riders), units=tuple(units), fit=FIT, one_size=(Element.HOOD,)
    )


def _unit(
    name: str,
    slot: Slot,
    measures: Measures,
    back: MinuteSpan | None,
    holder: MemberId | None = None,
) -> Unit:
    size = tuple(pair for pair in measures if pair[0] in DIMENSIONS[slot])
    return Unit(
        id=name,
        slot=slot,
        elements=ELEMENTS[slot],
        size=size,
        holder=holder,
        own=holder is not None,
        back=back,
    )


def _measures(draw: random.Random) -> Measures:
    """Draw a body, or a piece made for one; the sizes lie as in a usual roster."""
    chest = draw.choice([34, 36, 38, 40, 40, 42, 42, 44, 44, 46, 48, 50, 52])
    sizes = {
        "chest": chest,
        "waist": chest - 8 + draw.choice([0, 0, 2]),
        "inseam": draw.choice([26, 28, 30, 30, 32, 34]),
        "hand": draw.choice(["XS", "S", "M", "M", "L", "L", "XL", "XXL"]),
        "foot": draw.choice([7, 8, 8.5, 9, 9.5, 10, 10, 10.5, 11, 11.5, 12, 13]),
        "head": draw.choice(["regular", "regular", "large"]),
        "mask": draw.choice(["S", "M", "M", "L"]),
    }
    return tuple((name, str(size)) for name, size in sizes.items())


if __name__ == "__main__":
    night = large_department(
        600, 1, soiled=float(sys.argv[1]), spares=float(sys.argv[2]), loans=int(sys.argv[3])
    )
    began = process_time()
    answer = who_rides(night)
    print(process_time() - began, len(answer.now.can), answer.most_now)
