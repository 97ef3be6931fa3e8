"""How far has a repair come: what is to be done, what it costs, who decided, sent, back?"""

import datetime as dt
from dataclasses import replace
from zoneinfo import ZoneInfo

from django import forms

from sootline.core.basis import ComponentId, UnreadableValueError
from sootline.core.job.jobs import Job
from sootline.core.upkeep.repairs import Choice, Repair, Work
from sootline.core.upkeep.repairs.facts import Decided
from sootline.web.entries.fields import (
    SHORT,
    by_field,
    choices,
    day_field,
    price_field,
    price_of,
    span_of,
    words_field,
)

_LETTERS = 3


class NewRepairForm(forms.Form):
    """Which piece, and what is to be done."""

    piece = forms.CharField(max_length=SHORT)
    works = forms.MultipleChoiceField(choices=choices(Work))

    def repair(self) -> Repair:
        """Return the repair as it begins."""
        given = self.cleaned_data
        works = tuple(Work(one) for one in given["works"])
        return Repair(component=ComponentId(given["piece"].strip()), works=works)


class QuoteForm(forms.Form):
    """Who would do it, what it would cost, what a new one costs."""

    provider = forms.CharField(max_length=SHORT)
    quote = price_field(required=True)
    new = price_field()
    currency = forms.CharField(max_length=_LETTERS, min_length=_LETTERS)
    source = words_field()

    def repair(self, repair: Repair, job: Job) -> Repair:
        """Return the repair with its quote.

        Raises:
            UnreadableValueError: the currency is no sign of three letters.
        """
        given, on = self.cleaned_data, _today(job)
        quote = price_of(given["quote"], given["currency"], on, given["source"])
        new = price_of(given["new"], given["currency"], on, given["source"]) or repair.new
        return replace(repair, by=given["provider"].strip(), quote=quote, new=new)

    def clean_currency(self) -> str:
        """Refuse what is no sign of a currency."""
        currency = str(self.cleaned_data["currency"]).upper()
        if not (currency.isascii() and currency.isalpha()):
            raise forms.ValidationError(currency, code="invalid")
        return currency


class DecideForm(forms.Form):
    """What a person decided, and why."""

    choice = forms.ChoiceField(choices=choices(Choice))
    by = by_field()
    why = words_field()

    def repair(self, repair: Repair, job: Job) -> Repair:
        """Return the repair as decided."""
        given = self.cleaned_data
        decided = Decided(
            choice=Choice(given["choice"]),
            by=given["by"].strip(),
            at=job.now,
            why=given["why"].strip(),
        )
        return replace(repair, decided=decided)


class SentForm(forms.Form):
    """When it left, and when it is promised back."""

    due_back = day_field()

    def repair(self, repair: Repair, job: Job) -> Repair:
        """Return the repair on its way."""
        due = span_of(self.cleaned_data["due_back"])
        return replace(repair, sent=span_of(_today(job)), due_back=due)


class BackForm(forms.Form):
    """What was done, in the repairer's words."""

    result = words_field(required=True)

    def repair(self, repair: Repair, job: Job) -> Repair:
        """Return the repair as it came back."""
        result = str(self.cleaned_data["result"]).strip()
        return replace(repair, back=span_of(_today(job)), result=result)


STEPS: dict[str, type[QuoteForm | DecideForm | SentForm | BackForm]] = {
    "quote": QuoteForm,
    "decide": DecideForm,
    "sent": SentForm,
    "back": BackForm,
}
__all__ = ["STEPS", "NewRepairForm", "UnreadableValueError"]


def _today(job: Job) -> dt.date:
    return job.now.astimezone(ZoneInfo(job.department.zone)).date()
