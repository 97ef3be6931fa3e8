"""What goes into the van, what came out of it, and what is charged for it?"""

import re
from collections.abc import Sequence

from django import forms

from sootline.core.basis import ComponentId, ContaminantId, DateSpan, KindId
from sootline.core.exposure.calls import Answer
from sootline.core.job.jobs import Job
from sootline.core.upkeep.contractor import (
    Charge,
    Disclosed,
    Invoice,
    Manifest,
    Receipt,
    Received,
    Sent,
    Service,
)
from sootline.core.upkeep.repairs.facts import Price
from sootline.web.entries.fields import LONG, SHORT, by_field, choices, day_field, words_field

_MANY = 4000
_LINE = re.compile(r"^\s*(?P<read>\S+)\s+(?P<service>\d)\s+(?P<amount>\d+(?:\.\d{1,2})?)\s*$")
_LETTERS = 3


class SendForm(forms.Form):
    """To whom, which pieces, what is asked for, and what the provider's people must know."""

    provider = forms.CharField(max_length=SHORT)
    pieces = forms.CharField(max_length=_MANY)
    services = forms.MultipleChoiceField(choices=choices(Service))
    contaminant = forms.ChoiceField(required=False)
    present = forms.ChoiceField(choices=choices(Answer), required=False)
    hazard_words = words_field()
    promised = day_field()
    by = by_field()

    def __init__(self, contaminants: Sequence[str], *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        field = self.fields["contaminant"]
        assert isinstance(field, forms.ChoiceField)
        field.choices = choices([*contaminants, ""])

    def manifest(self, job: Job) -> Manifest:
        """Return the shipment; prices agreed with this provider before hold on."""
        given, provider = self.cleaned_data, self.cleaned_data["provider"].strip()
        services = tuple(Service(one) for one in given["services"])
        before = [one for one in job.upkeep.manifests if one.provider == provider]
        promised = given["promised"]
        return Manifest(
            id=_next_id(job),
            provider=provider,
            at=job.now,
            by=given["by"].strip(),
            pieces=tuple(
                Sent(component=ComponentId(one), services=services)
                for one in dict.fromkeys(given["pieces"].replace(",", " ").split())
            ),
            hazards=self._hazards(),
            promised=DateSpan.day(promised) if promised else DateSpan(),
            agreed=before[-1].agreed if before else (),
        )

    def _hazards(self) -> tuple[Disclosed, ...]:
        given = self.cleaned_data
        name, words = given["contaminant"], given["hazard_words"].strip()
        if not name and not words:
            return ()
        present = Answer(given["present"] or Answer.UNKNOWN)
        contaminant = ContaminantId(name) if name else None
        return (Disclosed(contaminant=contaminant, present=present, words=words),)


class ReceiveForm(forms.Form):
    """Numbers as they stand on the pieces, and one piece that says less than its number."""

    numbers = forms.CharField(max_length=_MANY, required=False)
    read = forms.CharField(max_length=SHORT, required=False)
    kind = forms.ChoiceField(required=False)
    size = forms.CharField(max_length=SHORT, required=False)
    marked = forms.CharField(max_length=LONG, required=False)
    note = words_field()
    by = by_field()

    def __init__(self, kinds: Sequence[str], *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        field = self.fields["kind"]
        assert isinstance(field, forms.ChoiceField)
        field.choices = choices([*kinds, ""])

    def clean(self) -> dict[str, object]:
        """Refuse a delivery of nothing."""
        given = super().clean() or {}
        if not self.errors and not self._pieces(given):
            self.add_error("numbers", forms.ValidationError("", code="required"))
        return given

    def receipt(self, manifest: str, job: Job) -> Receipt:
        """Return the delivery, each number as it was read."""
        pieces = self._pieces(self.cleaned_data)
        by = self.cleaned_data["by"].strip()
        return Receipt(manifest=manifest, at=job.now, by=by, pieces=tuple(pieces))

    def _pieces(self, given: dict[str, object]) -> list[Received]:
        pieces = [
            Received(read=line.strip())
            for line in str(given.get("numbers") or "").splitlines()
            if line.strip()
        ]
        names = ("read", "size", "marked", "note")
        read, size, marked, note = (str(given.get(name) or "").strip() for name in names)
        kind = KindId(str(given["kind"])) if given.get("kind") else None
        if kind or read or size or marked or note:
            pieces.append(Received(read=read, kind=kind, size=size, marked=marked, note=note))
        return pieces


class WordForm(forms.Form):
    """Which sent piece it is, by a named person's word."""

    receipt = forms.IntegerField(min_value=0)
    line = forms.IntegerField(min_value=0)
    component = forms.CharField(max_length=SHORT)
    by = by_field()


class InvoiceForm(forms.Form):
    """An invoice as it is written: number, total, and a line each for piece, work and amount.

    A work is typed as its place in the list of works, counted from 1.
    """

    number = forms.CharField(max_length=SHORT)
    total = forms.DecimalField(min_value=0, max_digits=9, decimal_places=2)
    currency = forms.CharField(max_length=_LETTERS, min_length=_LETTERS)
    charges = forms.CharField(max_length=_MANY)

    def clean_charges(self) -> str:
        """Refuse a line that is not piece, work, amount."""
        text = str(self.cleaned_data["charges"])
        for line in filter(str.strip, text.splitlines()):
            match = _LINE.match(line)
            if match is None or not 1 <= int(match["service"]) <= len(Service):
                raise forms.ValidationError(line, code="invalid")
        return text

    def clean_currency(self) -> str:
        """Refuse what is no sign of a currency."""
        currency = str(self.cleaned_data["currency"]).upper()
        if not (currency.isascii() and currency.isalpha()):
            raise forms.ValidationError(currency, code="invalid")
        return currency

    def invoice(self, manifest: str, job: Job) -> Invoice:
        """Return the invoice, each line as it is charged."""
        given, on = self.cleaned_data, DateSpan.day(job.now.date())
        lines = [_LINE.match(line) for line in filter(str.strip, given["charges"].splitlines())]
        price = {"currency": given["currency"], "on": on, "source": given["number"]}
        return Invoice(
            manifest=manifest,
            number=given["number"].strip(),
            total=Price(amount=given["total"], **price),
            charges=tuple(
                Charge(
                    read=match["read"],
                    service=list(Service)[int(match["service"]) - 1],
                    price=Price(amount=forms.DecimalField().clean(match["amount"]), **price),
                )
                for match in lines
                if match is not None
            ),
        )


def _next_id(job: Job) -> str:
    year = f"{job.now:%y}"
    taken = {one.id for one in job.upkeep.manifests}
    number = next(n for n in range(1, len(taken) + 2) if f"{year}-{n:02}" not in taken)
    return f"{year}-{number:02}"
