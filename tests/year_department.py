"""Whose year is lived: members in six sizes, each with an outfit, and spares of every size.

Everything here is invented. What was due before the year begins was done and is on record.
"""

import datetime as dt
import random
from collections.abc import Iterator

from sootline.core.basis import (
    ComponentId,
    Confidence,
    DateSpan,
    EditionId,
    KindId,
    MemberId,
    RuleId,
    SetId,
)
from sootline.core.exposure.calls import Answer
from sootline.core.gear import CareStage, Component, Custody, Element, Label, Life, State
from sootline.core.gear.records import Deed, Record
from sootline.core.job.jobs import JOB_VERSION, Department, Job, Member
from sootline.core.riding.facts import CrewMinimum, Duty, Mask, MaskState, RidingFacts
from sootline.core.rulebook import Rule
from sootline.core.rulebook.rules import RuleKind
from sootline.core.upkeep.facts import UpkeepFacts
from sootline.core.upkeep.qualified import Grade, Qualified, Scope
from tests.riding_gear import COAT_KINDS, FIT, TROUSER_KINDS

START = dt.datetime(2026, 1, 5, 8, tzinfo=dt.UTC)
INSPECTOR, PROVIDER = "118", "Mendwell"
_SIZES = (("36", "30"), ("40", "34"), ("42", "36"), ("44", "38"), ("46", "40"), ("48", "42"))
_SMALL = ("hood", "gloves", "boots-leather", "helmet-shell")
_SETS = (*COAT_KINDS, *TROUSER_KINDS)
_CLEANED_DAYS, _INSPECTED_DAYS = 150, 330
# The edition's own figure is not confirmed, so the department has set one.
_OPENED = Rule(
    topic=RuleId("inspect.liner.first_months"),
    kind=RuleKind.INTERVAL,
    value=36,
    source="policy, invented",
    confidence=Confidence.POLICY,
)


def department(members: int, seed: int, *, spares: int = 2) -> Job:
    """Return a department at the beginning of its year.

    Args:
        spares: of every size and kind, for every size.
    """
    chance = random.Random(seed)  # noqa: S311
    gear: list[Component] = []
    people: list[Member] = []
    for number in range(members):
        size = _SIZES[number % len(_SIZES)]
        name = MemberId(f"{100 + number}")
        measures = (*_measures(size), ("hand", "L"), ("foot", "10"), ("head", "M"), ("mask", "M"))
        people.append(Member(id=name, crew=f"E{number % 4}", measures=measures))
        gear += _outfit(f"{name}", size, name, chance)
    for place, size in enumerate(_SIZES):
        for count in range(spares):
            gear += _outfit(f"sp{place}{count}", size, None, chance)
    return Job(
        version=JOB_VERSION,
        title="a simulated year",
        now=START,
        department=Department(
            name="Tarn Hollow", edition=EditionId("nfpa-1851/2020"), policy=(_OPENED,)
        ),
        members=tuple(people),
        components=tuple(gear),
        riding=RidingFacts(
            fit=FIT,
            one_size=(Element.HOOD,),
            crews=tuple(CrewMinimum(crew=f"E{n}", interior=2) for n in range(4)),
            duties=tuple(Duty(member=one.id, interior=Answer.YES) for one in people),
            masks=tuple(
                Mask(id=ComponentId(f"{one.id}-mask"), owner=one.id, size="M",
                     state=MaskState.USABLE)
                for one in people
            ),
        ),
        upkeep=UpkeepFacts(
            qualified=(
                Qualified(who=INSPECTOR, grade=Grade.TRAINED, source="class list, invented",
                          scopes=(Scope.ADVANCED_INSPECTION,)),
                Qualified(who=PROVIDER, grade=Grade.VERIFIED, source="certificate, invented",
                          scopes=(Scope.LINER_INSPECTION,)),
            )
        ),
    )  # fmt: skip


def _measures(size: tuple[str, str]) -> tuple[tuple[str, str], ...]:
    return ("chest", size[0]), ("waist", size[1]), ("inseam", "30")


def _outfit(
    name: str, size: tuple[str, str], owner: MemberId | None, chance: random.Random
) -> Iterator[Component]:
    """Make one outfit, in service for one to three years, with all that was due behind it."""
    served = dt.date(2023, 2, 8) + dt.timedelta(days=chance.randrange(700))
    cleanings = (
        Record(deed=Deed.ADVANCED_CLEANING, on=DateSpan.day(day), by="paper")
        for day in _every(served, _CLEANED_DAYS)
    )
    inspections = (
        Record(deed=Deed.ADVANCED_INSPECTION, on=DateSpan.day(day), by="paper")
        for day in _every(served, _INSPECTED_DAYS)
    )
    records = (*cleanings, *inspections)
    sizes: dict[str, tuple[tuple[str, str], ...]] = {
        "coat-shell": (("chest", size[0]),),
        "coat-liner": (("chest", size[0]),),
        "trouser-shell": (("waist", size[1]), ("inseam", "30")),
        "trouser-liner": (("waist", size[1]), ("inseam", "30")),
        "gloves": (("hand", "L"),),
        "boots-leather": (("foot", "10"),),
        "helmet-shell": (("head", "M"),),
    }
    for kind in (*_SETS, *_SMALL):
        group = SetId(f"S{name}") if kind in _SETS else None
        yield Component(
            id=ComponentId(f"{name}-{kind}"),
            kind=KindId(kind),
            owner=owner,
            set=group,
            size=sizes.get(kind, ()),
            label=Label(maker="Aldmere", style="R4", made=DateSpan.parse("2022-06")),
            made=DateSpan.parse("2022-06"),
            in_service=DateSpan.day(served),
            records=records,
            state=State(
                custody=Custody.HOOK if owner else Custody.SPARE_RACK,
                stage=CareStage.CHECKED,
                life=Life.IN_SERVICE,
            ),
        )


def _every(first: dt.date, days: int) -> Iterator[dt.date]:
    day = first + dt.timedelta(days=days)
    while day < START.date():
        yield day
        day += dt.timedelta(days=days)
