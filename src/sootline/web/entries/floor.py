"""What may be typed about holds, surveys, disinfection, guests' gear, rulings and a handover?"""

from django import forms

from sootline.core.rebuild import Next
from sootline.core.rulebook.contaminants import Knowledge
from sootline.web.entries.fields import choices

_LONG, _SHORT = 200, 40
# What a person may decide after a check that found something, the least work first.
RULINGS = (Next.DRY_ON, Next.REPAIR, Next.WASH_AGAIN, Next.HOLD, Next.OUT)
GUEST_KINDS = (
    "coat-shell",
    "coat-liner",
    "trouser-shell",
    "trouser-liner",
    "hood",
    "gloves",
    "boots-leather",
    "boots-rubber",
    "helmet-shell",
)
FOUND = (Knowledge.ABSENT, Knowledge.KNOWN)


class PiecesForm(forms.Form):
    """Which pieces, by whom."""

    pieces = forms.MultipleChoiceField()
    by = forms.CharField(max_length=_SHORT)

    def __init__(self, pieces: object, *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        field = self.fields["pieces"]
        assert isinstance(field, forms.MultipleChoiceField)
        field.choices = choices(pieces)


class HoldForm(PiecesForm):
    """Who ends a hold, in which office, and what was decided."""

    office = forms.ChoiceField()
    said = forms.CharField(max_length=_LONG)

    def __init__(self, pieces: object, offices: object, *args: object, **kwargs: object) -> None:
        super().__init__(pieces, *args, **kwargs)
        field = self.fields["office"]
        assert isinstance(field, forms.ChoiceField)
        field.choices = choices(offices)


class DisinfectedForm(PiecesForm):
    """With what, and how long it acted."""

    product = forms.CharField(max_length=_SHORT)
    minutes = forms.IntegerField(min_value=1, max_value=24 * 60)


class SurveyForm(forms.Form):
    """What a survey or a measurement found, and who signed it."""

    found = forms.ChoiceField(choices=choices(FOUND))
    by = forms.CharField(max_length=_SHORT)


class ElsewhereForm(PiecesForm):
    """How it was washed, as far as anybody knows."""

    said = forms.CharField(max_length=_LONG, required=False)


class GuestsForm(forms.Form):
    """Whose gear came along, and what of it."""

    department = forms.CharField(max_length=_SHORT)
    wearer = forms.CharField(max_length=_SHORT, required=False)
    kinds = forms.MultipleChoiceField(choices=choices(GUEST_KINDS))
    bag = forms.CharField(max_length=_SHORT, required=False)


class GuestsBackForm(PiecesForm):
    """Who of the other department took it."""

    to = forms.CharField(max_length=_SHORT)


class RulingForm(forms.Form):
    """What comes next for a piece, who decides, and why or where."""

    next = forms.ChoiceField(choices=choices(RULINGS))
    by = forms.CharField(max_length=_SHORT)
    said = forms.CharField(max_length=_LONG)


class HandoverForm(forms.Form):
    """Who hands over to whom."""

    giver = forms.CharField(max_length=_SHORT)
    taker = forms.CharField(max_length=_SHORT)
    said = forms.CharField(max_length=_LONG, required=False)

    def clean_taker(self) -> str:
        """Refuse somebody who hands over to themselves."""
        taker = str(self.cleaned_data["taker"]).strip()
        if taker == str(self.cleaned_data.get("giver", "")).strip():
            raise forms.ValidationError("same", code="same")
        return taker
