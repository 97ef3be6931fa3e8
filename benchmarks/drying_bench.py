"""How many drying estimates come out per second? `python -m benchmarks.drying_bench` prints it.

Each is a whole interval for one batch: one after another as the readable code reckons them, and
thousands at once as a plan needs them, in the air of one night or every one in an air of its own.
CoolProp stands beside it in the same run: its moist air alone, one wet bulb after another. One
core, processor time.
"""

import itertools
import time
from collections.abc import Callable

import CoolProp.CoolProp as reference  # noqa: N813

from sootline.core.basis import Assumptions, Band, quantity
from sootline.core.drying import Cloth, RoomAir
from sootline.core.drying.arrays.columns import Question, columns_of
from sootline.core.drying.arrays.estimates import estimate_columns, estimate_many
from sootline.core.drying.estimating import Surroundings, Wetness, estimate_drying
from sootline.core.drying.moist_air import moist_air
from sootline.core.drying.rates import Batch, Blown
from sootline.core.drying.rooms import balance_room
from sootline.files.practice_tables import load_assumptions

ONE_BY_ONE, AT_ONCE, OWN_AIR, BULBS = 500, 100_000, 20_000, 2000
_TRIES = 3
_WAYS = (
    Blown(flow_m3h=1700.0, heated_to_c=38.0, vented=True, closed=True),
    Blown(flow_m3h=1200.0),
    Blown(),
)


def questions(nights: int, batches: int, table: Assumptions) -> list[Question]:
    """Ask about batches of many weights, at three places in turn, through so many nights."""
    wetness = Wetness(moisture=Band(low=0.5, likely=0.55, high=0.6), measured=True)
    factor = table.band("dry.time_factor")
    ways = itertools.cycle(itertools.product(_WAYS, Cloth))
    asked = []
    for night in range(nights):
        air = RoomAir(
            temp=quantity(f"{15 + 0.001 * night:.3f} °C"),
            humidity=quantity(f"{45 + 0.002 * night:.3f} %"),
            volume=quantity("200 m3"),
            changes=1.0,
        )
        room = balance_room(air, table)
        for number, (place, cloth) in zip(range(batches), ways, strict=False):
            batch = Batch(cloth=cloth, dry_kg=2 + 0.05 * (number % 400))
            around = Surroundings(place=place, room=room, others_kg_h=0.5)
            asked.append(Question(batch=batch, wetness=wetness, around=around, factor=factor))
    return asked


def per_second(count: int, work: Callable[[], object]) -> float:
    """Return how many a second, the best of a few tries."""
    best = float("inf")
    for _ in range(_TRIES):
        began = time.process_time()
        work()
        best = min(best, time.process_time() - began)
    return count / best


def one_by_one(table: Assumptions) -> float:
    """Estimate batches by the readable code."""
    asked = questions(1, ONE_BY_ONE, table)
    return per_second(
        ONE_BY_ONE,
        lambda: [
            estimate_drying(one.batch, one.wetness, one.around, one.factor, table) for one in asked
        ],
    )


def in_columns(nights: int, batches: int, table: Assumptions) -> float:
    """Estimate all rows at once, laid out as columns beforehand."""
    asked = columns_of(questions(nights, batches, table), table)
    return per_second(nights * batches, lambda: estimate_columns(asked, table))


def as_objects(table: Assumptions) -> float:
    """Estimate all at once, from questions to answers as the tasks take them."""
    asked = questions(1, OWN_AIR, table)
    return per_second(OWN_AIR, lambda: estimate_many(asked, table))


def our_bulbs() -> float:
    """Find wet bulbs of many states of air."""
    states = itertools.count()  # never the same twice: answers are kept
    return per_second(
        BULBS,
        lambda: [moist_air(10 + 0.001 * next(states), 0.5, 101_325.0).wet_bulb_c
                 for _ in range(BULBS)],
    )  # fmt: skip


def reference_bulbs() -> float:
    """Find the same wet bulbs with CoolProp."""
    return per_second(
        BULBS,
        lambda: [
            reference.HAPropsSI("B", "T", 283.15 + 0.001 * number, "P", 101_325.0, "R", 0.5)
            for number in range(BULBS)
        ],
    )


def main() -> None:
    """Print the figures."""
    table = load_assumptions()
    print("drying estimates a second, one core:")
    print(f"  one night's air, in columns:     {in_columns(1, AT_ONCE, table):>10,.0f}")
    print(f"  one night's air, as objects:     {as_objects(table):>10,.0f}")
    print(f"  each in an air of its own:       {in_columns(OWN_AIR, 1, table):>10,.0f}")
    print(f"  one by one, the readable code:   {one_by_one(table):>10,.0f}")
    print("wet bulbs a second:")
    print(f"  ours, one by one:                {our_bulbs():>10,.0f}")
    print(f"  CoolProp, one by one:            {reference_bulbs():>10,.0f}")


if __name__ == "__main__":
    main()
