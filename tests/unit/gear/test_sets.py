"""Sets as views."""

from tests.unit.gear.gear_cases import piece

from sootline.core.basis import KindId
from sootline.core.gear import Component, Custody, Element, Life, SetView, State, view_sets

COAT = ("coat-shell", "coat-liner", "drag-device")


def parts(*kinds: str) -> list[Component]:
    """Make the components of set A, each named after its kind."""
    return [piece(kind, name=kind, of_set="A") for kind in kinds]


def only(*components: Component, also: tuple[KindId, ...] = ()) -> SetView:
    """View components that belong to one set."""
    (view,) = view_sets(components, also)
    return view


def test_a_coat_is_shell_liner_and_drag_device() -> None:
    """With all three nothing lacks."""
    assert only(*parts(*COAT)).complete


def test_a_coat_without_its_drag_device_is_incomplete() -> None:
    """The small part without an owner is named."""
    view = only(*parts("coat-shell", "coat-liner"))

    assert not view.complete
    assert [(one.kind, one.component) for one in view.elements[0].lacking] == [
        ("drag-device", None)
    ]


def test_a_part_not_seen_lacks_and_is_named() -> None:
    """It is recorded, but nobody knows where it is."""
    lost = piece("drag-device", name="D", of_set="A", state=State(custody=Custody.NOT_SEEN))

    lacking = only(*parts("coat-shell", "coat-liner"), lost).elements[0].lacking

    assert [one.component for one in lacking] == ["D"]


def test_a_retired_liner_lacks() -> None:
    """What is out for good completes nothing."""
    out = piece("trouser-liner", name="L", of_set="A", state=State(life=Life.RETIRED))

    assert not only(*parts("trouser-shell"), out).complete


def test_trousers_need_suspenders_only_where_policy_says_so() -> None:
    """By themselves they are shell and liner."""
    trousers = parts("trouser-shell", "trouser-liner")

    assert only(*trousers).complete
    assert not only(*trousers, also=(KindId("suspenders"),)).complete


def test_a_policy_on_trousers_asks_nothing_of_a_coat() -> None:
    """A kind is wanted only in the element it belongs to."""
    assert only(*parts(*COAT), also=(KindId("suspenders"),)).complete


def test_two_liners_in_one_coat_are_a_question() -> None:
    """One of them belongs to somebody else."""
    second = piece("coat-liner", name="other", of_set="A")

    view = only(*parts(*COAT), second)

    assert view.elements[0].doubled == ("coat-liner",)
    assert not view.complete


def test_shell_liner_and_drag_device_govern_and_suspenders_do_not() -> None:
    """Whose date counts is a property of the kind."""
    view = only(*parts("trouser-shell", "trouser-liner", "suspenders", "knee-pads"))

    assert view.elements[0].governing == ("trouser-shell", "trouser-liner")


def test_a_helmet_is_governed_by_its_shell_and_a_hood_by_itself() -> None:
    """They are elements of their own."""
    view = only(*parts("helmet-shell", "helmet-padding", "hood"))

    assert {one.element: one.governing for one in view.elements} == {
        Element.HOOD: ("hood",),
        Element.HELMET: ("helmet-shell",),
    }


def test_a_coverall_takes_the_drag_device() -> None:
    """Where there is no coat it belongs to the coverall."""
    view = only(*parts("coverall-shell", "coverall-liner", "drag-device"))

    assert view.complete
    assert [one.element for one in view.elements] == [Element.COVERALL]


def test_beside_a_coat_the_drag_device_is_the_coats() -> None:
    """The coverall then lacks its own."""
    view = only(*parts(*COAT, "coverall-shell", "coverall-liner"))

    assert [one.complete for one in view.elements] == [True, False]


def test_sets_come_in_order_and_loose_pieces_are_in_none() -> None:
    """A set is only a view over what names it."""
    components = [
        piece("hood", name="1", of_set="B"),
        piece("hood", name="2", of_set="A"),
        piece("hood", name="3"),
    ]

    assert [view.id for view in view_sets(components)] == ["A", "B"]
