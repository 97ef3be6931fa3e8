"""What may be typed when people come, try gear on, exchange it and leave?"""

from collections.abc import Iterable

from django import forms

from sootline.core.basis import MemberId
from sootline.core.exposure.calls import Answer
from sootline.core.job.jobs import Member
from sootline.web.entries.fields import choices
from sootline.web.entries.floor import PiecesForm

_LONG, _SHORT = 200, 40
RACK, WASH = "rack", "wash"


class MemberForm(forms.Form):
    """Who is new, on which crew, and how large, as far as it was measured."""

    number = forms.CharField(max_length=_SHORT)
    crew = forms.CharField(max_length=_SHORT, required=False)
    role = forms.CharField(max_length=_SHORT, required=False)

    def __init__(self, dimensions: Iterable[str], *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        self._dimensions = tuple(dimensions)
        for dimension in self._dimensions:
            self.fields[f"d-{dimension}"] = forms.CharField(max_length=_SHORT, required=False)

    def member(self) -> Member:
        """Return the person as typed; what was not measured is left out."""
        given = self.cleaned_data
        typed = ((one, given[f"d-{one}"].strip()) for one in self._dimensions)
        return Member(
            id=MemberId(given["number"].strip()),
            crew=given["crew"].strip(),
            role=given["role"].strip(),
            measures=tuple((one, size) for one, size in typed if size),
        )


class TriedForm(PiecesForm):
    """What was tried on, whether it fits, and who watched."""

    fits = forms.ChoiceField(choices=choices((Answer.YES, Answer.NO)))
    said = forms.CharField(max_length=_LONG, required=False)


class ExchangeForm(forms.Form):
    """What comes back, what goes out, and where the returned piece goes."""

    returns = forms.ChoiceField()
    takes = forms.ChoiceField()
    then = forms.ChoiceField(choices=choices((WASH, RACK)))
    by = forms.CharField(max_length=_SHORT)

    def __init__(self, own: object, spare: object, *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        for name, pieces in (("returns", own), ("takes", spare)):
            field = self.fields[name]
            assert isinstance(field, forms.ChoiceField)
            field.choices = choices(pieces)


class LeaveForm(PiecesForm):
    """What came back from somebody who leaves; nothing is an answer."""

    def __init__(self, pieces: object, *args: object) -> None:
        super().__init__(pieces, *args)
        self.fields["pieces"].required = False
