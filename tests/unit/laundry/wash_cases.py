"""Components, decisions and a wash room in few words, for tests of laundry and plans."""

from collections.abc import Sequence
from dataclasses import replace

from sootline.core.basis import (
    ComponentId,
    Confidence,
    ContaminantId,
    DateSpan,
    EditionId,
    Ground,
    KindId,
    Limit,
    MachineId,
    MemberId,
    MinuteSpan,
    PlaceId,
    Quantity,
    RuleId,
    SetId,
    Side,
    parse_limit,
    quantity,
)
from sootline.core.care.decisions import Decision, Fate, Separation
from sootline.core.gear.components import Component
from sootline.core.gear.kinds import DryMethod, WashMethod
from sootline.core.gear.labels import CareText, Label
from sootline.core.gear.resolve import resolve_terms
from sootline.core.laundry.planning import PlannedDrying, PlannedWork, PlanningTimes
from sootline.core.laundry.rooms import (
    Company,
    DryingPlace,
    Programme,
    Sink,
    SinkUse,
    Washer,
    WashRoom,
)
from sootline.core.laundry.sorting import sort_components
from sootline.core.laundry.sorts import Sort, Sorting
from sootline.core.rulebook import Edition, EditionStatus, Level, Rule, Rulebook, RuleKind, Value

STATED = Ground(
    rule=RuleId("care.test"),
    edition=EditionId("statement"),
    source="invented for a test",
    confidence=Confidence.STATED,
)


def rule(topic: str, value: Value | None, *traits: str) -> Rule:
    """Make a rule of any kind."""
    kinds = {Limit: RuleKind.LIMIT, tuple: RuleKind.LIST, str: RuleKind.CHOICE}
    return Rule(
        topic=RuleId(topic),
        kind=kinds.get(type(value), RuleKind.CHOICE),
        value=value,
        source="invented for a test",
        confidence=Confidence.STATED,
        traits=traits,
    )


def edition(name: str, *rules: Rule) -> Edition:
    """Make a text with these rules."""
    return Edition(
        id=EditionId(name),
        title=name,
        body="invented",
        status=EditionStatus.CURRENT,
        in_force=DateSpan(),
        rules=rules,
    )


def limit(text: str, side: Side = Side.AT_MOST) -> Limit:
    """Read a limit."""
    return parse_limit(text, side)


# The numbers are those of the US care standard as standards' articles give them.
ADOPTED = edition(
    "invented/1",
    rule("wash.bath_temp", limit("105 °F / 40 °C")),
    rule("wash.extraction", limit("100 G")),
    rule("wash.ph_low", limit("6.0 pH", Side.AT_LEAST)),
    rule("wash.ph_high", limit("10.5 pH")),
    rule("wash.forbidden", ("top-loader",)),
    rule("dry.air_temp", limit("105 °F / 40 °C")),
)
PRACTICE = edition(
    "practice/common",
    rule("wash.company", "liners", "soft"),
    rule("wash.company", "shells", "strap"),
)


def rulebook(*policy: Rule, adopted: Edition = ADOPTED, practice: Edition = PRACTICE) -> Rulebook:
    """Make a rulebook with a policy on top of the adopted text."""
    return Rulebook(adopted=adopted, policy=edition("policy", *policy), practice=practice)


def component(
    name: str, kind: str, *, owner: str = "M01", care: CareText | None = None, mass: str = ""
) -> Component:
    """Make a component of a member's set."""
    return Component(
        id=ComponentId(name),
        kind=KindId(kind),
        owner=MemberId(owner) if owner else None,
        set=SetId(f"set-{owner}") if owner else None,
        label=Label(care=care or CareText()),
        mass=quantity(mass) if mass else None,
    )


def decide(
    one: Component,
    *hazards: str,
    alone: bool = False,
    fate: Fate = Fate.WASH,
    book: Rulebook | None = None,
    wash: WashMethod | None = None,
    sealed: bool = False,
) -> Decision:
    """Decide by hand, on the terms its label and the rulebook really give."""
    terms = resolve_terms(one, None, book or rulebook())
    return Decision(
        component=one.id,
        fate=fate,
        level=Level.ADVANCED,
        wash=wash or terms.method.wash,
        terms=terms,
        separation=Separation(hazards=tuple(ContaminantId(one) for one in hazards), alone=alone),
        sealed=sealed,
        reasons=(),
    )


def programme(
    name: str,
    *companies: Company,
    bath: str | None = "100 °F",
    spin: str | None = "80 G",
    minutes: str = "60 min",
) -> Programme:
    """Make a programme."""
    return Programme(
        id=name,
        companies=companies,
        bath_temp=quantity(bath) if bath else None,
        extraction=quantity(spin) if spin else None,
        minutes=MinuteSpan.parse(minutes),
    )


def washer(
    name: str = "W1", *programmes: Programme, mass: str | None = "42 lb", pieces: int | None = None
) -> Washer:
    """Make a working front-loader."""
    return Washer(
        id=MachineId(name),
        limit=quantity(mass) if mass else None,
        pieces=pieces,
        programmes=programmes or (programme("gear"),),
    )


def drying_place(
    name: str, method: DryMethod, places: int = 6, *kinds: str, air: str | None = None
) -> DryingPlace:
    """Make a rack, a cabinet, or a place elsewhere."""
    return DryingPlace(
        id=PlaceId(name),
        method=method,
        places=places,
        kinds=tuple(KindId(kind) for kind in kinds),
        air_temp=quantity(air) if air else None,
    )


ROOM = WashRoom(
    washers=(washer(),),
    sinks=(
        Sink(id=PlaceId("basin-1"), use=SinkUse.GEAR),
        Sink(id=PlaceId("bench-1"), use=SinkUse.GEAR, bench=True),
        Sink(id=PlaceId("kitchen"), use=SinkUse.FOOD),
    ),
    drying=(drying_place("rack-1", DryMethod.RACK),),
)

SOURCE = {"source": "invented for a test", "confidence": Confidence.STATED}
PLANNING = PlanningTimes(
    drying=tuple(
        PlannedDrying(method=method, minutes=MinuteSpan.parse("60-120-240 min"), **SOURCE)  # type: ignore[arg-type]
        for method in (DryMethod.CABINET, DryMethod.RACK, DryMethod.HANG, DryMethod.FLAT)
    ),
    work=(
        PlannedWork(
            prepare=MinuteSpan.parse("1-2-3 min"),
            hand=MinuteSpan.parse("10-15-20 min"),
            check=MinuteSpan.parse("2-4-6 min"),
            **SOURCE,  # type: ignore[arg-type]
        ),
    ),
)


def sort_all(
    pairs: Sequence[tuple[Component, Decision]],
    room: WashRoom = ROOM,
    book: Rulebook | None = None,
) -> Sorting:
    """Sort decided components."""
    return sort_components(
        decisions=[decision for _, decision in pairs],
        components=[one for one, _ in pairs],
        room=room,
        rulebook=book or rulebook(),
    )


def sort_plain(
    *components: Component, room: WashRoom = ROOM, book: Rulebook | None = None
) -> Sorting:
    """Sort components that all need a wash and carry no hazard."""
    return sort_all([(one, decide(one, book=book)) for one in components], room, book)


def together(sorting: Sorting) -> set[frozenset[str]]:
    """List which components go together."""
    return {frozenset(sort.components) for sort in sorting.sorts}


def sort_with(sorting: Sorting, name: str) -> Sort:
    """Return the sort a component is in."""
    return next(sort for sort in sorting.sorts if name in sort.components)


def messages(sorting: Sorting, name: str = "") -> set[str]:
    """List the refusals' messages, of one component or of all."""
    return {
        refusal.message
        for refusal in sorting.refused
        if not name or ("component", name) in refusal.values
    }


def with_mass(one: Component, mass: Quantity | None) -> Component:
    """Weigh a component."""
    return replace(one, mass=mass)
