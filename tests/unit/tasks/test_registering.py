"""Gear and things come into the record, whole or not at all, and change by new entries."""

import pytest
from tests.unit.tasks.memory_book import COAT, LINER, MAREN, act, book, coat, state_of

from sootline.core.basis import (
    BadInputError,
    BagId,
    ComponentId,
    KindId,
    MemberId,
    MessageId,
    PlaceId,
)
from sootline.core.gear import CareStage, Component, Hold, State
from sootline.core.job.jobs import Member
from sootline.core.job.things import Bag, Place, thing_of
from sootline.core.ledger import EntryKind, ItemKind, item
from sootline.core.rulebook.contaminants import Decider
from sootline.tasks.register_gear import change_facts, register_components
from sootline.tasks.register_things import change_thing, register_things

HOLD = Hold(
    cause="import/asbestos",
    question=MessageId("roster.hold.asbestos"),
    decider=Decider.GEAR_OFFICER,
    deputy=Decider.CHIEF,
    escalate_after_h=12,
)


def _messages(error: pytest.ExceptionInfo[BadInputError]) -> list[str]:
    return [fault.message for fault in error.value.faults]


def test_a_component_comes_back_as_it_was_described() -> None:
    """What was registered is what the record holds, state included."""
    piece = coat(stage=CareStage.TO_WASH)

    made = book(piece)

    assert made.known(COAT)[0].component == piece
    assert made.known(COAT)[0].station == "2"


def test_an_open_hold_becomes_one_of_the_record() -> None:
    """Gear that comes in on hold is on hold."""
    made = book(coat(holds=(HOLD,)))

    assert [hold.cause for hold in state_of(made).open_holds] == ["import/asbestos"]


def test_registering_again_with_the_same_key_is_answered_again() -> None:
    """A lost reply asked for again registers nothing twice."""
    made = book()
    end = made.ledger.head()

    again = register_components(made, act("r", minute=-60), [coat()], station="2")

    assert (all(one.repeated for one in again), made.ledger.head()) == (True, end)


def test_what_is_registered_already_is_refused_with_everything_else_wrong() -> None:
    """A number in use, a number given twice and an unknown kind are all listed; nothing is kept."""
    made = book()
    end = made.ledger.head()
    odd = Component(id=ComponentId("9"), kind=KindId("cape"), state=State())

    with pytest.raises(BadInputError) as raised:
        register_components(made, act("x"), [coat(), coat(LINER), coat(LINER), odd])

    assert sorted(set(_messages(raised))) == [
        "gear.kind.unknown", "tasks.registered_already", "tasks.twice",
    ]  # fmt: skip
    assert made.ledger.head() == end


@pytest.mark.parametrize("empty", [register_components, register_things])
def test_nothing_to_register(empty: object) -> None:
    """An empty list is refused."""
    with pytest.raises(BadInputError) as raised:
        empty(book(), act("x"), [])  # type: ignore[operator]

    assert _messages(raised) == ["tasks.nothing"]


def test_a_changed_owner() -> None:
    """The owner changes by an entry of its own, and can be taken back."""
    made = book()

    change_facts(made, act("a", minute=1), COAT, {"owner": "120", "grant": "G-7"}, by="200")
    assert made.known(COAT)[0].component.owner == "120"

    change_facts(made, act("b", minute=2), COAT, {"owner": None}, by="200")
    assert made.known(COAT)[0].component.owner is None


def test_a_change_asked_for_again() -> None:
    """The same change under the same key is one change."""
    made = book()
    change_facts(made, act("a"), COAT, {"owner": "120"}, by="200")

    (again,) = change_facts(made, act("a"), COAT, {"owner": "120"}, by="200")

    assert again.repeated


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"state": {"stage": "checked"}}, "tasks.no_such_fact"),
        ({"wash_count": 2}, "tasks.no_such_fact"),
        ({"owner": 7}, "job.not_fit"),
        ({"kind": "cape"}, "gear.kind.unknown"),
    ],
)
def test_changes_that_cannot_be(changes: dict[str, object], message: str) -> None:
    """State and washes follow from events; values must fit."""
    with pytest.raises(BadInputError) as raised:
        change_facts(book(), act("a"), COAT, changes, by="200")  # type: ignore[arg-type]

    assert _messages(raised) == [message]


def test_a_change_by_nobody() -> None:
    """Somebody must stand for a change."""
    with pytest.raises(BadInputError) as raised:
        change_facts(book(), act("a"), COAT, {"owner": "120"}, by=" ")

    assert _messages(raised) == ["tasks.blank"]


def test_a_component_nobody_registered() -> None:
    """An unknown number is refused."""
    with pytest.raises(BadInputError) as raised:
        book().known(COAT, ComponentId("9"))

    assert _messages(raised) == ["tasks.no_such_component"]


def test_things_of_every_form() -> None:
    """Places, bags and members stand in the record with their station."""
    made = book()
    things = [
        Place(id=PlaceId("hook-1"), of="118"),
        Bag(id=BagId("B-7")),
        Member(id=MemberId("120")),
    ]

    register_things(made, act("t"), things, station="2")

    life = made.register.thing(item(ItemKind.PLACE, "hook-1"))
    assert life is not None
    assert life.facts == {"of": "118", "station": "2"}
    assert thing_of(ItemKind.PLACE, "hook-1", life.facts) == things[0]


def test_a_thing_registered_twice() -> None:
    """A name in use is refused; the same request again is answered again."""
    made = book()

    with pytest.raises(BadInputError) as raised:
        register_things(made, act("x"), [Member(id=MAREN)])

    assert _messages(raised) == ["tasks.registered_already"]
    (again,) = register_things(made, act("m", minute=-60), [Member(id=MAREN, crew="E2")])
    assert again.repeated


def test_a_changed_thing() -> None:
    """A member's crew changes; what does not fit, or is not there, is refused."""
    made = book()
    change_thing(made, act("a"), ItemKind.MEMBER, MAREN, {"crew": "L1"}, by="200")

    life = made.register.thing(item(ItemKind.MEMBER, MAREN))
    assert life is not None
    assert life.facts["crew"] == "L1"
    with pytest.raises(BadInputError):
        change_thing(made, act("b"), ItemKind.MEMBER, MAREN, {"crew": 7}, by="200")
    with pytest.raises(BadInputError) as raised:
        change_thing(made, act("c"), ItemKind.MEMBER, "999", {"crew": "L1"}, by="200")
    assert _messages(raised) == ["tasks.no_such_thing"]


def test_a_thing_of_no_form() -> None:
    """A load is no thing that is registered in a form of its own."""
    with pytest.raises(BadInputError) as raised:
        thing_of(ItemKind.LOAD, "W-9", {})

    assert _messages(raised) == ["job.no_form"]


def test_a_member_only_spoken_of_is_not_registered() -> None:
    """An entry about a member, such as an account's, does not stand in the way of registering."""
    made = book()
    thing = item(ItemKind.MEMBER, "120")
    made.ledger.append([act("o").entry(EntryKind.ROLE_CHANGED, thing, {"role": "officer"})])
    assert not made.registered(thing)

    register_things(made, act("t"), [Member(id=MemberId("120"))])

    assert made.registered(thing)
