"""The exact model and the prices on what real plans add to the neutral problem."""

from dataclasses import replace

import pytest
from tests.instances.small import GLOVES, SHELL, piece, small
from tests.instances.stops import after

from sootline.core.basis import MachineId, MemberId, PlaceId
from sootline.core.verify import verify
from sootline.core.washplan import (
    Begun,
    Cabinet,
    Changeover,
    Goal,
    Instance,
    Member,
    Plan,
    Programme,
    Spare,
    Washer,
    solve,
)
from sootline.core.washplan.exact import MOST_PIECES, Proof
from sootline.core.washplan.priced import price_out

M2 = MemberId("m2")
TWO = (Member(id=MemberId("m1")), Member(id=M2, priority=2))
RUNS = {
    "S": Programme(cap=100, min=60, temp=40, max_pieces=2),
    "X": Programme(cap=100, min=30, temp=40),
}
WASHERS = (Washer(id=MachineId("w0"), programmes=RUNS), Washer(id=MachineId("w1"), programmes={}))
PIECES = (
    piece("a"),
    piece("b", member=M2, family="X"),
    piece("c", member=M2),
    replace(GLOVES, hand_min=0, dry_cab=30),
)
FEATURES: dict[str, Instance] = {
    "pieces in a drum": small(members=TWO, pieces=PIECES, washers=WASHERS),
    "changeover": small(
        members=TWO, pieces=PIECES, washers=WASHERS,
        changeover=(
            Changeover(before="S", after="X", minutes=25),
            Changeover(before="X", after="S", minutes=15),
        ),
    ),
    "late family": small(members=TWO, pieces=PIECES, washers=WASHERS, late_families=("X",)),
    "only a cabinet": small(
        members=TWO, pieces=PIECES[:2], washers=WASHERS, rack_units=1,
        cabinets=(Cabinet(id=PlaceId("d"), units=2),),
    ),
    "nobody waits": small(members=(TWO[0], replace(TWO[1], priority=0)), pieces=PIECES,
                          washers=WASHERS),
    "a spare": small(members=TWO, pieces=PIECES, washers=WASHERS,
                     spares=(Spare(type="coat shell", size="M", count=1),)),
    "two shifts": small(members=TWO, pieces=PIECES, washers=WASHERS,
                        helpers=((0, 90, 2), (90, 1_000_000, 1))),
}  # fmt: skip


def _priced(instance: Instance, plan: Plan, goal: Goal = Goal.SOONEST) -> float:
    known = (plan.objective if goal is Goal.SOONEST else 0), plan.makespan
    return price_out(instance, goal=goal, by=200, known=known, stop=after(60), tell=lambda _: None)


@pytest.mark.parametrize("name", FEATURES)
def test_plan_and_bound_meet(name: str) -> None:
    """The model proves a plan that holds, no worse than the search's; prices stay below."""
    instance, told = FEATURES[name], [0.0]
    known = solve(instance, stop=after(20))
    found = Proof(instance, known).run(told.append) or known

    assert verify(instance, found) == ()
    assert max(told) == found.objective <= known.objective
    assert _priced(instance, found) <= found.objective


def test_nothing_is_found_below_the_best() -> None:
    """Asked for less than the best, the model has no plan."""
    best = solve(small(), stop=after(20))

    assert Proof(small(), replace(best, objective=best.objective - 1)).run(lambda _: None) is None


def test_a_proof_may_be_stopped() -> None:
    """Stopping before it runs does no harm."""
    instance = FEATURES["changeover"]
    proof = Proof(instance, solve(instance, stop=after(3)))
    proof.stop()

    assert isinstance(proof.run(lambda _: None), Plan | None)


@pytest.mark.parametrize(
    ("instance", "suits"),
    [
        (small(), True),
        (small(pieces=()), False),
        (small(pieces=tuple(piece(f"p{n}") for n in range(MOST_PIECES + 1))), False),
        (small(begun=Begun(minute=5)), False),
        (small(helpers=((0, 60, 1), (90, 1_000_000, 1))), False),
        (small(helpers=((0, 60, 0), (60, 1_000_000, 1))), False),
        (small(helpers=((9, 1_000_000, 1),)), False),
    ],
)
def test_what_the_model_takes_on(instance: Instance, suits: bool) -> None:
    """Small calls that nothing has begun of, with somebody there all the time."""
    assert Proof.suits(instance) is suits


def test_a_deadline_is_priced_in_people() -> None:
    """Everybody can be ready by minute 200, so no more than all is said."""
    instance = small(pieces=(replace(SHELL, dry_rack=20, dry_cab=None),))
    plan = solve(instance, stop=after(3))

    assert _priced(instance, plan, Goal.DEADLINE) == 1
