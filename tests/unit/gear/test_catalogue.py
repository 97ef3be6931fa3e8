"""The kinds of component, and what is true of each."""

import pytest

from sootline.core.basis import BadInputError, Confidence, KindId
from sootline.core.gear import KINDS, Kind, Layer, WashMethod, find_kind
from sootline.core.gear.table import TRANSITIONS
from sootline.core.rulebook.topics import SCOPES


def test_every_kind_is_found_by_its_id() -> None:
    """What the catalogue lists can be looked up."""
    assert [find_kind(kind.id) for kind in KINDS] == list(KINDS)


def test_no_id_is_used_twice() -> None:
    """Two kinds of one id would hide each other."""
    assert len({kind.id for kind in KINDS}) == len(KINDS)


def test_an_unknown_kind_is_refused_with_the_known_ones() -> None:
    """A typing slip is answered with what could have been meant."""
    with pytest.raises(BadInputError) as refused:
        find_kind(KindId("coat-shel"))

    fault = refused.value.faults[0]
    assert dict(fault.values)["given"] == "coat-shel"
    assert "coat-shell" in dict(fault.values)["known"]


def test_separable_parts_are_kinds_themselves() -> None:
    """Every part that comes off can be tracked."""
    assert {find_kind(part).id for kind in KINDS for part in kind.separable}


@pytest.mark.parametrize("part", ["suspenders", "knee-pads"])
def test_small_parts_do_not_govern_their_set(part: str) -> None:
    """An old pair of suspenders takes no coat out of service."""
    assert not find_kind(KindId(part)).governs_set


@pytest.mark.parametrize("part", ["coat-shell", "coat-liner", "drag-device", "trouser-liner"])
def test_shells_liners_and_drag_devices_govern_their_set(part: str) -> None:
    """The earliest of shell, liner and drag device decides."""
    assert find_kind(KindId(part)).governs_set


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)
def test_a_range_of_mass_runs_upward(kind: Kind) -> None:
    """The lightest is not heavier than the heaviest."""
    assert kind.mass is None or kind.mass[0].base < kind.mass[1].base


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)
def test_what_goes_into_a_mesh_bag_is_told_to(kind: Kind) -> None:
    """Bag and step of preparation belong together."""
    assert kind.mesh_bag == ("mesh_bag" in {step.step for step in kind.preparation})


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)
def test_what_is_felt_after_drying_is_named_unless_others_do_it(kind: Kind) -> None:
    """Only the mask is left to its own technicians."""
    assert bool(kind.touch_points) == (kind.layer is not Layer.MASK)


def test_hard_surfaces_are_made_of_one() -> None:
    """What is disinfected as a hard surface must be named so on a product's label."""
    assert {"hard-surface" in kind.materials for kind in KINDS if kind.hard_surface} == {True}


def test_mask_and_escape_gear_are_not_washed_here_by_habit() -> None:
    """The mask stays with its technicians, rope and webbing with their maker's word."""
    left = [kind.id for kind in KINDS if kind.usual_wash is WashMethod.NONE]

    assert left == ["escape-belt", "escape-kit", "mask"]


def test_usual_treatment_is_cited_as_practice_and_mass_as_memory() -> None:
    """Nobody takes either for a published value."""
    kind = find_kind(KindId("hood"))

    assert kind.ground.confidence is Confidence.PRACTICE
    assert kind.mass_ground.confidence is Confidence.MEMORY


def test_rules_can_be_confined_to_every_structural_kind() -> None:
    """The scopes of the rule files know the kinds, other wear apart."""
    structural = {kind.id for kind in KINDS if kind.layer is not Layer.OTHER_WEAR}

    assert structural <= SCOPES


def test_every_event_of_the_table_is_reachable_by_a_state() -> None:
    """No row is shut out by an empty list of stages, places or lives."""
    assert all(row.stages and row.custodies and row.lives for row in TRANSITIONS)
