"""Limits, drums and settings in few words, for tests of washers."""

from sootline.core.basis import (
    Confidence,
    EditionId,
    Ground,
    MachineId,
    RuleId,
    Side,
    parse_limit,
    quantity,
)
from sootline.core.gear import ResolvedLimit
from sootline.core.machines import Drum, Setting, SpinSpeed, WashLimits
from sootline.files.practice_tables import load_assumptions

TABLE = load_assumptions()
GROUND = Ground(
    rule=RuleId("test"),
    edition=EditionId("invented/1"),
    source="invented for a test",
    confidence=Confidence.STATED,
)


def limit(topic: str, *texts: str, side: Side = Side.AT_MOST) -> ResolvedLimit:
    """Make a resolved limit, strictest first; without texts nobody states one."""
    stated = tuple((parse_limit(text, side), GROUND) for text in texts)
    return ResolvedLimit(topic=topic, limits=stated)


LIMITS = WashLimits(
    bath=limit("wash.bath_temp", "105 °F / 40 °C"),
    spin=limit("wash.extraction", "100 G"),
    ph_low=limit("wash.ph_low", "pH 6.0", side=Side.AT_LEAST),
    ph_high=limit("wash.ph_high", "pH 10.5"),
)
NO_LIMITS = WashLimits(
    bath=limit("wash.bath_temp"),
    spin=ResolvedLimit(topic="wash.extraction", limits=(), unset=(GROUND,)),
    ph_low=limit("wash.ph_low", side=Side.AT_LEAST),
    ph_high=limit("wash.ph_high"),
)


def drum(diameter: str = "36 in", depth: str = "", speed: str = "") -> Drum:
    """Make a drum, with the speed of programme 1 where one is given."""
    speeds = (SpinSpeed(programme="1", speed=quantity(speed)),) if speed else ()
    return Drum(
        washer=MachineId("W"),
        diameter=quantity(diameter),
        depth=quantity(depth) if depth else None,
        speeds=speeds,
    )


def setting(
    *, spin: str = "", speed: str = "", bath: str = "", ph: str = "", load: str = ""
) -> Setting:
    """Make a setting of programme 1; what is left out is not known."""
    given = [quantity(text) if text else None for text in (spin, speed, bath, ph, load)]
    return Setting(
        washer=MachineId("W"), programme="1", spin=given[0], speed=given[1], bath=given[2],
        ph=given[3], load=given[4],
    )  # fmt: skip
