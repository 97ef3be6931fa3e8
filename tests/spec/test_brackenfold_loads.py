"""Brackenfold (invented) in the wash room: what may share with gear that has blood on it?

Nothing, until the disinfection is on record; after that each piece is washed alone.
"""

from dataclasses import replace
from functools import cache

from tests.care_facts import book, decide, fire, hold, person, piece, remark
from tests.unit.laundry.wash_cases import ROOM, drying_place

from sootline.core.basis import ContaminantId
from sootline.core.care import CarePolicy, Product, ProductUse
from sootline.core.exposure import Answer
from sootline.core.gear import Component, State
from sootline.core.gear.kinds import DryMethod
from sootline.core.laundry.sorting import sort_components
from sootline.core.laundry.sorts import Sorting
from sootline.core.rulebook import Decider

FABRIC_ONLY = CarePolicy(
    products=(
        Product(
            name="product F",
            use=ProductUse.DISINFECTANT,
            materials=("fabric",),
            against=(ContaminantId("blood"),),
            contact_min=10,
        ),
    )
)
SOILED = ("coat-shell", "coat-liner")
OTHERS = ("trouser-shell", "trouser-liner", "hood")
MATE = ("coat-shell", "coat-liner")


@cache
def sorted_out(*, recorded: bool) -> Sorting:
    """Sort R07's gear and a mate's, before or after the disinfection is on record."""
    noted = hold("blood.disinfect/c1", decider=Decider.INFECTION_CONTROL,
                 released_by="infection control, product F, 10 min")  # fmt: skip
    state = State(holds=(noted,)) if recorded else State()
    gear = {kind: piece(kind, "R07", state=state) for kind in SOILED}
    gear |= {kind: piece(kind, "R07") for kind in (*OTHERS, "boots-leather")}
    mate: list[Component] = [piece(kind, "R08") for kind in MATE]
    call = fire(
        person("R07"),
        person("R08"),
        remarks=(
            remark(gear["coat-shell"], "blood", reached_skin=Answer.YES, rinsed=Answer.YES),
            remark(gear["boots-leather"], "blood", detail="splashed"),
        ),
    )
    components = [*gear.values(), *mate]
    cabinet = drying_place("cabinet", DryMethod.CABINET, air="100 °F")
    return sort_components(
        decisions=decide(components, [call], policy=FABRIC_ONLY),
        components=components,
        room=replace(ROOM, drying=(*ROOM.drying, cabinet)),
        rulebook=book(),
    )


def shared_with(sorting: Sorting, kind: str) -> set[str]:
    """List what shares a sort with one of R07's pieces."""
    name = piece(kind, "R07").id
    return {
        other
        for sort in sorting.sorts
        if name in sort.components
        for other in sort.components
        if other != name
    }


def test_nothing_shares_anything_with_it_until_that_is_recorded() -> None:
    """Shell, liner and boots are in no sort and at no drying place; they are held, by name."""
    sorting = sorted_out(recorded=False)
    held = {piece(kind, "R07").id for kind in (*SOILED, "boots-leather")}

    assert held <= {name for name, _ in sorting.kept_out}
    assert not held & {name for sort in sorting.sorts for name in sort.components}
    assert not held & {choice.component for choice in sorting.drying}
    assert {reason.value("decider") for name, reason in sorting.kept_out if name in held} == {
        "infection-control"
    }


def test_then_shell_and_liner_are_each_washed_alone() -> None:
    """Each is a sort of its own, last, after the disinfection its reasons name."""
    sorting = sorted_out(recorded=True)

    assert [shared_with(sorting, kind) for kind in SOILED] == [set(), set()]
    assert all(sort.separation.alone for sort in sorting.sorts[-2:])
    for sort in sorting.sorts[-2:]:
        assert {"laundry.alone", "laundry.disinfect.first"} <= {one.message for one in sort.reasons}


def test_they_share_no_closed_cabinet_even_then() -> None:
    """A separation outlives its hold: they hang on an open place."""
    places = {choice.component: choice.places for choice in sorted_out(recorded=True).drying}

    assert all("cabinet" not in places[piece(kind, "R07").id] for kind in SOILED)
    assert "cabinet" in places[piece("trouser-shell", "R07").id]


def test_the_rest_of_the_gear_goes_with_everybody_elses() -> None:
    """What blood is not on is washed with the mate's as usual."""
    sorting = sorted_out(recorded=True)

    assert piece("coat-shell", "R08").id in shared_with(sorting, "trouser-shell")
    assert piece("coat-liner", "R08").id in shared_with(sorting, "trouser-liner")
