"""Who was measured, and whose measures may no longer hold?"""

from zoneinfo import ZoneInfo

from django import forms

from sootline.core.basis import DateSpan, MemberId
from sootline.core.job.jobs import Job
from sootline.core.upkeep.people import Change, Changed, Measured
from sootline.web.entries.fields import SHORT, by_field, choices


class MeasuredForm(forms.Form):
    """Somebody is measured today; a dimension left blank stays as it was."""

    by = by_field()

    def __init__(self, dimensions: list[str], *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        self._dimensions = dimensions
        for dimension in dimensions:
            self.fields[f"d-{dimension}"] = forms.CharField(max_length=SHORT, required=False)

    def measured(self, member: MemberId, job: Job) -> Measured:
        """Return who was measured, by whom, and what came of it."""
        given = self.cleaned_data
        typed = ((one, given[f"d-{one}"].strip()) for one in self._dimensions)
        return Measured(
            member=member,
            on=_today(job),
            by=given["by"].strip(),
            measures=tuple((one, size) for one, size in typed if size),
        )


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
