"""What may be typed when something changed in the wash room?"""

from django import forms

from sootline.tasks.change_wash import Changed, What
from sootline.web.entries.fields import choices

_DAY_MIN = 24 * 60
_NEEDS_MINUTES = (What.LATE, What.DRYER_LATE, What.POWER)


class ChangedForm(forms.Form):
    """What became different, where, and for how many minutes."""

    what = forms.ChoiceField()
    minutes = forms.IntegerField(required=False, min_value=1, max_value=_DAY_MIN)

    def __init__(self, known: object, *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        field = self.fields["what"]
        assert isinstance(field, forms.ChoiceField)
        field.choices = choices(known)

    def clean(self) -> dict[str, object]:
        """Ask for minutes where there is no plan without them."""
        given = super().clean() or {}
        what = str(given.get("what", "")).partition(":")[0]
        if what in _NEEDS_MINUTES and not given.get("minutes") and "minutes" not in self.errors:
            self.add_error("minutes", forms.ValidationError("required", code="required"))
        return given

    def changed(self) -> Changed:
        """Return what became different."""
        what, _, where = str(self.cleaned_data["what"]).partition(":")
        return Changed(what=What(what), where=where, minutes=self.cleaned_data["minutes"])
