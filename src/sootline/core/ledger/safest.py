"""Which state asks for the most care, when it is not certain which of several a component is in?"""

from collections.abc import Iterable
from dataclasses import replace

from sootline.core.gear.state import Assembly, CareStage, Custody, Hold, Life, State

# From what may be used to what may not, and from what takes no work to what takes the most.
_STAGES = (
    CareStage.CHECKED,
    CareStage.TO_CHECK,
    CareStage.DRYING,
    CareStage.WASHED,
    CareStage.IN_WASHER,
    CareStage.WORN,
    CareStage.TO_WASH,
)
_CUSTODIES = (
    Custody.HOOK,
    Custody.SPARE_RACK,
    Custody.MEMBER,
    Custody.WASH_ROOM,
    Custody.BAG,
    Custody.LOAN,
    Custody.REPAIR,
    Custody.CONTRACTOR,
    Custody.NOT_SEEN,
    Custody.EVIDENCE,
)
_LIVES = (Life.RESERVE, Life.IN_SERVICE, Life.TRAINING_ONLY, Life.RETIRED, Life.DISPOSED)
_ASSEMBLIES = (
    Assembly.ASSEMBLED,
    Assembly.APART,
    Assembly.UNKNOWN,
    Assembly.INCOMPLETE,
    Assembly.MISMATCHED,
)


def safest(states: Iterable[State]) -> State:
    """Return the state that asks for the most care on each of the five axes by itself.

    A hold that is open in any of the states is open. The place and the holder are those of the
    state that gives the custody, and unknown where two of them disagree.

    Args:
        states: at least one.
    """
    every = tuple(dict.fromkeys(states))
    if len(every) == 1:
        return every[0]
    custody = max((state.custody for state in every), key=_CUSTODIES.index)
    there = [state for state in every if state.custody is custody]
    places, holders = {state.place for state in there}, {state.holder for state in there}
    return State(
        custody=custody,
        place=places.pop() if len(places) == 1 else None,
        holder=holders.pop() if len(holders) == 1 else None,
        stage=max((state.stage for state in every), key=_STAGES.index),
        holds=_holds(every),
        assembly=max((state.assembly for state in every), key=_ASSEMBLIES.index),
        life=max((state.life for state in every), key=_LIVES.index),
    )


def asks_no_less(one: State, other: State) -> bool:
    """Whether one state asks for at least the care that another does, on every axis."""
    causes = {hold.cause for hold in one.open_holds}
    return (
        _STAGES.index(one.stage) >= _STAGES.index(other.stage)
        and _LIVES.index(one.life) >= _LIVES.index(other.life)
        and _CUSTODIES.index(one.custody) >= _CUSTODIES.index(other.custody)
        and _ASSEMBLIES.index(one.assembly) >= _ASSEMBLIES.index(other.assembly)
        and causes.issuperset(hold.cause for hold in other.open_holds)
    )


def _holds(states: tuple[State, ...]) -> tuple[Hold, ...]:
    """Keep every hold once for each cause; open wherever it is open in any state."""
    found: dict[str, Hold] = {}
    for state in states:
        for hold in state.holds:
            kept = found.get(hold.cause)
            if kept is None or (hold.open and not kept.open):
                found[hold.cause] = hold
    return tuple(found.values())


def with_holds(state: State, holds: tuple[Hold, ...]) -> State:
    """Return a state with the holds of an earlier one: nothing but a release ends them."""
    return replace(state, holds=holds)
