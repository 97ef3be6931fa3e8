"""Does a programme, as it is set, stay within every limit in force? Every finding is listed."""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from sootline.core.basis import (
    Assumptions,
    Bearing,
    Finding,
    Ground,
    MachineId,
    Quantity,
    Standing,
    UnreadableValueError,
    finding,
)
from sootline.core.gear.terms import ResolvedLimit
from sootline.core.machines.drums import Drum, loading_lb_ft3
from sootline.core.machines.grounds import as_entered, by_physics
from sootline.core.machines.spin import force_g, highest_speed_rpm, set_point_g, spread_of_g


@dataclass(frozen=True, kw_only=True)
class WashLimits:
    """The limits in force for a wash, each over every source that speaks."""

    bath: ResolvedLimit
    spin: ResolvedLimit
    ph_low: ResolvedLimit
    ph_high: ResolvedLimit


@dataclass(frozen=True, kw_only=True)
class BathReading:
    """What thermometer and strip or meter read in the bath of one programme; None is not read."""

    washer: MachineId
    programme: str
    bath: Quantity | None = None
    ph: Quantity | None = None


@dataclass(frozen=True, kw_only=True)
class Setting:
    """A programme as it is set or read off; None is not known.

    Args:
        spin: the G its maker states; used where no speed and drum are known.
        speed: the fastest spin.
        bath: the hottest bath.
        ph: of the bath, read by strip or meter.
        load: dry mass of the load.
    """

    washer: MachineId
    programme: str
    spin: Quantity | None = None
    speed: Quantity | None = None
    bath: Quantity | None = None
    ph: Quantity | None = None
    load: Quantity | None = None

    def __post_init__(self) -> None:
        # A programme may leave out its spin; a load of nothing is no load.
        for given, unit in ((self.spin, "G"), (self.speed, "rpm")):
            if given is not None and given.to(unit) < 0:
                raise UnreadableValueError("machine.setting.negative", value=str(given))
        if self.load is not None and self.load.to("kg") <= 0:
            raise UnreadableValueError("machine.setting.amount", value=str(self.load))

    @property
    def names(self) -> dict[str, str]:
        """How findings call it."""
        return {"washer": self.washer, "programme": self.programme}


def check_programme(
    setting: Setting, drum: Drum | None, limits: WashLimits, assumptions: Assumptions
) -> tuple[Finding, ...]:
    """Hold a programme against every limit in force.

    Raises:
        UnreadableValueError: a reading in a unit of something else.
    """
    return (
        *_spin(setting, drum, limits.spin, assumptions),
        *_bath(setting, limits.bath),
        *_acidity(setting, limits),
        *_loading(setting, drum, assumptions),
    )


def _spin(
    setting: Setting, drum: Drum | None, limit: ResolvedLimit, assumptions: Assumptions
) -> Iterator[Finding]:
    if setting.speed is not None and drum is not None:
        yield from _reached(setting, setting.speed, drum, limit, assumptions)
    elif setting.spin is not None:
        yield _stands(setting, "spin", setting.spin, limit)
    else:
        yield finding(
            Bearing.ASKS, "machine.spin.unknown", as_entered("washer.spin"), **setting.names
        )


def _reached(
    setting: Setting, speed: Quantity, drum: Drum, limit: ResolvedLimit, assumptions: Assumptions
) -> Iterator[Finding]:
    """Judge the G that follows from speed and drum; two deviations above must still be within."""
    reached = force_g(drum.diameter_m, float(speed.to("rpm")))
    spread = spread_of_g(*drum.errors(assumptions))
    values = setting.names | {
        "speed": str(speed),
        "g": f"{reached:.1f}",
        "percent": f"{spread * 100:.1f}",
    }
    if limit.binding is None:
        yield finding(Bearing.ASKS, "machine.spin.no_limit", _unset(limit), **values)
        return
    bound, ground = limit.binding
    most = set_point_g(float(bound.values[0].to("G")), spread)
    values |= {
        "limit": str(bound),
        "set_g": str(most),
        "set_speed": str(highest_speed_rpm(drum.diameter_m, most)),
    }
    if limit.stand(_g(reached)) is Standing.BEYOND:
        yield finding(Bearing.FORBIDS, "machine.spin.beyond", ground, **values)
    elif limit.stand(_g(reached * (1 + 2 * spread))) is Standing.BEYOND:
        yield finding(Bearing.FORBIDS, "machine.spin.uncertain", ground, **values)
    else:
        yield finding(Bearing.LIMITS, "machine.spin.within", ground, **values)


def _bath(setting: Setting, limit: ResolvedLimit) -> Iterator[Finding]:
    """Judge the bath in the unit it was entered in."""
    if setting.bath is None:
        yield finding(
            Bearing.ASKS, "machine.bath.unknown", as_entered("washer.bath"), **setting.names
        )
        return
    judged = _stands(setting, "bath", setting.bath, limit)
    yield judged
    if judged.bearing is Bearing.FORBIDS and setting.bath.unit == "°C":
        meant = Quantity(amount=setting.bath.amount, unit="°F")
        if limit.stand(meant) is Standing.WITHIN:
            values = setting.names | {"reading": str(setting.bath), "meant": str(meant)}
            ground = as_entered("washer.bath")
            yield finding(Bearing.ASKS, "machine.bath.other_unit", ground, **values)


def _acidity(setting: Setting, limits: WashLimits) -> Iterator[Finding]:
    if setting.ph is None:
        yield finding(Bearing.ASKS, "machine.ph.unknown", as_entered("washer.ph"), **setting.names)
        return
    yield _stands(setting, "ph", setting.ph, limits.ph_low)
    yield _stands(setting, "ph", setting.ph, limits.ph_high)


def _loading(setting: Setting, drum: Drum | None, assumptions: Assumptions) -> Iterator[Finding]:
    """Say how densely the drum is filled; bulk fills it first, so this never permits a load."""
    if drum is None or setting.load is None or drum.volume_l is None:
        return
    usual = assumptions.row("wash.loading_density")
    density = loading_lb_ft3(setting.load, drum.volume_l)
    values = setting.names | {
        "load": str(setting.load),
        "volume": f"{drum.volume_l:.0f}",
        "density": f"{density:.1f}",
        "low": f"{usual.band.low:g}",
        "high": f"{usual.band.high:g}",
    }
    dense = density > usual.band.high
    message = "machine.load.dense" if dense else "machine.load.filled"
    yield finding(Bearing.WARNS if dense else Bearing.NOTES, message, usual.ground, **values)


def _stands(setting: Setting, word: str, reading: Quantity, limit: ResolvedLimit) -> Finding:
    """Hold a reading as entered against a limit."""
    values = setting.names | {"reading": str(reading)}
    standing = limit.stand(reading)
    if standing is Standing.UNKNOWN:
        return finding(Bearing.ASKS, f"machine.{word}.no_limit_for", _unset(limit), **values)
    beyond = [one for one in limit.limits if one[0].stand(reading) is Standing.BEYOND]
    bound, ground = beyond[0] if beyond else limit.limits[0]
    values |= {"limit": str(bound)}
    if beyond:
        return finding(Bearing.FORBIDS, f"machine.{word}.past", ground, **values)
    return finding(Bearing.LIMITS, f"machine.{word}.inside", ground, **values)


def _unset(limit: ResolvedLimit) -> Ground:
    if limit.unset:
        return limit.unset[0]
    return by_physics(limit.topic, "no source in force gives a number")


def _g(amount: float) -> Quantity:
    return Quantity(amount=Decimal(f"{amount:.3f}"), unit="G")
