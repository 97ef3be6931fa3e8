"""What did a named person look at, point by point, and what was found where?

There is no answer for all points at once: each is looked at by itself.
"""

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from django import forms

from sootline.core.basis import ComponentId, MessageId, Quantity, UnreadableValueError
from sootline.core.exposure.calls import Answer
from sootline.core.gear import Component
from sootline.core.rebuild import Flaw, FlawFound
from sootline.core.upkeep.inspections import (
    Inspection,
    InspectionKind,
    LinerTest,
    LinerTestDone,
)
from sootline.tasks.inspect_gear import CheckList
from sootline.web.entries.fields import LONG, SHORT, by_field, choices, words_field

NOTHING, FOUND = "nothing", "found"
_MOST_PARTS = 99


@dataclass(frozen=True, kw_only=True)
class PointShown:
    """One point of the list as the form shows it.

    Args:
        name: what its fields begin with.
        flaw, place, note: as typed so far.
    """

    point: MessageId
    name: str
    answer: str
    flaw: str
    place: str
    note: str


@dataclass(frozen=True, kw_only=True)
class TestShown:
    """One test of a liner as the form shows it.

    Args:
        mixed, pressed, waits: whether the test has a mixture, a pressure, a time to stand.
    """

    test: str
    passed: str
    mixed: bool
    pressed: bool
    waits: bool


class InspectionForm(forms.Form):
    """One piece, one named person: each point, each test asked for, own words."""

    by = by_field()
    words = words_field()
    retire = words_field()
    # Never typed into: faults of a point or a test are named by what was asked.
    flaw = words_field()
    waited = words_field()
    pressure = words_field()
    photo = forms.FileField(required=False)

    def __init__(self, asked: CheckList, flaws: Sequence[Flaw], *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        self.asked = asked
        for place, _ in enumerate(asked.points):
            answers = forms.ChoiceField(choices=choices([NOTHING, FOUND, ""]), required=False)
            self.fields[f"p{place}"] = answers
            self.fields[f"p{place}-flaw"] = forms.ChoiceField(
                choices=choices([*flaws, ""]), required=False
            )
            self.fields[f"p{place}-place"] = forms.CharField(max_length=LONG, required=False)
            self.fields[f"p{place}-note"] = forms.CharField(max_length=LONG, required=False)
        for test in asked.tests:
            self.fields[f"t-{test}"] = forms.ChoiceField(choices=choices(Answer), required=False)
            self.fields[f"t-{test}-parts"] = forms.IntegerField(
                min_value=0, max_value=_MOST_PARTS, required=False
            )
            for more in ("waited", "pressure", "place"):
                self.fields[f"t-{test}-{more}"] = forms.CharField(max_length=SHORT, required=False)

    def clean(self) -> dict[str, object]:
        """Ask for what was found wherever something was, and read times and pressures."""
        given = super().clean() or {}
        for place, _ in enumerate(self.asked.points):
            if given.get(f"p{place}") == FOUND and not given.get(f"p{place}-flaw"):
                self.add_error("flaw", forms.ValidationError("", code="required"))
        for test in self.asked.tests:
            for more in ("waited", "pressure"):
                try:
                    _quantity(str(given.get(f"t-{test}-{more}") or ""))
                except UnreadableValueError:
                    self.add_error(more, forms.ValidationError("", code="invalid"))
        return given

    def refuse_photo(self) -> None:
        """Say that what came as a photo cannot be kept as one."""
        self.add_error("photo", forms.ValidationError("photo", code="photo"))

    def points(self) -> Iterator[PointShown]:
        """Return the points with what was typed so far."""
        for place, point in enumerate(self.asked.points):
            name = f"p{place}"
            typed = {more: str(self.data.get(f"{name}-{more}", "")) for more in
                     ("flaw", "place", "note")}  # fmt: skip
            yield PointShown(point=point, name=name, answer=str(self.data.get(name, "")), **typed)

    def tests(self) -> Iterator[TestShown]:
        """Return the tests that are asked for."""
        for test in self.asked.tests:
            yield TestShown(
                test=test.value,
                passed=str(self.data.get(f"t-{test}", "")),
                mixed=test is LinerTest.LEAKAGE,
                pressed=test is LinerTest.HYDROSTATIC,
                waits=test is not LinerTest.LIGHT,
            )

    def inspection(self, component: Component, at: dt.datetime, photo: str = "") -> Inspection:
        """Return the inspection as it was typed; what nobody answered was not looked at.

        Args:
            photo: the name of a kept photo; blank is none.
        """
        given = self.cleaned_data
        answered = [
            (f"p{place}", point)
            for place, point in enumerate(self.asked.points)
            if given.get(f"p{place}")
        ]
        flaws = [
            FlawFound(
                flaw=Flaw(given[f"{name}-flaw"]),
                place=given[f"{name}-place"].strip(),
                note=(given[f"{name}-note"] or given["words"]).strip(),
            )
            for name, _ in answered
            if given[name] == FOUND
        ]
        return Inspection(
            component=ComponentId(component.id),
            kind=InspectionKind(self.asked.kind),
            by=given["by"].strip(),
            at=at,
            looked=tuple(point for _, point in answered),
            flaws=tuple(flaws),
            tests=tuple(self._done()),
            photos=(photo,) if photo else (),
            retire=given["retire"].strip(),
        )

    def _done(self) -> Iterator[LinerTestDone]:
        given = self.cleaned_data
        for test in self.asked.tests:
            passed = given.get(f"t-{test}")
            if passed:
                yield LinerTestDone(
                    test=test,
                    passed=Answer(passed),
                    water_parts=given[f"t-{test}-parts"],
                    waited=_quantity(given[f"t-{test}-waited"]),
                    pressure=_quantity(given[f"t-{test}-pressure"]),
                    place=given[f"t-{test}-place"].strip(),
                )


def _quantity(text: str) -> Quantity | None:
    return Quantity.parse(text) if text.strip() else None


class DayForm(forms.Form):
    """An inspection day: which inspection, whose gear, which parts of it."""

    kind = forms.ChoiceField(choices=choices(InspectionKind))
    owners = forms.MultipleChoiceField()
    elements = forms.MultipleChoiceField()

    def __init__(self, owners: list[str], elements: list[str], *args: object) -> None:
        super().__init__(*args)  # type: ignore[arg-type]
        for name, values in (("owners", owners), ("elements", elements)):
            field = self.fields[name]
            assert isinstance(field, forms.MultipleChoiceField)
            field.choices = choices(values)


class TypedForm(forms.Form):
    """Rows typed from a ticked sheet, and who ticked it."""

    rows = forms.CharField(max_length=20_000)
    by = by_field()
