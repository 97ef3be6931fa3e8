"""What may be typed on the page that is kept open for when there is no signal?"""

from django import forms

from sootline.core.basis import BagId, MemberId
from sootline.core.exposure.calls import Presence
from sootline.core.rulebook import Decider
from sootline.tasks.deeds import WashStep
from sootline.web.forms import PLACES, PersonForm

_LONG, _SHORT = 200, 40
DECIDERS = (Decider.SAFETY_OFFICER, Decider.GEAR_OFFICER, Decider.CHIEF)
STEPS = {
    "start": WashStep.STARTED,
    "end": WashStep.ENDED,
    "fail": WashStep.FAILED,
    "by-hand": WashStep.BY_HAND,
    "hang": WashStep.HUNG,
}


class LoadForm(forms.Form):
    """How far a load came, with the pieces that its card named on that page."""

    load = forms.IntegerField(min_value=1, max_value=999)
    deed = forms.ChoiceField(choices=[(name, name) for name in STEPS])
    pieces = forms.MultipleChoiceField()
    where = forms.CharField(max_length=_LONG)
    dries = forms.CharField(max_length=_LONG, required=False)
    said = forms.CharField(max_length=_LONG, required=False)

    def __init__(self, pieces: list[str], *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        field = self.fields["pieces"]
        assert isinstance(field, forms.MultipleChoiceField)
        field.choices = [(one, one) for one in pieces]


class HoldForm(forms.Form):
    """Which piece waits, for whose decision, and why."""

    piece = forms.ChoiceField()
    said = forms.CharField(max_length=_LONG)
    decider = forms.ChoiceField(choices=[(one.value, one.value) for one in DECIDERS])
    by = forms.CharField(max_length=_SHORT)

    def __init__(self, pieces: list[str], *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        field = self.fields["piece"]
        assert isinstance(field, forms.ChoiceField)
        field.choices = [(one, one) for one in pieces]


class WhereForm(forms.Form):
    """Where one of those who rode was, in one word, and which bag the gear is in."""

    place = forms.ChoiceField(choices=[(one, one) for one in PLACES], required=False)
    bag = forms.CharField(max_length=_SHORT, required=False)

    def presence(self, member: MemberId) -> Presence | None:
        """Return what is known of one person; None where nothing was said."""
        given = self.cleaned_data
        if not given["place"]:
            bag = given["bag"].strip()
            return Presence(member=member, bags=(BagId(bag),)) if bag else None
        form = PersonForm({"places": [given["place"]], "bag": given["bag"]})
        form.full_clean()
        return form.presence(Presence(member=member))
