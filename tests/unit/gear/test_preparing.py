"""Steps before washing."""

from tests.unit.gear.gear_cases import piece, terms

from sootline.core.basis import KindId
from sootline.core.gear import CareText, WashMethod, find_kind, list_preparation


def steps(kind: str, care: CareText | None = None) -> list[str]:
    """List the steps for a component of a kind, under its label."""
    component = piece(kind, care)
    return [step.step for step in list_preparation(find_kind(KindId(kind)), terms(component))]


def test_a_coat_shell_is_emptied_taken_apart_and_closed_in_order() -> None:
    """Pockets first, closures at the end."""
    assert steps("coat-shell") == [
        "pockets", "accessories", "name_panel", "liner_out", "drag_device_out",
        "hook_covered", "closures", "pretreat",
    ]  # fmt: skip


def test_suspenders_and_pads_come_off_the_trousers() -> None:
    """Both before the closures are fastened."""
    assert steps("trouser-shell") == [
        "pockets", "escape_kit_out", "liner_out", "suspenders_off", "knee_pads_out",
        "hook_covered", "closures", "pretreat",
    ]  # fmt: skip


def test_the_barrier_faces_inward_unless_the_label_says_otherwise() -> None:
    """The maker knows how the liner is built."""
    assert steps("coat-liner")[0] == "barrier_inward"
    assert steps("coat-liner", CareText(barrier_outward=True))[0] == "barrier_outward"


def test_what_is_washed_in_one_piece_is_not_taken_apart() -> None:
    """Liner and drag device stay, and no barrier is turned."""
    in_one_piece = steps("coat-shell", CareText(assembled=True))

    assert "liner_stays" in in_one_piece
    assert not {"liner_out", "drag_device_out", "name_panel"} & set(in_one_piece)
    assert "barrier_inward" not in steps("coat-liner", CareText(assembled=True))


def test_straps_go_into_a_mesh_bag_only_in_a_drum() -> None:
    """By hand no bag is needed."""
    assert "mesh_bag" in steps("suspenders")
    assert "mesh_bag" not in steps("suspenders", CareText(wash=WashMethod.HAND))


def test_every_step_says_what_to_do_and_what_goes_wrong() -> None:
    """Both sentences are found by the step's name."""
    first = find_kind(KindId("coat-shell")).preparation[0]

    assert (first.act, first.skipped) == ("gear.prep.pockets", "gear.skip.pockets")
