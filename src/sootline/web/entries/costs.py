"""What does washing use up here, and at which prices of the department's own?"""

from decimal import Decimal

from django import forms

from sootline.core.basis import DateSpan, Quantity
from sootline.core.job.jobs import Job
from sootline.core.machines import CostItem, CostKind, CostSheet, Price
from sootline.web.entries.fields import SHORT, choices, day_field

# What a load uses of each, and what its price is usually for; both may be typed otherwise.
ROWS: tuple[tuple[CostKind, str, str], ...] = (
    (CostKind.WATER, "gal", "1000 gal"),
    (CostKind.POWER, "kWh", "1 kWh"),
    (CostKind.DETERGENT, "mL", "1 L"),
    (CostKind.LABOUR, "h", "1 h"),
    (CostKind.INSPECTION, "h", "1 h"),
    (CostKind.SPARE_GEAR, "h", "1 h"),
    (CostKind.FREIGHT, "lb", "1 lb"),
)
COVERS = (CostKind.INSPECTION, CostKind.FREIGHT, CostKind.SPARE_GEAR)
_DIGITS = 10


def _amount(*, required: bool = False) -> forms.DecimalField:
    return forms.DecimalField(min_value=0, max_digits=_DIGITS, decimal_places=4, required=required)


class CostForm(forms.Form):
    """A sheet of prices, with the day they were good for; a row left blank is left out."""

    dated = day_field(required=True)
    currency = forms.CharField(max_length=SHORT)
    sets = forms.DecimalField(max_digits=_DIGITS, decimal_places=2)
    yearly = _amount()
    sets_a_year = _amount()
    contract = _amount()
    covers = forms.MultipleChoiceField(choices=choices(COVERS), required=False)

    def __init__(self, *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        for kind, _, _ in ROWS:
            self.fields[f"used-{kind}"] = _amount()
            self.fields[f"price-{kind}"] = _amount()

    def reading(self, job: Job) -> CostSheet:  # noqa: ARG002 - every form of readings is asked alike
        """Return the sheet.

        Raises:
            UnreadableValueError: amounts that cannot be.
        """
        given = self.cleaned_data
        return CostSheet(
            dated=DateSpan.day(given["dated"]),
            currency=given["currency"].strip(),
            items=tuple(
                CostItem(
                    kind=kind,
                    used=Quantity.parse(f"{given[f'used-{kind}']} {unit}"),
                    price=Price(amount=float(given[f"price-{kind}"]), per=Quantity.parse(per)),
                )
                for kind, unit, per in ROWS
                if given[f"used-{kind}"] is not None and given[f"price-{kind}"] is not None
            ),
            sets=float(given["sets"]),
            yearly=float(given["yearly"] or 0),
            contract=_float(given["contract"]),
            contract_covers=tuple(CostKind(one) for one in given["covers"]),
            sets_a_year=_float(given["sets_a_year"]),
        )


def _float(amount: Decimal | None) -> float | None:
    return None if amount is None else float(amount)
