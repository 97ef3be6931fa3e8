"""How many drying estimates come out per second? `python -m benchmarks.drying_bench` prints it.

Each is a whole interval for one batch of another weight at one heated cabinet in one room. CoolProp
stands beside it in the same run: its moist air alone, one wet bulb after another.
"""

import time

import CoolProp.CoolProp as reference  # noqa: N813

from sootline.core.basis import Band, quantity
from sootline.core.drying import Cloth, RoomAir
from sootline.core.drying.estimating import Surroundings, Wetness, estimate_drying
from sootline.core.drying.moist_air import moist_air
from sootline.core.drying.rates import Batch, Blown
from sootline.core.drying.rooms import balance_room
from sootline.files.practice_tables import load_assumptions

ESTIMATES, BULBS = 500, 2000


def estimates_per_second() -> float:
    """Estimate batches of growing weight."""
    table = load_assumptions()
    air = RoomAir(
        temp=quantity("20 °C"), humidity=quantity("55 %"), volume=quantity("200 m3"), changes=1.0
    )
    cabinet = Blown(flow_m3h=1700.0, heated_to_c=38.0, vented=True, closed=True)
    around = Surroundings(place=cabinet, room=balance_room(air, table), others_kg_h=0.5)
    wetness = Wetness(moisture=Band(low=0.5, likely=0.55, high=0.6), measured=True)
    factor = table.band("dry.time_factor")
    began = time.perf_counter()
    for number in range(ESTIMATES):
        batch = Batch(cloth=Cloth.SHELL, dry_kg=5 + 0.05 * number)
        estimate_drying(batch, wetness, around, factor, table)
    return ESTIMATES / (time.perf_counter() - began)


def ours_per_second() -> float:
    """Find wet bulbs of many states of air."""
    began = time.perf_counter()
    for number in range(BULBS):
        _ = moist_air(10 + 0.01 * number, 0.5, 101_325.0).wet_bulb_c
    return BULBS / (time.perf_counter() - began)


def reference_per_second() -> float:
    """Find the same wet bulbs with CoolProp."""
    began = time.perf_counter()
    for number in range(BULBS):
        reference.HAPropsSI("B", "T", 283.15 + 0.01 * number, "P", 101_325.0, "R", 0.5)
    return BULBS / (time.perf_counter() - began)


def main() -> None:
    """Print the three figures."""
    print(f"drying estimates: {estimates_per_second():,.0f} a second")
    print(f"wet bulbs:        {ours_per_second():,.0f} a second")
    print(f"  with CoolProp:  {reference_per_second():,.0f} a second")


if __name__ == "__main__":
    main()
