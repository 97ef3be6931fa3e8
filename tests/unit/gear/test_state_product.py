"""Every state times every event keeps what holds, checks, evidence and the end of life promise."""

from itertools import product

import pytest
from tests.unit.gear.gear_cases import hold

from sootline.core.gear import (
    Assembly,
    CareStage,
    Custody,
    Event,
    EventKind,
    Life,
    State,
    apply,
)
from sootline.core.rulebook.contaminants import Decider

E = EventKind
OPEN = hold()
STATES = [
    State(stage=stage, custody=custody, life=life, holds=holds, assembly=assembly)
    for stage, custody, life, holds, assembly in product(
        CareStage,
        Custody,
        Life,
        ((), (OPEN, hold("blood"))),
        (Assembly.ASSEMBLED, Assembly.APART),
    )
]
EVENTS = [
    Event(kind=kind, by=by, office=office, cause="powder", hold=hold("asbestos"))
    for kind in EventKind
    for by in (None, "118")
    for office in (None, Decider.SAFETY_OFFICER, Decider.INVESTIGATOR)
]


def test_the_whole_product_of_states_and_events_keeps_its_promises() -> None:
    """No state times event breaks what holds, checks, evidence and the end of life promise."""
    for state in STATES:
        for event in EVENTS:
            result = apply(state, event)
            if isinstance(result, State):
                assert broken(state, event, result) == [], (state, event, result)


def broken(before: State, event: Event, now: State) -> list[str]:
    """List the promises a permitted event breaks."""
    promises = {
        "a held piece is never put in a washer": not (
            event.kind is E.PUT_IN_WASHER and (before.open_holds or now.open_holds)
        ),
        "evidence is never put in a washer": not (
            before.custody is Custody.EVIDENCE and event.kind is E.PUT_IN_WASHER
        ),
        "only loading puts it in a washer": (
            now.stage is not CareStage.IN_WASHER
            or before.stage is CareStage.IN_WASHER
            or event.kind is E.PUT_IN_WASHER
        ),
        "only a named person makes it checked": (
            now.stage is not CareStage.CHECKED
            or before.stage is CareStage.CHECKED
            or (event.kind in (E.TOUCH_CHECKED, E.LOOKED_OVER) and bool(event.by))
        ),
        "after a wash only the touch check makes it checked": not (
            event.kind is E.LOOKED_OVER and before.stage is not CareStage.WORN
        ),
        "retired never returns": (
            before.life is not Life.RETIRED or now.life in (Life.RETIRED, Life.DISPOSED)
        ),
        "retired is never used": not (
            before.life is Life.RETIRED
            and (now.stage in (CareStage.WORN, CareStage.IN_WASHER) and now.stage != before.stage)
        ),
        "disposed is final": before.life is not Life.DISPOSED,
        "a hold never vanishes": len(now.holds) >= len(before.holds),
        "a hold ends only by release of the entitled": (
            len(now.open_holds) >= len(before.open_holds)
            or (
                event.kind is E.HOLD_RELEASED
                and bool(event.by)
                and event.office is Decider.SAFETY_OFFICER
            )
        ),
        "nothing is disposed of while held": not (event.kind is E.DISPOSED and now.open_holds),
        "nothing held hangs on a hook anew": not (
            now.custody is Custody.HOOK and before.custody is not Custody.HOOK and now.open_holds
        ),
    }
    return [promise for promise, kept in promises.items() if not kept]


@pytest.mark.parametrize("kind", EventKind)
def test_every_event_is_possible_somewhere(kind: EventKind) -> None:
    """No event of the table is dead."""
    events = [event for event in EVENTS if event.kind is kind]

    assert any(isinstance(apply(state, event), State) for state in STATES for event in events)
