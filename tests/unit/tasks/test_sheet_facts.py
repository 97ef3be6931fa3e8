"""What the sheets are told: loads, holds, wet bags, checks, and what the next shift finds."""

from dataclasses import replace

import pytest
from tests.paper_night import AT, BACK, CALL, GEAR, ROOM, night, piece, planned, worn

from sootline.core.basis import (
    BagId,
    ComponentId,
    ContaminantId,
    KindId,
    Limit,
    MemberId,
    MessageId,
    MinuteSpan,
    quantity,
)
from sootline.core.basis.quantities import Side, parse_limit
from sootline.core.exposure import Answer, Presence, Zone
from sootline.core.exposure.calls import Decon, DeconMethod
from sootline.core.gear import Act, CareStage, CareText, Component, Label, Life, find_kind
from sootline.core.gear.state import Hold
from sootline.core.job.jobs import Job
from sootline.core.laundry.rooms import Programme
from sootline.core.rulebook.contaminants import Decider
from sootline.tasks.check_sheets import list_after_wash, list_routine_look
from sootline.tasks.decide import decide_job
from sootline.tasks.hand_over import Left, hand_over
from sootline.tasks.hazards import WetBag, hazards_on, list_wet_bags
from sootline.tasks.hold_labels import HoldLabel, list_hold_labels
from sootline.tasks.load_cards import LoadCard, list_load_cards
from sootline.wiring.rules import RULES

HELD_BY_HAND = Hold(
    cause="lost paper",
    question=MessageId("care.hold.no_method"),
    decider=Decider.CHIEF,
    deputy=Decider.SAFETY_OFFICER,
    escalate_after_h=12,
)


def limit(text: str) -> Limit:
    """Return a limit at most."""
    return parse_limit(text, Side.AT_MOST)


def ids(components: tuple[Component, ...]) -> list[str]:
    """Return which components they are."""
    return [component.id for component in components]


@pytest.fixture(scope="module")
def cards() -> tuple[LoadCard, ...]:
    """Return the cards of the invented night."""
    job = night()
    return list_load_cards(job, planned(job))


def test_every_load_and_every_way_by_hand_has_a_card(cards: tuple[LoadCard, ...]) -> None:
    """Shells, liners with hoods, and gloves in the basin: three cards, numbered through."""
    assert [(card.number, card.of) for card in cards] == [(1, 3), (2, 3), (3, 3)]
    assert [card.where for card in cards] == ["drum 1", "drum 1", "basin"]
    assert cards[2].programme is None
    assert cards[2].weight_limit is None


def test_a_card_holds_its_load_to_the_strictest_water_of_its_pieces(
    cards: tuple[LoadCard, ...],
) -> None:
    """The edition's 105 °F (40 °C); nothing in it is without a number."""
    assert all(card.contents.water == limit("105 °F / 40 °C") for card in cards)
    assert all(card.contents.water_unknown == 0 for card in cards)


def test_a_label_stricter_than_the_edition_governs_the_whole_load() -> None:
    """One hood of 30 °C: the load it is in is washed at 30 °C at most."""
    careful = replace(GEAR[3], label=Label(care=CareText(wash_temp=limit("30 °C"))))
    cool = Programme(
        id="cool",
        bath_temp=quantity("28 °C"),
        extraction=quantity("90 G"),
        minutes=MinuteSpan.exactly(50),
    )
    drum = replace(ROOM.washers[0], programmes=(*ROOM.washers[0].programmes, cool))
    job = replace(night(gear=(*GEAR[:3], careful)), wash_room=replace(ROOM, washers=(drum,)))
    waters = {
        component.id: card.contents.water
        for card in list_load_cards(job, planned(job))
        for component in card.contents.components
    }

    assert waters[careful.id] == limit("30 °C")
    assert waters[ComponentId("301-1")] == limit("105 °F / 40 °C")


def test_steps_of_several_kinds_come_in_the_order_of_each() -> None:
    """A hood's look for thin spots and a liner's turning are both there, each in its own order."""
    job = night()
    liners = list_load_cards(job, planned(job))[1].contents

    steps = [step.rpartition(".")[2] for step in liners.preparation]
    assert steps.index("barrier_inward") < steps.index("liner_openings") < steps.index("pretreat")
    assert "thin_spots" in steps
    assert len(steps) == len(set(steps))


def test_a_card_says_where_everything_dries_and_what_lies_wet(cards: tuple[LoadCard, ...]) -> None:
    """The liner and the hood on the rack; 301's bag has been wet for one to three hours."""
    contents = cards[1].contents

    assert contents.drying == (("rack", (ComponentId("301-2"), ComponentId("301-4"))),)
    assert [bag.member for bag in contents.wet_bags] == ["301"]


def test_a_card_forbids_what_any_source_forbids(cards: tuple[LoadCard, ...]) -> None:
    """Chlorine bleach is forbidden by the adopted edition for every piece."""
    assert all(Act.CHLORINE_BLEACH in card.contents.never for card in cards)


def test_gear_wetted_on_scene_lies_wet_in_its_bag_for_hours() -> None:
    """Back an hour ago, the call three hours ago: at least one, at most three hours."""
    assert list_wet_bags(night()) == (
        WetBag(member=MemberId("301"), bags=(BagId("12"),), least_h=1.0, most_h=3.0),
    )


def test_while_nobody_knows_when_the_crew_was_back_the_least_is_none() -> None:
    """Unknown is zero to three hours, never a guess between."""
    (bag,) = list_wet_bags(night(calls=(replace(CALL, back_at=None),)))

    assert (bag.least_h, bag.most_h) == (0.0, 3.0)


@pytest.mark.parametrize(
    ("person", "listed"),
    [
        (worn("301", "12", DeconMethod.WATER), 1),
        (worn("301", "12", DeconMethod.DRY_BRUSH), 0),
        (replace(worn("301", "12", DeconMethod.WATER), bags=()), 0),
        (replace(worn("301", "12", DeconMethod.WATER), decon=Decon()), 0),
    ],
)
def test_only_what_was_wetted_and_bagged_is_named(person: Presence, listed: int) -> None:
    """A dry brush, no bag, or not known to be done: no wet bag."""
    assert len(list_wet_bags(night(calls=(replace(CALL, people=(person,)),)))) == listed


def test_what_may_be_on_a_piece_is_named_by_its_decision() -> None:
    """Blood somebody saw, smoke the wearer was in."""
    decided = decide_job(RULES, night())
    coat = [one for one in decided.decisions if one.component == "302-coat"]

    assert set(hazards_on(coat)) == {ContaminantId("blood"), ContaminantId("smoke")}


def label_of(job: Job) -> HoldLabel:
    """Return the only hold label of a job."""
    (label,) = list_hold_labels(job, decide_job(RULES, job))
    return label


def test_a_hold_label_says_whose_which_bag_since_when_and_who_decides() -> None:
    """302's coat with blood on it, in bag 13, since the crew was back."""
    label = label_of(night())

    assert (label.owner, ids(label.components), label.bags) == ("302", ["302-coat"], ("13",))
    assert label.sealed
    assert [(held.since, held.person, held.stand_in) for held in label.held] == [
        (BACK, "207", "204")
    ]


def test_while_nobody_knows_when_the_crew_was_back_a_hold_counts_from_the_call() -> None:
    """The earliest it can be, so that it goes up no later than it should."""
    label = label_of(night(calls=(replace(CALL, back_at=None),)))

    assert label.held[0].since == AT


def test_blood_through_to_skin_stands_first_on_the_label() -> None:
    """Infection control is called before anybody touches it."""
    assert [first.message for first in label_of(night()).first] == ["care.first.infection_control"]


def test_a_hold_recorded_by_hand_has_no_hour_and_no_name() -> None:
    """What is not on record is not made up."""
    label = label_of(night(gear=(piece("S-9", "hood", holds=(HELD_BY_HAND,)),), calls=()))

    assert (label.owner, label.bags) == (None, ())
    assert (label.held[0].since, label.held[0].person) == (None, None)


def test_gear_of_one_member_held_for_the_same_cause_shares_a_label() -> None:
    """Two pieces, one label; a third with no hold has none."""
    liner = piece("302-liner", "coat-liner", "302")
    bloody = replace(CALL.remarks[0], component=liner.id)
    call = replace(CALL, remarks=(*CALL.remarks, bloody))
    label = label_of(night(gear=(*GEAR, liner), calls=(call,)))

    assert ids(label.components) == ["302-coat", "302-liner"]


def test_the_check_lists_what_is_washed_or_was_kind_by_kind() -> None:
    """What goes to the wash tonight and what is out of it; nothing that is sealed."""
    job = night()
    groups = list_after_wash(job, decide_job(RULES, job))

    assert [(group.kind, ids(group.components)) for group in groups] == [
        ("coat-shell", ["301-1", "303-coat"]),
        ("coat-liner", ["301-2", "303-liner"]),
        ("hood", ["301-4"]),
        ("gloves", ["301-3"]),
    ]
    assert groups[0].points == find_kind(KindId("coat-shell")).touch_points


def test_the_look_lists_what_was_at_the_call_and_needs_no_wash() -> None:
    """Somebody at the pump looks over what was worn; what dries waits for its check."""
    pump = Presence(member=MemberId("303"), zones=(Zone.PUMP,), smoke=Answer.NO, on_air=Answer.NO)
    boots = piece("303-boots", "boots-rubber", "303")
    job = night(gear=(*GEAR, boots), calls=(replace(CALL, people=(*CALL.people, pump)),))
    groups = list_routine_look(job, decide_job(RULES, job))

    assert [(group.kind, ids(group.components)) for group in groups] == [
        ("boots-rubber", ["303-boots"])
    ]


def test_the_next_shift_is_told_of_everything_that_is_not_as_usual() -> None:
    """Each piece under every way in which it is not on its hook; the rest is counted."""
    job = night()
    told = hand_over(job, decide_job(RULES, job))

    assert [(left, ids(pieces)) for left, pieces in told.exceptions] == [
        (Left.HELD, ["302-coat"]),
        (Left.WET, ["303-liner"]),
        (Left.DRYING, ["303-coat"]),
        (Left.TO_WASH, ["301-1", "301-2", "301-3", "301-4"]),
        (Left.LOAN, ["S-1", "S-2"]),
        (Left.AWAY, ["S-3"]),
    ]
    assert told.usual == 1
    assert told.down == ("drum 2",)
    assert [bag.member for bag in told.wet_bags] == ["301"]


def test_what_is_retired_is_nobodys_to_hand_over() -> None:
    """It is neither an exception nor counted as usual."""
    gone = piece("old", "hood", life=Life.RETIRED, stage=CareStage.DRYING)
    job = night(gear=(gone,), calls=())
    told = hand_over(job, decide_job(RULES, job))

    assert (told.exceptions, told.usual) == ((), 0)
