"""Which fields do the forms of the year share: a name, words, a day, a price?"""

import datetime as dt
from decimal import Decimal

from django import forms

from sootline.core.basis import DateSpan, UnreadableValueError
from sootline.core.upkeep.repairs.facts import Price

LONG, SHORT = 200, 40
_DIGITS, _PLACES = 9, 2


def choices(values: object) -> list[tuple[str, str]]:
    """Return the choices of ids that a template names."""
    return [(str(value), str(value)) for value in values]  # type: ignore[attr-defined]


def by_field() -> forms.CharField:
    """Ask for a person's name or number."""
    return forms.CharField(max_length=SHORT)


def words_field(*, required: bool = False) -> forms.CharField:
    """Ask for a few words."""
    return forms.CharField(max_length=LONG, required=required)


def day_field(*, required: bool = False) -> forms.DateField:
    """Ask for a day."""
    return forms.DateField(required=required)


def price_field(*, required: bool = False) -> forms.DecimalField:
    """Ask for an amount of money."""
    return forms.DecimalField(
        min_value=0, max_digits=_DIGITS, decimal_places=_PLACES, required=required
    )


def span_of(day: dt.date | None) -> DateSpan:
    """Return a day as a span; none is not known."""
    return DateSpan() if day is None else DateSpan.day(day)


def price_of(amount: Decimal | None, currency: str, on: dt.date, source: str) -> Price | None:
    """Return a price read today; none where no amount was given.

    Raises:
        UnreadableValueError: the currency is not three capital letters.
    """
    if amount is None:
        return None
    day = DateSpan.day(on)
    return Price(amount=amount, currency=currency.strip().upper(), on=day, source=source.strip())


class SpanField(forms.CharField):
    """A day, a month or a year, as it is known ("2021-03-01", "2021-03", "2021")."""

    def __init__(self, *, required: bool = False) -> None:
        super().__init__(max_length=SHORT, required=required)

    def clean(self, value: object) -> DateSpan:
        """Read the span; blank is not known.

        Raises:
            forms.ValidationError: it is no date.
        """
        text = str(super().clean(value) or "").strip()
        if not text:
            return DateSpan()
        try:
            return DateSpan.parse(text)
        except UnreadableValueError as error:
            raise forms.ValidationError(text, code="invalid") from error
