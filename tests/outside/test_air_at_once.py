"""The formulae for many states of air at once, against the library for one and against CoolProp.

Source: psychrolib (ASHRAE Fundamentals, chapter 1, ideal gas) and CoolProp (real moist air, ASHRAE
RP-1485), both over temperature, humidity and altitude above freezing; the largest differences are
printed. Tolerances: of the library, what it stops at (0.001 K) and the last digit of a float; of
CoolProp, what an ideal gas differs by.
"""

import itertools

import CoolProp.CoolProp as reference  # noqa: N813
import numpy as np
import pytest

from sootline.core.drying.arrays import air as airs
from sootline.core.drying.hanging import flux_kg_m2h, surface_c
from sootline.core.drying.moist_air import MoistAir, moist_air, pressure_pa, saturation_pa

GRID = tuple(
    itertools.product((5, 10, 15, 20, 25, 30, 35, 40), (0.2, 0.45, 0.7, 0.9, 0.98), (0, 1609, 2500))
)
STATES = tuple(moist_air(temp, share, pressure_pa(high)) for temp, share, high in GRID)
# Cloth near freezing is left to the readable code.
ABOVE = tuple(one for one in STATES if one.wet_bulb_c > 0.5)


def column(states: tuple[MoistAir, ...], name: str) -> airs.Array:
    """Lay one property out as a column."""
    return np.array([[getattr(one, name)] for one in states])


def worst(ours: airs.Array, theirs: list[float]) -> float:
    """Return the largest difference as a share."""
    return float(np.abs(ours[:, 0] / np.array(theirs) - 1).max())


def test_saturation_ratio_and_volume_are_the_librarys(capsys: pytest.CaptureFixture[str]) -> None:
    """The same equations: equal to the last digits."""
    temp, ratio = column(STATES, "temp_c"), column(STATES, "ratio")
    pressure = column(STATES, "pressure_pa")
    found = {
        "saturation": worst(airs.saturation_pa(temp),
                            [saturation_pa(one.temp_c) for one in STATES]),
        "vapour": worst(airs.vapour_pa(ratio, pressure), [one.vapour_pa for one in STATES]),
        "ratio": worst(airs.ratio_of(column(STATES, "vapour_pa"), pressure),
                       [one.ratio for one in STATES]),
        "dry air": worst(airs.dry_kg_m3(temp, ratio, pressure), [one.dry_kg_m3 for one in STATES]),
    }  # fmt: skip
    with capsys.disabled():
        print("\n  against psychrolib: " + ", ".join(f"{k} {v:.1e}" for k, v in found.items()))

    assert max(found.values()) < 1e-9


def test_the_wet_bulb_is_the_librarys_and_coolprops(capsys: pytest.CaptureFixture[str]) -> None:
    """Within what the library stops at; within 0.03 K of real air, as the library is."""
    bulb, _ = airs.wet_bulb(
        column(ABOVE, "temp_c"), column(ABOVE, "ratio"), column(ABOVE, "pressure_pa")
    )
    library = np.array([one.wet_bulb_c for one in ABOVE])
    real = np.array([
        reference.HAPropsSI("B", "T", one.temp_c + 273.15, "P", one.pressure_pa, "R", one.humidity)
        - 273.15
        for one in ABOVE
    ])  # fmt: skip
    ours = float(np.abs(bulb[:, 0] - library).max())
    theirs = float(np.abs(bulb[:, 0] - real).max())
    with capsys.disabled():
        print(f"\n  wet bulb: {ours:.5f} K from psychrolib, {theirs:.4f} K from CoolProp")

    assert ours <= 0.001
    assert theirs <= 0.03


@pytest.mark.parametrize("resistance", [0.0, 15.0])
def test_wet_cloth_is_what_halving_finds(
    resistance: float, capsys: pytest.CaptureFixture[str]
) -> None:
    """The heat balance of the wet surface, by Newton's steps and by halving."""
    flux, surface = airs.flux_kg_m2h(
        column(ABOVE, "temp_c"), column(ABOVE, "vapour_pa"), 3.5, 5.2, resistance
    )
    halved = [flux_kg_m2h(one, 3.5, 5.2, resistance) for one in ABOVE]
    apart = worst(flux, halved)
    with capsys.disabled():
        print(f"\n  flux off wet cloth behind {resistance:g} m2Pa/W: {apart:.1e} apart")

    assert apart < 1e-5
    assert surface[:, 0] == pytest.approx(
        [surface_c(one, 3.5, 5.2, resistance) for one in ABOVE], abs=1e-4
    )
