"""What was counted on the shelf, and what was done to a machine?"""

from collections.abc import Sequence
from dataclasses import replace
from zoneinfo import ZoneInfo

from django import forms

from sootline.core.basis import DateSpan, MachineId, Quantity, UnreadableValueError
from sootline.core.job.jobs import Job
from sootline.core.upkeep.stores import Chore, LogEntry, Supply
from sootline.web.entries.fields import SHORT, SpanField, by_field, choices


class CountForm(forms.Form):
    """How much is left of one thing in store."""

    supply = forms.CharField(max_length=SHORT)
    count = forms.IntegerField(min_value=0, max_value=100_000)
    by = by_field()

    def counted(self, supply: Supply, job: Job) -> Supply:
        """Return the thing as counted today."""
        given = self.cleaned_data
        return replace(
            supply, count=given["count"], counted_by=given["by"].strip(), counted=_today(job)
        )


class NewSupplyForm(forms.Form):
    """One more thing in store, or one with another expiry."""

    name = forms.CharField(max_length=SHORT)
    count = forms.IntegerField(min_value=0, max_value=100_000)
    minimum = forms.IntegerField(min_value=0, max_value=100_000, required=False)
    unit = forms.CharField(max_length=SHORT, required=False)
    expires = SpanField()
    by = by_field()

    def supply(self, job: Job) -> Supply:
        """Return the thing, under a number of its own."""
        given = self.cleaned_data
        taken = {one.id for one in job.upkeep.supplies}
        number = next(n for n in range(1, len(taken) + 2) if f"s{n}" not in taken)
        return Supply(
            id=f"s{number}",
            name=given["name"].strip(),
            count=given["count"],
            minimum=given["minimum"] or 0,
            unit=given["unit"].strip(),
            expires=given["expires"],
            counted_by=given["by"].strip(),
            counted=_today(job),
        )


class LogForm(forms.Form):
    """What was done to which machine, with a temperature where one was taken."""

    machine = forms.ChoiceField()
    chore = forms.ChoiceField(choices=choices(Chore))
    reading = forms.CharField(max_length=SHORT, required=False)
    by = by_field()

    def __init__(self, machines: Sequence[str], *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        field = self.fields["machine"]
        assert isinstance(field, forms.ChoiceField)
        field.choices = choices(machines)

    def clean_reading(self) -> Quantity | None:
        """Read the temperature, with its unit."""
        text = str(self.cleaned_data["reading"]).strip()
        try:
            return Quantity.parse(text) if text else None
        except UnreadableValueError as error:
            raise forms.ValidationError(text, code="invalid") from error

    def entry(self, job: Job) -> LogEntry:
        """Return the line of the log."""
        given = self.cleaned_data
        return LogEntry(
            machine=MachineId(given["machine"]),
            chore=Chore(given["chore"]),
            on=_today(job),
            by=given["by"].strip(),
            reading=given["reading"],
        )


def _today(job: Job) -> DateSpan:
    return DateSpan.day(job.now.astimezone(ZoneInfo(job.department.zone)).date())
