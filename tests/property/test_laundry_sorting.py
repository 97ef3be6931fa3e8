"""Whatever comes to the wash room: nothing is lost, nothing meets what it must not meet."""

from dataclasses import dataclass, replace
from random import Random
from typing import TypeVar

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.unit.laundry.wash_cases import (
    PLANNING,
    ROOM,
    component,
    decide,
    drying_place,
    limit,
    programme,
    rule,
    rulebook,
    sort_all,
    washer,
)

from sootline.core.basis import MemberId, Standing, quantity
from sootline.core.care.decisions import Decision, Fate
from sootline.core.gear import KINDS
from sootline.core.gear.catalogue import find_kind
from sootline.core.gear.components import Component
from sootline.core.gear.kinds import DryMethod, Layer, WashMethod
from sootline.core.gear.labels import Act, CareText
from sootline.core.laundry.rooms import Company, Hanging, Programme, Washer, WashRoom
from sootline.core.laundry.sharing import apart, set_together
from sootline.core.laundry.sorts import Sorting
from sootline.core.rulebook import Rule
from sootline.core.verify import verify
from sootline.core.washplan.build import build_instance
from sootline.core.washplan.durations import Pace
from sootline.core.washplan.facts import Member
from sootline.core.washplan.question import Question
from sootline.core.washplan.search import solve

T = TypeVar("T")
BATHS = ["30 °C", "86 °F", "40 °C", "104 °F", "105 °F", "60 °C"]
SPINS = ["50 G", "100 G", "120 G"]
KIND_IDS = [
    *("coat-shell", "coat-liner", "trouser-shell", "trouser-liner", "hood", "drag-device") * 3,
    *(kind.id for kind in KINDS),
]
LAYERS = [layer.value for layer in Layer]


def mostly(chance: Random, usual: T, *others: T) -> T:
    """Choose the usual value far more often than each of the others."""
    return chance.choice([usual] * 8 + list(others))


def care(chance: Random) -> CareText:
    """Write a label, as often as not a silent one."""
    if chance.random() < 0.7:
        return CareText()
    return CareText(
        wash_temp=chance.choice([None, *map(limit, BATHS)]),
        extraction=chance.choice([None, *map(quantity, SPINS)]),
        dry_temp=chance.choice([None, *map(limit, BATHS)]),
        forbids=tuple(chance.sample(list(Act), chance.choice([0, 0, 0, 1]))),
        assembled=mostly(chance, None, False, True),
    )


def some_programme(chance: Random, name: str) -> Programme:
    """Make a programme, mostly one that many may use."""
    companies = [(), (), (), (), (), (Company.SHELLS,), (Company.LINERS, Company.OWN)]
    return programme(
        name,
        *chance.choice(companies),
        bath=mostly(chance, "86 °F", *BATHS, None),
        spin=mostly(chance, "50 G", *SPINS, None),
    )


def some_washer(chance: Random, name: str) -> Washer:
    """Make a washer, mostly one that works."""
    return replace(
        washer(name, some_programme(chance, "a"), some_programme(chance, "b")),
        limit=mostly(chance, quantity("42 lb"), quantity("4 lb"), quantity("9 kg"), None),
        pieces=chance.choice([None, None, 1, 2, 5]),
        front_loading=mostly(chance, True, False),
        working=mostly(chance, True, False),
    )


def some_room(chance: Random) -> WashRoom:
    """Make a wash room with up to three washers and some places to dry."""
    machines = [some_washer(chance, f"W{n}") for n in range(chance.choice([0, 1, 2, 2, 3, 3]))]
    air = chance.choice([None, *BATHS])
    rack = drying_place("r1", DryMethod.RACK, chance.randint(1, 6))
    cabinet = drying_place("c1", DryMethod.CABINET, chance.randint(1, 6), air=air)
    posts = drying_place("r2", DryMethod.RACK, chance.randint(1, 3), "gloves", "coat-liner")
    places = mostly(chance, (rack, cabinet), (rack,), (cabinet,), (), (rack, cabinet, posts))
    holds = chance.choice(list(Hanging))
    return replace(
        ROOM,
        washers=tuple(machines),
        drying=tuple(replace(place, holds=holds) for place in places),
        between_min=chance.choice([0, 15]),
    )


def some_policy(chance: Random) -> tuple[Rule, ...]:
    """Make a policy on company for some layers."""
    layers = chance.sample(LAYERS, chance.randint(0, 3))
    return tuple(rule("wash.company", str(chance.choice(list(Company))), one) for one in layers)


@dataclass(frozen=True, kw_only=True)
class Night:
    """What came in, how it was decided and sorted, and where."""

    components: dict[str, Component]
    decisions: dict[str, Decision]
    sorting: Sorting
    room: WashRoom

    def set_of(self, name: str) -> str:
        """Return whose set a component belongs to; without any, itself."""
        return self.components[name].set or name

    def layer(self, name: str) -> Layer:
        """Return a component's layer."""
        return find_kind(self.components[name].kind).layer


def make_night(seed: int) -> Night:
    """Make components with labels, hazards and fates, and sort them; as the seed falls."""
    chance = Random(seed)  # noqa: S311 - examples, not secrets
    room, book = some_room(chance), rulebook(*some_policy(chance))
    pairs = []
    for number in range(chance.randint(0, 24)):
        kind, owner = chance.choice(KIND_IDS), chance.choice(["A", "B", ""])
        one = component(f"c{number}", kind, owner=owner, care=care(chance))
        decision = decide(
            one,
            *mostly(chance, (), ("blood",), ("foam",), ("foam", "blood")),
            alone=mostly(chance, False, True),
            fate=mostly(chance, Fate.WASH, *Fate),
            sealed=mostly(chance, False, True),
            book=book,
        )
        pairs.append((one, decision))
    return Night(
        components={one.id: one for one, _ in pairs},
        decisions={one.id: decision for one, decision in pairs},
        sorting=sort_all(pairs, room, book),
        room=room,
    )


# Seeds rather than drawn structures: most drawn nights were so odd that nothing could be washed.
nights = st.integers(0, 2**32).map(make_night)


def test_the_nights_are_not_trivial() -> None:
    """Among three hundred nights many have full sorts, hazards and refusals to hold against."""
    sortings = [make_night(seed).sorting for seed in range(300)]
    shared = [
        sort
        for sorting in sortings
        for sort in sorting.sorts
        if sort.settings and len(sort.components) > 1
    ]

    assert len(shared) > 90
    assert sum(bool(sorting.kept_out) for sorting in sortings) > 100
    assert any(sort.separation.alone for sorting in sortings for sort in sorting.sorts)


@given(nights)
def test_every_component_comes_out_exactly_once(night: Night) -> None:
    """In one sort, or kept out, or refused with a last word; never twice, never lost."""
    out: list[str] = [name for sort in night.sorting.sorts for name in sort.components]
    out += [name for name, _ in night.sorting.kept_out]
    out += [
        one.value("component")
        for one in night.sorting.refused
        if one.message.startswith("laundry.refused.")
    ]

    assert sorted(out) == sorted(night.components)


@given(nights)
def test_no_shell_ever_with_a_liner(night: Night) -> None:
    """By no policy, on no label, in no room; neither in a drum nor anywhere else."""
    for sort in night.sorting.sorts:
        layers = {night.layer(name) for name in sort.components}
        if sort.method is WashMethod.MACHINE:
            assert not layers >= {Layer.SHELL, Layer.LINER}


@given(nights)
def test_hazards_never_meet_other_hazards(night: Night) -> None:
    """All members of a sort are set apart by the very same; what is alone is alone."""
    for sort in night.sorting.sorts:
        separations = [night.decisions[name].separation for name in sort.components]
        assert len({frozenset(one.hazards) for one in separations}) == 1
        assert len({one.alone for one in separations}) == 1
        as_one = set_together(night.room) and len({night.set_of(name) for name in sort.components})
        assert len(separations) == 1 or as_one == 1 or not separations[0].alone


@given(nights)
def test_no_setting_exceeds_a_limit_of_any_member(night: Night) -> None:
    """Bath and spin of every setting are within every limit of every member; unknown never is."""
    baths = {
        (one.id, run.id): (run.bath_temp, run.extraction)
        for one in night.room.washers
        for run in one.programmes
    }
    for sort in night.sorting.sorts:
        for setting in sort.settings:
            bath, spin = baths[setting.washer, setting.programme]
            for name in sort.components:
                terms = night.decisions[name].terms
                assert terms.limit("wash.bath_temp").stand(bath) is Standing.WITHIN
                assert terms.limit("wash.extraction").stand(spin) is Standing.WITHIN


@given(nights)
def test_nothing_goes_where_a_source_forbids_it(night: Night) -> None:
    """No machine for what may not, no banned top-loader, no forbidden heat, no broken washer."""
    washers = {one.id: one for one in night.room.washers}
    for sort in night.sorting.sorts:
        bans = [night.decisions[name].terms for name in sort.components]
        for setting in sort.settings:
            machine = washers[setting.washer]
            assert machine.working
            assert not any(one.banned(Act.MACHINE_WASH) for one in bans)
            assert machine.front_loading or not any(one.banned(Act.TOP_LOADER) for one in bans)
    places = {place.id: place for place in night.room.drying}
    for choice in night.sorting.drying:
        terms = night.decisions[choice.component].terms
        for place in (places[name] for name in choice.places):
            heated = place.air_temp is not None
            assert not (heated and terms.banned(Act.HEATED_DRY))
            within = terms.limit("dry.air_temp").stand(place.air_temp) is Standing.WITHIN
            assert within or not heated
            separation = night.decisions[choice.component].separation
            assert not (place.method is DryMethod.CABINET and apart(separation))


@given(nights)
def test_every_placing_and_refusal_has_a_ground(night: Night) -> None:
    """Each sort names every member in a reason; every reason has a source."""
    sorting = night.sorting
    for sort in sorting.sorts:
        assert sort.settings or sort.places
        named = {dict(reason.values).get("component") for reason in sort.reasons}
        assert named >= set(sort.components)
    findings = [reason for sort in sorting.sorts for reason in sort.reasons]
    findings += [reason for _, reason in sorting.kept_out]
    assert all(one.ground.source for one in (*findings, *sorting.refused))


@settings(max_examples=60, deadline=None)
@given(nights)
def test_what_is_sorted_can_be_planned_and_holds(night: Night) -> None:
    """Every sort becomes pieces once each, and the plan of them keeps every hard rule."""
    question = Question(
        name="night",
        sorting=night.sorting,
        decisions=tuple(night.decisions.values()),
        components=tuple(night.components.values()),
        members=(Member(id=MemberId("A")), Member(id=MemberId("B"))),
        room=night.room,
        planning=PLANNING,
    )

    built = build_instance(question, Pace.LATE)
    plan = solve(built.instance, stop=lambda: True)

    carried: list[str] = [name for one in built.carried for name in one.components]
    sorted_in = [name for sort in night.sorting.sorts for name in sort.components]
    refused = [one.value("component") for one in built.refused]
    assert sorted([*carried, *refused]) == sorted(sorted_in)
    assert verify(built.instance, plan) == ()
