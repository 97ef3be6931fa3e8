"""The invented department's night with its wash room read, for tests of washing and drying."""

from dataclasses import replace
from functools import cache

from sootline.core.basis import DateSpan, MachineId, PlaceId, quantity
from sootline.core.drying import Fan, Readings, RoomAir
from sootline.core.job.jobs import Job
from sootline.core.machines import BathReading, Drum, LabResult, SpinSpeed, WeighedSpin
from sootline.wiring.demo import demo_job

DRUM = MachineId("drum 1")


@cache
def night() -> Job:
    """Return the demo job without drying times of its own, and with everything read off."""
    job = demo_job()
    room = replace(job.wash_room, drying_times=())
    return replace(job, wash_room=room, readings=readings())


def readings(*, humidity: str = "60 %", at: str = "90 G") -> Readings:
    """Read the room, its fan, one drum, one bath and one load."""
    return Readings(
        drums=(
            Drum(
                washer=DRUM, diameter=quantity("36 in"), depth=quantity("20 in"),
                speeds=(SpinSpeed(programme="1 shells", speed=quantity("430 rpm")),),
            ),
        ),
        baths=(
            BathReading(
                washer=DRUM, programme="1 shells", bath=quantity("107 °F"), ph=quantity("pH 9.1")
            ),
        ),
        scales=(
            WeighedSpin(
                washer=DRUM, dry=quantity("5.00 kg"), wet=quantity("7.75 kg"),
                scale_error=quantity("0.05 kg"), at=quantity(at) if at else None,
            ),
        ),
        air=RoomAir(
            temp=quantity("72 °F"), humidity=quantity(humidity), altitude=quantity("1200 ft"),
            volume=quantity("7000 ft3"), changes=1.0,
        ),
        fans=(Fan(place=PlaceId("cabinet"), flow=quantity("600 cfm"), vented=True),),
        laboratory=(
            LabResult(
                on=DateSpan.parse("2025-11-04"), by="Quern Laboratory", text="swatch kit, passed"
            ),
        ),
    )  # fmt: skip
