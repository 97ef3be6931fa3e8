"""What does a recall notice say, and what did somebody read or do for it?"""

from collections.abc import Sequence

from django import forms

from sootline.core.basis import ComponentId, DateSpan, KindId, UnreadableValueError
from sootline.core.exposure.calls import Answer
from sootline.core.job.jobs import Job
from sootline.core.upkeep.recalls import Action, LotSpan, Notice, Sighting, Step
from sootline.web.entries.fields import (
    LONG,
    SHORT,
    SpanField,
    by_field,
    choices,
    words_field,
)

_MANY = 2000
_BEGINNING = "*"


class LotsField(forms.CharField):
    """Lots, one span a line: "2103-A", "2103..2108", and with a * for what begins so."""

    def __init__(self) -> None:
        super().__init__(max_length=_MANY, required=False)

    def clean(self, value: object) -> tuple[LotSpan, ...]:
        """Read the spans.

        Raises:
            forms.ValidationError: a line is no span of lots.
        """
        lines = str(super().clean(value) or "").replace(",", "\n").splitlines()
        try:
            return tuple(_span(line.strip()) for line in lines if line.strip())
        except UnreadableValueError as error:
            raise forms.ValidationError(str(value), code="invalid") from error


class NoticeForm(forms.Form):
    """A notice as typed from its text; what is left blank, the notice does not speak of."""

    name = forms.CharField(max_length=SHORT)
    issuer = forms.CharField(max_length=LONG)
    title = forms.CharField(max_length=LONG)
    issued = SpanField()
    kinds = forms.MultipleChoiceField()
    makers = words_field()
    styles = words_field()
    made_from = SpanField()
    made_to = SpanField()
    lots = LotsField()
    except_lots = LotsField()
    stop_use = forms.BooleanField(required=False)

    def __init__(self, kinds: Sequence[str], *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        field = self.fields["kinds"]
        assert isinstance(field, forms.MultipleChoiceField)
        field.choices = choices(kinds)

    def clean(self) -> dict[str, object]:
        """Refuse a span of making that ends before it begins."""
        given = super().clean() or {}
        first, last = given.get("made_from"), given.get("made_to")
        begins = first.earliest if isinstance(first, DateSpan) else None
        ends = last.latest if isinstance(last, DateSpan) else None
        if begins and ends and ends < begins:
            self.add_error("made_to", forms.ValidationError("", code="invalid"))
        return given

    def notice(self) -> Notice:
        """Return the notice."""
        given = self.cleaned_data
        first, last = given["made_from"], given["made_to"]
        made = DateSpan(earliest=first.earliest, latest=last.latest)
        return Notice(
            id=given["name"].strip(),
            issuer=given["issuer"].strip(),
            title=given["title"].strip(),
            issued=given["issued"],
            kinds=tuple(KindId(one) for one in given["kinds"]),
            makers=_listed(given["makers"]),
            styles=_listed(given["styles"]),
            made=made,
            lots=given["lots"],
            except_lots=given["except_lots"],
            stop_use=given["stop_use"],
        )


class SightingForm(forms.Form):
    """What a named person read on a piece."""

    component = forms.CharField(max_length=SHORT)
    affected = forms.ChoiceField(choices=choices(Answer))
    read = words_field()
    by = by_field()

    def sighting(self, notice: str, job: Job) -> Sighting:
        """Return the sighting."""
        given = self.cleaned_data
        return Sighting(
            notice=notice,
            component=ComponentId(given["component"]),
            by=given["by"].strip(),
            at=job.now,
            affected=Answer(given["affected"]),
            read=given["read"].strip(),
        )


class ActionForm(forms.Form):
    """What a named person did with a piece."""

    component = forms.CharField(max_length=SHORT)
    step = forms.ChoiceField(choices=choices(Step))
    note = words_field()
    by = by_field()

    def action(self, notice: str, job: Job) -> Action:
        """Return the action."""
        given = self.cleaned_data
        return Action(
            notice=notice,
            component=ComponentId(given["component"]),
            step=Step(given["step"]),
            by=given["by"].strip(),
            at=job.now,
            note=given["note"].strip(),
        )


def _listed(text: str) -> tuple[str, ...]:
    return tuple(one.strip() for one in text.split(",") if one.strip())


def _span(text: str) -> LotSpan:
    beginning = text.endswith(_BEGINNING)
    first, _, last = text.rstrip(_BEGINNING).partition("..")
    first = first.rstrip(_BEGINNING).strip()
    return LotSpan(first=first, last=last.strip(), beginning=beginning)
