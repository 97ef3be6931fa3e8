"""What was read off in the wash room, on thermometer, hygrometer, strip and scale?"""

import datetime as dt
from zoneinfo import ZoneInfo

from django import forms

from sootline.core.basis import DateSpan, MachineId, PlaceId, Quantity
from sootline.core.drying import Cloth, Fan, RoomAir, TakenDown, WeighedIn
from sootline.core.job.jobs import Job
from sootline.core.machines import BathReading, LabResult
from sootline.web.entries.fields import SHORT, by_field, choices, day_field, words_field

DEGREES = ("°F", "°C")
MASSES = ("lb", "kg")
FLOWS = ("cfm", "m3/h")
_DIGITS, _PLACES = 8, 2
_DAYS = 4


def figure(*, required: bool = True) -> forms.DecimalField:
    """Ask for a figure; whether it can be is asked where its unit is known."""
    return forms.DecimalField(max_digits=_DIGITS, decimal_places=_PLACES, required=required)


def unit(signs: tuple[str, ...]) -> forms.ChoiceField:
    """Ask for the unit beside a figure."""
    return forms.ChoiceField(choices=choices(signs))


class QuantityField(forms.CharField):
    """A figure with its unit, typed as one ("5600 ft3")."""

    def __init__(self, *, required: bool = False) -> None:
        super().__init__(max_length=SHORT, required=required)


class AirForm(forms.Form):
    """The air of the drying room, and of what comes in when it is opened."""

    temp = figure()
    humidity = figure()
    outside_temp = figure(required=False)
    outside_humidity = figure(required=False)
    degrees = unit(DEGREES)
    volume = QuantityField()
    altitude = QuantityField()
    changes = forms.FloatField(required=False)
    dehumidifier = forms.FloatField(required=False)

    def reading(self, job: Job) -> RoomAir:  # noqa: ARG002 - every form of readings is asked alike
        """Return the air as read.

        Raises:
            UnreadableValueError: what no room has.
        """
        given = self.cleaned_data
        outside = given["outside_temp"], given["outside_humidity"]
        return RoomAir(
            temp=self._in(given["temp"], given["degrees"]),
            humidity=self._in(given["humidity"], "%"),
            altitude=Quantity.parse(given["altitude"] or "0 m"),
            volume=Quantity.parse(given["volume"]) if given["volume"] else None,
            changes=given["changes"],
            supply_temp=None if outside[0] is None else self._in(outside[0], given["degrees"]),
            supply_humidity=None if outside[1] is None else self._in(outside[1], "%"),
            dehumidifier_kg_h=given["dehumidifier"] or 0.0,
        )

    def _in(self, amount: object, sign: str) -> Quantity:
        return Quantity.parse(f"{amount} {sign}")


class FanForm(forms.Form):
    """What the fan of one place moves, and whether that leaves the building."""

    fan = forms.ChoiceField()
    flow = figure()
    flow_unit = unit(FLOWS)
    vented = forms.BooleanField(required=False)

    def __init__(self, places: list[str], *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        _offer(self, "fan", places)

    def reading(self, job: Job) -> Fan:  # noqa: ARG002 - as above
        """Return the fan.

        Raises:
            UnreadableValueError: a flow that cannot be.
        """
        given = self.cleaned_data
        return Fan(
            place=PlaceId(given["fan"]),
            flow=Quantity.parse(f"{given['flow']} {given['flow_unit']}"),
            vented=given["vented"],
        )


class WeighInForm(forms.Form):
    """A batch is hung up wet, weighed."""

    place = forms.ChoiceField()
    cloth = forms.ChoiceField(choices=choices(Cloth))
    dry = figure()
    wet = figure()
    mass = unit(MASSES)
    at = forms.TimeField()

    def __init__(self, places: list[str], *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        _offer(self, "place", places)

    def reading(self, job: Job) -> WeighedIn:
        """Return the batch, hung at the last such time of day.

        Raises:
            UnreadableValueError: weights that cannot be, or no air was read.
        """
        given, air = self.cleaned_data, job.readings.air
        assert air is not None  # the form is offered beside the air as it was read
        began = _moment(given["at"], job)
        began -= dt.timedelta(days=began > job.now)
        taken = {one.id for one in job.readings.hanging}
        number = next(
            n for n in range(1, len(taken) + 2) if f"{began:%m-%d %H:%M}/{n}" not in taken
        )
        return WeighedIn(
            id=f"{began:%m-%d %H:%M}/{number}",
            place=PlaceId(given["place"]),
            cloth=Cloth(given["cloth"]),
            dry=Quantity.parse(f"{given['dry']} {given['mass']}"),
            start=Quantity.parse(f"{given['wet']} {given['mass']}"),
            began=began,
            air=air,
        )


class TakeDownForm(forms.Form):
    """A batch is taken down: weighed again, felt dry by somebody, or both."""

    batch = forms.ChoiceField()
    end = figure(required=False)
    mass = unit(MASSES)
    at = forms.TimeField()
    by = by_field()
    felt_dry = forms.BooleanField(required=False)

    def __init__(self, batches: list[str], *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        _offer(self, "batch", batches)

    def reading(self, job: Job) -> TakenDown:
        """Return what came down, at such a time of day after it was hung, the nearest to now.

        Raises:
            UnreadableValueError: neither a weight nor a hand says that it is dry.
        """
        given = self.cleaned_data
        hung = next(one for one in job.readings.hanging if one.id == given["batch"])
        first = _moment(given["at"], job) - dt.timedelta(days=_DAYS)
        days = (first + dt.timedelta(days=day) for day in range(2 * _DAYS))
        after = [one for one in days if one > hung.began]
        end = given["end"]
        return TakenDown(
            id=hung.id,
            at=min(after, key=lambda one: abs(one - job.now)),
            by=given["by"].strip(),
            end=None if end is None else Quantity.parse(f"{end} {given['mass']}"),
            felt_dry=given["felt_dry"],
        )


class BathForm(forms.Form):
    """What thermometer and strip read in the bath of one programme."""

    programme = forms.ChoiceField()
    bath = figure(required=False)
    degrees = unit(DEGREES)
    ph = figure(required=False)

    def __init__(self, programmes: list[str], *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        _offer(self, "programme", programmes)

    def reading(self, job: Job) -> BathReading:  # noqa: ARG002 - as above
        """Return what was read.

        Raises:
            UnreadableValueError: what no bath has.
        """
        given = self.cleaned_data
        washer, _, programme = given["programme"].partition(" · ")
        bath, ph = given["bath"], given["ph"]
        return BathReading(
            washer=MachineId(washer),
            programme=programme,
            bath=None if bath is None else Quantity.parse(f"{bath} {given['degrees']}"),
            ph=None if ph is None else Quantity.parse(f"{ph} pH"),
        )


class ResultForm(forms.Form):
    """What a laboratory or a verification kit reported of a machine, in its own words."""

    on = day_field(required=True)
    by = by_field()
    text = words_field(required=True)

    def reading(self, job: Job) -> LabResult:  # noqa: ARG002 - as above
        """Return the result as it was reported."""
        given = self.cleaned_data
        return LabResult(on=DateSpan.day(given["on"]), by=given["by"], text=given["text"])


def _offer(form: forms.Form, name: str, values: list[str]) -> None:
    field = form.fields[name]
    assert isinstance(field, forms.ChoiceField)
    field.choices = choices(values)


def _moment(time: dt.time, job: Job) -> dt.datetime:
    """Return a time of day on the department's clocks, on the day of the job's moment."""
    local = job.now.astimezone(ZoneInfo(job.department.zone))
    return local.replace(hour=time.hour, minute=time.minute, second=0, microsecond=0)
