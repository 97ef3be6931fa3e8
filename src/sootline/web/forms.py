"""What may be typed into the forms, and what does that say?"""

from django import forms

from sootline.core.basis import BagId, ContaminantId, MemberId
from sootline.core.exposure.calls import (
    Answer,
    Decon,
    DeconMethod,
    Done,
    Hazard,
    Presence,
    Zone,
)
from sootline.core.rebuild import Flaw
from sootline.core.rulebook.contaminants import Knowledge
from sootline.web.reading.outlines import is_spot

_LONG, _SHORT = 200, 40
INSIDE_ON_AIR = "inside-on-air"
PLACES = (
    INSIDE_ON_AIR,
    Zone.INSIDE.value,
    Zone.ROOF.value,
    Zone.PUMP.value,
    Zone.OUTSIDE.value,
    Zone.OVERHAUL.value,
    Zone.UNKNOWN.value,
)


def _on_air(places: list[str], before: Presence) -> Answer:
    if INSIDE_ON_AIR in places:
        return Answer.YES
    return Answer.NO if Zone.INSIDE in places else before.on_air


def _choices(values: object) -> list[tuple[str, str]]:
    return [(str(value), str(value)) for value in values]  # type: ignore[attr-defined]


# What a call is told by with one tap; a training fire is a call too.
TRAINING = "training"
KINDS = ("building", "vehicle", "outside", "alarm", "rescue", TRAINING)


class CallForm(forms.Form):
    """What kind of call, when, and who rode."""

    title = forms.CharField(max_length=_LONG, required=False)
    what = forms.ChoiceField(choices=_choices(KINDS), required=False)
    began = forms.TimeField()
    back = forms.TimeField(required=False)
    training = forms.BooleanField(required=False)
    built = forms.IntegerField(required=False, min_value=1700, max_value=2200)
    opened = forms.ChoiceField(choices=_choices(Answer), required=False)
    rode = forms.MultipleChoiceField()

    def __init__(self, members: list[str], *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        rode = self.fields["rode"]
        assert isinstance(rode, forms.MultipleChoiceField)
        rode.choices = _choices(members)

    def clean(self) -> dict[str, object]:
        """Ask what it was, by a tap or in words."""
        given = super().clean() or {}
        if not given.get("what") and not str(given.get("title", "")).strip():
            self.add_error("title", forms.ValidationError("required", code="required"))
        return given


class PersonForm(forms.Form):
    """Where one person was, in what smoke, and what was done on scene."""

    places = forms.MultipleChoiceField(choices=_choices(PLACES))
    smoke = forms.ChoiceField(choices=_choices(Answer), required=False)
    done = forms.ChoiceField(choices=_choices(Done), required=False)
    method = forms.ChoiceField(choices=_choices(DeconMethod), required=False)
    reason = forms.CharField(max_length=_LONG, required=False)
    bag = forms.CharField(max_length=_SHORT, required=False)

    def presence(self, before: Presence) -> Presence:
        """Return what is known of the person now.

        Who was inside on air was inside; "don't know" beside a place keeps the place.
        """
        given = self.cleaned_data
        places = given["places"]
        zones = [Zone.INSIDE if one == INSIDE_ON_AIR else Zone(one) for one in places]
        if zones == [Zone.UNKNOWN]:
            zones = []
        bags = tuple(BagId(one.strip()) for one in given["bag"].split(",") if one.strip())
        return Presence(
            member=before.member,
            zones=tuple(dict.fromkeys(zones)),
            role=before.role,
            on_air=_on_air(places, before),
            smoke=Answer(given["smoke"] or Answer.UNKNOWN),
            opened=Answer.YES if Zone.OVERHAUL in zones else before.opened,
            minutes=before.minutes,
            decon=Decon(
                done=Done(given["done"] or Done.UNKNOWN),
                method=DeconMethod(given["method"] or DeconMethod.UNKNOWN),
                reason=given["reason"].strip() or None,
            ),
            bags=bags,
            worn=before.worn,
        )


class HazardsForm(forms.Form):
    """What may have been at a call: known, suspected, don't know, or not mentioned."""

    def __init__(self, contaminants: list[str], *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        words = [Knowledge.KNOWN, Knowledge.SUSPECTED, Knowledge.UNKNOWN]
        for contaminant in contaminants:
            field = forms.ChoiceField(choices=_choices([*words, ""]), required=False)
            self.fields[contaminant] = field

    def hazards(self, by: str) -> tuple[Hazard, ...]:
        """Return what was said, by whom."""
        return tuple(
            Hazard(
                contaminant=ContaminantId(contaminant),
                knowledge=Knowledge(word),
                said_by=MemberId(by) if by else None,
            )
            for contaminant, word in self.cleaned_data.items()
            if word
        )


class CheckForm(forms.Form):
    """What a hand felt at each point, and what an eye saw."""

    by = forms.CharField(max_length=_SHORT)
    flaws = forms.MultipleChoiceField(choices=_choices(Flaw), required=False)
    spot = forms.CharField(max_length=_LONG, required=False)
    place = forms.CharField(max_length=_LONG, required=False)
    note = forms.CharField(max_length=_LONG, required=False)
    photo = forms.FileField(required=False)

    def __init__(self, points: list[str], *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        for point in points:
            self.fields[point] = forms.ChoiceField(choices=_choices(Answer), required=False)

    @property
    def where(self) -> str:
        """Where it was seen: on the outline, else in somebody's words."""
        given = self.cleaned_data
        return str(given["spot"] if is_spot(given["spot"]) else given["place"].strip())

    def refuse_photo(self) -> None:
        """Say that what came as a photo cannot be kept as one."""
        self.add_error("photo", forms.ValidationError("photo", code="photo"))


class BuildForm(forms.Form):
    """Which parts somebody fitted together, and who looked how the drag device is led."""

    by = forms.CharField(max_length=_SHORT)
    routed_by = forms.CharField(max_length=_SHORT, required=False)
    parts = forms.MultipleChoiceField()

    def __init__(self, parts: list[str], *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        field = self.fields["parts"]
        assert isinstance(field, forms.MultipleChoiceField)
        field.choices = _choices(parts)
