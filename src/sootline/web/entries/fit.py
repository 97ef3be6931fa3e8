"""Who was measured, and whose measures may no longer hold?"""

from zoneinfo import ZoneInfo

from django import forms

from sootline.core.basis import DateSpan, MemberId
from sootline.core.job.jobs import Job
from sootline.core.upkeep.people import Change, Changed, Measured
from sootline.web.entries.fields import SHORT, by_field, choices


class MeasuredForm(forms.Form):
    """Somebody was measured today."""

    member = forms.CharField(max_length=SHORT)
    by = by_field()

    def measured(self, job: Job) -> Measured:
        """Return who was measured, by whom."""
        given = self.cleaned_data
        return Measured(member=MemberId(given["member"]), on=_today(job), by=given["by"].strip())


class ChangedForm(forms.Form):
    """Somebody's measures may no longer hold; no more than that is asked."""

    member = forms.ChoiceField()
    change = forms.ChoiceField(choices=choices(Change))

    def __init__(self, members: list[str], *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        field = self.fields["member"]
        assert isinstance(field, forms.ChoiceField)
        field.choices = choices(members)

    def changed(self, job: Job) -> Changed:
        """Return the change that was reported."""
        given = self.cleaned_data
        return Changed(
            member=MemberId(given["member"]), change=Change(given["change"]), on=_today(job)
        )


def _today(job: Job) -> DateSpan:
    return DateSpan.day(job.now.astimezone(ZoneInfo(job.department.zone)).date())
