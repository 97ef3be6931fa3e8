"""Any history of events, in any order, keeps what the states promise."""

from hypothesis import given
from hypothesis import strategies as st
from tests.unit.gear.gear_cases import hold

from sootline.core.gear import CareStage, Event, EventKind, Life, State, apply
from sootline.core.rulebook.contaminants import Decider

events = st.builds(
    Event,
    kind=st.sampled_from(EventKind),
    by=st.sampled_from([None, "118"]),
    office=st.sampled_from([None, Decider.SAFETY_OFFICER, Decider.INVESTIGATOR]),
    cause=st.sampled_from(["powder", "blood"]),
    hold=st.sampled_from([None, hold("powder"), hold("blood")]),
)
histories = st.lists(events, max_size=40)
SHORTEST_WAY_ROUND = [
    Event(kind=kind, by="118")
    for kind in (
        EventKind.WORN, EventKind.RETURNED_SOILED, EventKind.PUT_IN_WASHER,
        EventKind.WASHER_ENDED, EventKind.HUNG, EventKind.DRIED,
    )
]  # fmt: skip


def walk(history: list[Event]) -> list[tuple[Event, State]]:
    """Apply a history from the hook; refused events change nothing."""
    state, passed = State(), []
    for event in history:
        result = apply(state, event)
        state = result if isinstance(result, State) else state
        passed.append((event, state))
    return passed


@given(histories)
def test_washed_is_not_checked_until_a_named_person_felt_it(history: list[Event]) -> None:
    """Between a wash and the hook stands a touch check with a name, whatever else happens."""
    waiting = False
    for event, state in walk([*SHORTEST_WAY_ROUND, *history]):
        waiting = waiting or state.stage is CareStage.WASHED
        if event.kind is EventKind.WORN and state.stage is CareStage.WORN:
            waiting = False
        if event.kind is EventKind.TOUCH_CHECKED and event.by:
            waiting = waiting and state.stage is not CareStage.CHECKED

        assert not (waiting and state.stage is CareStage.CHECKED)


@given(histories)
def test_a_hold_stays_until_an_entitled_person_ends_it(history: list[Event]) -> None:
    """Washing, moving, lending, losing and finding end no hold."""
    held = State(holds=(hold("powder"),))
    state = held
    for event in history:
        entitled = event.office is Decider.SAFETY_OFFICER and bool(event.by)
        releases = event.kind is EventKind.HOLD_RELEASED and event.cause == "powder"
        if releases and entitled:
            break
        result = apply(state, event)
        state = result if isinstance(result, State) else state

        assert "powder" in {one.cause for one in state.open_holds}


@given(histories)
def test_life_only_goes_on(history: list[Event]) -> None:
    """Nothing comes back from training, retirement or disposal."""
    order = [Life.RESERVE, Life.IN_SERVICE, Life.TRAINING_ONLY, Life.RETIRED, Life.DISPOSED]
    lives = [order.index(state.life) for _, state in walk(history)]

    assert lives == sorted(lives)
