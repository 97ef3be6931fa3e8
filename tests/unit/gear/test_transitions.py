"""What an event makes of a state."""

import pytest
from tests.docs.states import PAGE, reference
from tests.unit.gear.gear_cases import hold

from sootline.core.basis import MemberId, PlaceId
from sootline.core.gear import (
    Assembly,
    CareStage,
    Custody,
    Event,
    EventKind,
    Life,
    Refusal,
    State,
    apply,
)
from sootline.core.rulebook.contaminants import Decider

OPEN = hold()
RELEASE = Event(
    kind=EventKind.HOLD_RELEASED, by="M07", office=Decider.SAFETY_OFFICER, cause="powder", said="ok"
)


def after(state: State, *events: Event | EventKind) -> State:
    """Apply events that must all be permitted."""
    for event in events:
        given = event if isinstance(event, Event) else Event(kind=event, by="118")
        result = apply(state, given)
        assert isinstance(result, State), result.reason
        state = result
    return state


def why(state: State, event: Event | EventKind) -> str:
    """Return why an event is refused."""
    given = event if isinstance(event, Event) else Event(kind=event, by="118")
    result = apply(state, given)
    assert isinstance(result, Refusal)
    return result.reason.message.removeprefix("gear.refused.")


E = EventKind
WASHED_AND_CHECKED = (
    E.RETURNED_SOILED, E.BAGGED, E.SORTED, E.PUT_IN_WASHER, E.WASHER_ENDED, E.HUNG, E.DRIED,
    E.TOUCH_CHECKED,
)  # fmt: skip


def test_a_piece_goes_from_the_call_back_to_the_hook() -> None:
    """Worn, washed, dried, checked by a named person, rebuilt, hung up."""
    worn = after(State(), Event(kind=E.WORN, holder=MemberId("101")))

    back = after(worn, *WASHED_AND_CHECKED, E.REBUILT, E.BACK_ON_HOOK)

    assert (back.custody, back.stage) == (Custody.HOOK, CareStage.CHECKED)


def test_gloves_are_washed_by_hand_under_a_name() -> None:
    """A basin has no programme that ends by itself."""
    soiled = after(State(), E.WORN, E.RETURNED_SOILED)

    assert after(soiled, E.WASHED_BY_HAND).stage is CareStage.WASHED
    assert why(soiled, Event(kind=E.WASHED_BY_HAND)) == "no_name"


def test_a_stopped_washer_has_washed_nothing() -> None:
    """A power cut in mid-cycle puts the piece back to be washed."""
    running = after(State(), E.WORN, E.RETURNED_SOILED, E.PUT_IN_WASHER)

    assert after(running, E.WASHER_FAILED).stage is CareStage.TO_WASH


@pytest.mark.parametrize("name", [None, "", "  "])
def test_nobody_checks_without_a_name(name: str | None) -> None:
    """A blank is no name."""
    state = State(stage=CareStage.TO_CHECK, custody=Custody.WASH_ROOM)

    assert why(state, Event(kind=E.TOUCH_CHECKED, by=name)) == "no_name"


@pytest.mark.parametrize("stage", [stage for stage in CareStage if stage is not CareStage.CHECKED])
@pytest.mark.parametrize("event", [E.BACK_ON_HOOK, E.BACK_ON_SPARE_RACK, E.LENT, E.ISSUED])
def test_nothing_unchecked_goes_back_or_out(stage: CareStage, event: EventKind) -> None:
    """Damp gear burns; a named touch check comes first."""
    assert why(State(stage=stage, custody=Custody.WASH_ROOM), event) == "not_checked"


def test_a_damp_piece_is_hung_again_at_the_check() -> None:
    """Who feels damp cuffs hangs it up again."""
    state = State(stage=CareStage.TO_CHECK, custody=Custody.WASH_ROOM)

    assert after(state, E.HUNG).stage is CareStage.DRYING


@pytest.mark.parametrize(
    "event",
    [E.SORTED, E.PUT_IN_WASHER, E.WASHED_BY_HAND, E.SENT_TO_CONTRACTOR],
)
def test_a_hold_stops_opening_washing_and_sending(event: EventKind) -> None:
    """Nobody opens or washes it until somebody entitled decides."""
    held = State(stage=CareStage.TO_WASH, custody=Custody.WASH_ROOM, holds=(OPEN,))

    assert why(held, event) == "open_hold"


def test_a_refusal_names_cause_and_decider() -> None:
    """The reader learns whom to ask."""
    held = State(stage=CareStage.TO_WASH, custody=Custody.WASH_ROOM, holds=(OPEN,))

    refused = apply(held, Event(kind=E.PUT_IN_WASHER))

    assert isinstance(refused, Refusal)
    assert refused.reason.value("causes") == "powder"
    assert refused.reason.value("deciders") == "safety-officer"


def test_worn_while_on_hold_is_recorded_and_the_hold_stays() -> None:
    """Without blame: it happened."""
    worn = after(State(holds=(OPEN,)), Event(kind=E.WORN, holder=MemberId("102")))

    assert (worn.stage, worn.holder, worn.holds) == (CareStage.WORN, "102", (OPEN,))


def test_a_hold_that_opens_in_the_drum_survives_the_wash() -> None:
    """Late news does not stop the drum, and the drum does not end the hold."""
    running = State(stage=CareStage.IN_WASHER, custody=Custody.WASH_ROOM)

    ended = after(running, Event(kind=E.HOLD_OPENED, hold=OPEN), E.WASHER_ENDED)

    assert (ended.stage, ended.open_holds) == (CareStage.WASHED, (OPEN,))
    assert why(ended, E.HUNG) == "open_hold"


def test_a_release_keeps_the_hold_with_who_ended_it() -> None:
    """History is kept; other holds stay open."""
    held = State(holds=(OPEN, hold("blood")))

    released = after(held, RELEASE)

    assert [one.cause for one in released.open_holds] == ["blood"]
    assert released.holds[0].released_by == "M07: ok"


def test_a_deputy_may_release() -> None:
    """Whoever stands in decides as well; words are not asked for."""
    event = Event(kind=E.HOLD_RELEASED, by="C1", office=Decider.CHIEF, cause="powder")

    assert after(State(holds=(OPEN,)), event).holds[0].released_by == "C1"


@pytest.mark.parametrize("office", [None, Decider.GEAR_OFFICER, Decider.INFECTION_CONTROL])
def test_nobody_else_releases(office: Decider | None) -> None:
    """An office that was not asked ends nothing."""
    event = Event(kind=E.HOLD_RELEASED, by="X", office=office, cause="powder")

    assert why(State(holds=(OPEN,)), event) == "not_entitled"


def test_a_hold_that_is_not_open_is_not_released() -> None:
    """There is nothing to end."""
    assert why(State(), RELEASE) == "not_entitled"


def test_one_cause_opens_one_hold() -> None:
    """A second report adds to the first; a released one may open again."""
    again = Event(kind=E.HOLD_OPENED, hold=OPEN)

    assert why(State(holds=(OPEN,)), again) == "hold_already"
    assert len(after(State(holds=(OPEN,)), RELEASE, again).holds) == 2
    assert why(State(), Event(kind=E.HOLD_OPENED)) == "hold_already"


def test_evidence_is_not_washed_and_only_the_investigator_gives_it_back() -> None:
    """What comes back is washed, whatever it was before, unless it was checked."""
    soiled = State(stage=CareStage.TO_WASH, custody=Custody.WASH_ROOM)
    secured = after(soiled, E.EVIDENCE_TAKEN)

    assert why(secured, E.PUT_IN_WASHER) == "evidence"
    assert why(secured, E.EVIDENCE_RETURNED) == "not_investigator"
    back = after(secured, Event(kind=E.EVIDENCE_RETURNED, by="I", office=Decider.INVESTIGATOR))
    assert (back.custody, back.stage) == (Custody.WASH_ROOM, CareStage.TO_WASH)


def test_evidence_taken_out_of_a_running_washer_is_not_washed() -> None:
    """The programme did not end."""
    running = State(stage=CareStage.IN_WASHER, custody=Custody.WASH_ROOM)

    assert after(running, E.EVIDENCE_TAKEN).stage is CareStage.TO_WASH


def test_retired_gear_is_only_held_secured_found_and_disposed_of() -> None:
    """It never comes back into use."""
    retired = after(State(), E.RETIRED)

    assert why(retired, E.WORN) == "retired"
    assert after(retired, Event(kind=E.HOLD_OPENED, hold=OPEN)).life is Life.RETIRED
    assert after(retired, E.DISPOSED).life is Life.DISPOSED


def test_only_retired_gear_is_disposed_of() -> None:
    """A slip of the finger ends nothing."""
    assert why(State(), E.DISPOSED) == "not_retired"


def test_retired_gear_that_is_not_here_is_not_disposed_of() -> None:
    """It has to come back first."""
    away = State(life=Life.RETIRED, custody=Custody.CONTRACTOR)

    assert why(away, E.DISPOSED) == "not_from_here"


def test_nothing_happens_to_what_was_disposed_of() -> None:
    """The last state is the last."""
    gone = State(life=Life.DISPOSED)

    assert {why(gone, kind) for kind in EventKind} == {"disposed"}


def test_a_lost_piece_is_checked_or_washed_when_it_turns_up() -> None:
    """Nobody knows where it was meanwhile."""
    assert after(State(), E.LOST_SIGHT, E.FOUND).stage is CareStage.TO_CHECK
    soiled = State(stage=CareStage.WASHED)
    assert after(soiled, E.LOST_SIGHT, E.FOUND).stage is CareStage.TO_WASH


def test_a_loan_that_was_worn_comes_back_to_be_washed() -> None:
    """The neighbour's fire soils as ours does."""
    lent = after(State(), E.LENT)

    assert after(lent, E.CAME_BACK).stage is CareStage.TO_CHECK
    assert after(lent, E.WORN, E.CAME_BACK).stage is CareStage.TO_WASH


def test_the_contractor_brings_back_what_needs_a_check() -> None:
    """Washed by others is not yet checked by us."""
    sent = after(State(), E.WORN, E.SENT_TO_CONTRACTOR)

    assert after(sent, E.RECEIVED_WASHED).stage is CareStage.TO_CHECK
    assert after(sent, E.RECEIVED_UNWASHED).stage is CareStage.TO_WASH


def test_a_repaired_piece_needs_a_check() -> None:
    """A repair is no check; what is soiled is not sent at all."""
    assert after(State(), E.SENT_TO_REPAIR, E.BACK_FROM_REPAIR).stage is CareStage.TO_CHECK
    assert why(State(stage=CareStage.WORN), E.SENT_TO_REPAIR) == "not_from_here"


@pytest.mark.parametrize("event", [E.ISSUED, E.WORN, E.LENT])
def test_reserve_is_in_service_once_it_is_issued_worn_or_lent(event: EventKind) -> None:
    """Its inspections are due from then on."""
    reserve = State(life=Life.RESERVE, custody=Custody.SPARE_RACK)

    assert after(reserve, event).life is Life.IN_SERVICE


def test_training_gear_stays_training_gear() -> None:
    """Wearing it does not bring it back into service."""
    marked = after(State(), E.TRAINING_MARKED)

    assert after(marked, E.WORN).life is Life.TRAINING_ONLY
    assert why(marked, E.TRAINING_MARKED) == "not_from_here"


@pytest.mark.parametrize("assembly", [one for one in Assembly if one is not Assembly.ASSEMBLED])
def test_what_is_not_put_together_stays_off_the_hook(assembly: Assembly) -> None:
    """A coat without its drag device, or with another's liner, waits."""
    state = State(custody=Custody.WASH_ROOM, assembly=assembly)

    assert why(state, E.BACK_ON_HOOK) == "not_together"
    assert after(state, E.REBUILT, E.BACK_ON_HOOK).custody is Custody.HOOK


def test_sorting_and_rebuilding_report_how_it_stands_to_its_set() -> None:
    """Anything else leaves that as it was."""
    soiled = State(stage=CareStage.TO_WASH, custody=Custody.BAG)
    apart = after(soiled, Event(kind=E.SORTED, assembly=Assembly.APART))

    assert after(apart, E.PUT_IN_WASHER).assembly is Assembly.APART
    mixed = Event(kind=E.REBUILT, by="118", assembly=Assembly.MISMATCHED)
    assert after(State(), mixed).assembly is Assembly.MISMATCHED


def test_a_place_is_forgotten_when_the_piece_moves_on() -> None:
    """An old rack number is worse than none."""
    on_rack = State(custody=Custody.WASH_ROOM, place=PlaceId("rack-3"), stage=CareStage.DRYING)

    assert after(on_rack, E.DRIED).place == "rack-3"
    assert after(on_rack, E.DRIED, E.TOUCH_CHECKED, E.BACK_ON_HOOK).place is None


def test_a_routine_look_may_end_it_without_a_wash() -> None:
    """Worn, looked over by a named person, back; not while a hold is open."""
    worn = State(stage=CareStage.WORN)

    assert after(worn, E.LOOKED_OVER).stage is CareStage.CHECKED
    assert why(State(stage=CareStage.WORN, holds=(OPEN,)), E.LOOKED_OVER) == "open_hold"


def test_the_page_of_states_is_up_to_date() -> None:
    """What is documented is what the table says."""
    assert PAGE.read_bytes() == reference()[PAGE]
