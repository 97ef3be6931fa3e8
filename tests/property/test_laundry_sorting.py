"""Whatever comes to the wash room: nothing is lost, nothing meets what it must not meet."""

from dataclasses import dataclass, replace

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
from sootline.core.laundry.rooms import Company, Programme, WashRoom
from sootline.core.laundry.sorts import Sorting
from sootline.core.rulebook import Rule
from sootline.core.verify import verify
from sootline.core.washplan.build import build_instance
from sootline.core.washplan.durations import Pace
from sootline.core.washplan.facts import Member
from sootline.core.washplan.question import Question
from sootline.core.washplan.search import solve

BATHS = ["30 °C", "86 °F", "40 °C", "104 °F", "105 °F", "60 °C"]
SPINS = ["50 G", "100 G", "120 G"]
KIND_IDS = [kind.id for kind in KINDS]
LAYERS = [layer.value for layer in Layer]

cares = st.builds(
    CareText,
    wash_temp=st.none() | st.sampled_from(BATHS).map(limit),
    extraction=st.none() | st.sampled_from(SPINS).map(quantity),
    dry_temp=st.none() | st.sampled_from(BATHS).map(limit),
    forbids=st.lists(st.sampled_from(list(Act)), max_size=2).map(tuple),
    assembled=st.none() | st.booleans(),
)
programmes = st.builds(
    programme,
    st.sampled_from(["a", "b"]),
    bath=st.none() | st.sampled_from(BATHS),
    spin=st.none() | st.sampled_from(SPINS),
).flatmap(
    lambda one: st.lists(st.sampled_from(list(Company)), max_size=2, unique=True).map(
        lambda companies: replace(one, companies=tuple(companies))
    )
)


@st.composite
def rooms(draw: st.DrawFn) -> WashRoom:
    """Draw a wash room with up to two washers and some places to dry."""
    machines = [
        replace(
            washer(f"W{n}", *draw(st.lists(programmes, min_size=1, max_size=2, unique_by=_id))),
            limit=draw(st.none() | st.sampled_from(["4 lb", "20 lb", "9 kg"]).map(quantity)),
            pieces=draw(st.none() | st.integers(1, 5)),
            front_loading=draw(st.booleans()),
            working=draw(st.booleans()),
        )
        for n in range(draw(st.integers(0, 2)))
    ]
    airs = st.none() | st.sampled_from(BATHS)
    places = [
        drying_place("r1", DryMethod.RACK, draw(st.integers(1, 6))),
        drying_place("c1", DryMethod.CABINET, draw(st.integers(1, 6)), air=draw(airs)),
    ]
    kept = [place for place in places if draw(st.booleans())]
    return replace(ROOM, washers=tuple(machines), drying=tuple(kept))


def _id(one: Programme) -> str:
    return one.id


@st.composite
def rules(draw: st.DrawFn) -> tuple[Rule, ...]:
    """Draw a policy on company for some layers."""
    layers = draw(st.lists(st.sampled_from(LAYERS), max_size=3, unique=True))
    return tuple(
        rule("wash.company", draw(st.sampled_from([*map(str, Company)])), layer) for layer in layers
    )


@dataclass(frozen=True, kw_only=True)
class Night:
    """What came in, how it was decided and sorted, and where."""

    components: dict[str, Component]
    decisions: dict[str, Decision]
    sorting: Sorting
    room: WashRoom

    def layer(self, name: str) -> Layer:
        """Return a component's layer."""
        return find_kind(self.components[name].kind).layer


@st.composite
def nights(draw: st.DrawFn) -> Night:
    """Draw components with labels, hazards and fates, and sort them."""
    room, book = draw(rooms()), rulebook(*draw(rules()))
    pairs = []
    for number in range(draw(st.integers(0, 8))):
        one = component(
            f"c{number}",
            draw(st.sampled_from(KIND_IDS)),
            owner=draw(st.sampled_from(["A", "B", ""])),
            care=draw(cares),
        )
        decision = decide(
            one,
            *draw(st.lists(st.sampled_from(["blood", "foam"]), max_size=2, unique=True)),
            alone=draw(st.booleans()),
            fate=draw(st.sampled_from([Fate.WASH, Fate.WASH, Fate.WASH, *Fate])),
            sealed=draw(st.integers(0, 9)) == 0,
            book=book,
        )
        pairs.append((one, decision))
    return Night(
        components={one.id: one for one, _ in pairs},
        decisions={one.id: decision for one, decision in pairs},
        sorting=sort_all(pairs, room, book),
        room=room,
    )


@given(nights())
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


@given(nights())
def test_no_shell_ever_with_a_liner(night: Night) -> None:
    """By no policy, on no label, in no room; neither in a drum nor anywhere else."""
    for sort in night.sorting.sorts:
        layers = {night.layer(name) for name in sort.components}
        if sort.method is WashMethod.MACHINE:
            assert not layers >= {Layer.SHELL, Layer.LINER}


@given(nights())
def test_hazards_never_meet_other_hazards(night: Night) -> None:
    """All members of a sort are set apart by the very same; what is alone is alone."""
    for sort in night.sorting.sorts:
        apart = [night.decisions[name].separation for name in sort.components]
        assert len({frozenset(one.hazards) for one in apart}) == 1
        assert len(apart) == 1 or not any(one.alone for one in apart)


@given(nights())
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


@given(nights())
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


@given(nights())
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
@given(nights())
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

    carried = [name for one in built.carried for name in one.components]
    sorted_in = [name for sort in night.sorting.sorts for name in sort.components]
    assert sorted(carried) == sorted(sorted_in)
    assert verify(built.instance, plan) == ()
