"""Which components go together, and which never do."""

from dataclasses import replace

import pytest
from tests.unit.laundry.wash_cases import (
    PRACTICE,
    ROOM,
    component,
    decide,
    drying_place,
    edition,
    messages,
    rule,
    rulebook,
    sort_all,
    sort_plain,
    sort_with,
    together,
)

from sootline.core.basis import BadInputError, PlaceId
from sootline.core.gear.kinds import DryMethod
from sootline.core.gear.labels import CareText
from sootline.core.laundry.rooms import Hanging, WashRoom

SHELL = component("cs1", "coat-shell")
LINER = component("cl1", "coat-liner")
HOOD = component("h1", "hood")


def reasons(sorting_sort: object) -> set[str]:
    """List the messages of a sort's reasons."""
    return {reason.message for reason in sorting_sort.reasons}  # type: ignore[attr-defined]


def test_shells_go_with_shells_and_liners_with_liners() -> None:
    """Two members' shells share, and so do their liners."""
    kinds = ("trouser-shell", "trouser-liner")
    other = [component(kind, kind, owner="M02") for kind in kinds]

    sorting = sort_plain(SHELL, LINER, *other)

    assert together(sorting) == {
        frozenset({"cs1", "trouser-shell"}),
        frozenset({"cl1", "trouser-liner"}),
    }


def test_no_policy_puts_a_shell_with_liners() -> None:
    """A policy that wants shells with the liners is not followed, and that is said."""
    book = rulebook(rule("wash.company", "liners", "shell"))

    sorting = sort_plain(SHELL, LINER, book=book)

    assert together(sorting) == {frozenset({"cs1"}), frozenset({"cl1"})}
    assert "laundry.company.overruled" in reasons(sort_with(sorting, "cs1"))


def test_policy_is_heard_before_practice() -> None:
    """Practice puts hoods with liners; a policy that wants them as a load of their own wins."""
    book = rulebook(rule("wash.company", "own", "hood"))

    sorting = sort_plain(LINER, HOOD, book=book)

    assert together(sorting) == {frozenset({"cl1"}), frozenset({"h1"})}


def test_policy_may_put_straps_with_liners() -> None:
    """Straps go with the liners where the policy says so, in a mesh bag either way."""
    strap = component("d1", "drag-device")

    with_shells = sort_with(sort_plain(SHELL, LINER, strap), "d1")
    book = rulebook(rule("wash.company", "liners", "strap"))
    with_liners = sort_with(sort_plain(SHELL, LINER, strap, book=book), "d1")

    assert (with_shells.components, with_shells.bagged) == (("cs1", "d1"), ("d1",))
    assert (with_liners.components, with_liners.bagged) == (("cl1", "d1"), ("d1",))


def test_goods_nobody_speaks_on_keep_to_themselves() -> None:
    """Without any rule, soft parts and straps each make a load of their own."""
    strap = component("d1", "drag-device")
    book = rulebook(practice=edition("practice/common"))

    sorting = sort_plain(SHELL, HOOD, strap, book=book)

    assert len(sorting.sorts) == 3
    assert "laundry.company.silent" in reasons(sort_with(sorting, "h1"))


def test_a_text_without_a_value_is_asked_and_the_next_one_speaks() -> None:
    """An unset company is a question; practice answers meanwhile."""
    sorting = sort_plain(HOOD, book=rulebook(rule("wash.company", None, "soft")))

    assert {"ask.wash.company", "laundry.company.liners"} <= reasons(sort_with(sorting, "h1"))


def test_station_wear_never_joins_structural_gear() -> None:
    """Not even a policy puts it with the shells."""
    wear = component("w1", "station-wear", mass="1 lb")
    book = rulebook(rule("wash.company", "shells", "other-wear"))

    sorting = sort_plain(SHELL, wear, book=book)

    assert together(sorting) == {frozenset({"cs1"}), frozenset({"w1"})}


def test_only_the_very_same_hazards_share() -> None:
    """Two with the same hazard share; another hazard, or none, stays apart."""
    names = ["a", "b", "c", "d"]
    shells = [component(name, "coat-shell", owner=name) for name in names]
    hazards = [("foam",), ("foam",), ("foam", "fuel"), ()]

    sorting = sort_all(
        [(one, decide(one, *which)) for one, which in zip(shells, hazards, strict=True)]
    )

    assert together(sorting) == {frozenset({"a", "b"}), frozenset({"c"}), frozenset({"d"})}
    assert "laundry.apart" in reasons(sort_with(sorting, "a"))
    assert sorting.sorts[0].components == ("d",), "what a hazard sets apart comes last"


def test_without_hazards_last_sorts_stand_in_order_of_arrival() -> None:
    """A room that does not put hazards last keeps the order."""
    first = component("a", "coat-shell", owner="a")
    pairs = [(first, decide(first, "foam")), (SHELL, decide(SHELL))]

    sorting = sort_all(pairs, replace(ROOM, hazards_last=False))

    assert [sort.components for sort in sorting.sorts] == [("a",), ("cs1",)]


def test_what_is_alone_shares_with_nothing() -> None:
    """Two coats with blood are each washed alone, in the drum and at the sink."""
    goods = [component(f"{kind}-{owner}", kind, owner=owner)
             for owner in ("a", "b") for kind in ("coat-shell", "gloves")]  # fmt: skip

    sorting = sort_all([(one, decide(one, "blood", alone=True)) for one in goods])

    assert all(len(sort.components) == 1 for sort in sorting.sorts)
    assert len(sorting.sorts) == 4
    assert "laundry.alone" in reasons(sorting.sorts[0])


def test_a_set_is_alone_as_one_where_the_room_handles_sets() -> None:
    """Where places hold a set's layer, coat and trousers of one set go as one, apart from all."""
    place = replace(drying_place("cabinet", DryMethod.RACK), holds=Hanging.SET)
    goods = [component(f"{kind}-{owner}", kind, owner=owner)
             for owner in ("a", "b") for kind in ("coat-shell", "trouser-shell")]  # fmt: skip

    sorting = sort_all(
        [(one, decide(one, "blood", alone=True)) for one in goods], replace(ROOM, drying=(place,))
    )

    assert together(sorting) == {
        frozenset({"coat-shell-a", "trouser-shell-a"}),
        frozenset({"coat-shell-b", "trouser-shell-b"}),
    }


def test_a_label_that_wants_one_piece_is_a_question() -> None:
    """Shell and liner in one piece can be in no load; the gear officer is asked."""
    coat = component("cs1", "coat-shell", care=CareText(assembled=True))

    sorting = sort_plain(coat)

    [(name, reason)] = sorting.kept_out
    assert (name, reason.message) == ("cs1", "laundry.out.assembled")


def test_food_and_hygiene_sinks_never_see_gear() -> None:
    """The kitchen sink is refused with its reason, and gloves go to the basin."""
    sorting = sort_plain(component("g1", "gloves"))

    assert messages(sorting) == {"laundry.sink.food"}
    assert sort_with(sorting, "g1").places == ("basin-1",)


def test_without_a_sink_handwork_is_refused() -> None:
    """Gloves nobody can wash here are said to be refused, with the method."""
    sorting = sort_plain(component("g1", "gloves"), room=replace(ROOM, sinks=()))

    assert sorting.sorts == ()
    assert "laundry.refused.wash" in messages(sorting, "g1")


def test_a_basin_does_for_brushing_and_a_bench_does_not_for_gloves() -> None:
    """Without a bench the helmet is brushed at the basin; without a basin gloves stay unwashed."""
    basin, bench = ROOM.sinks[:1], ROOM.sinks[1:2]
    helmet, gloves = component("hs1", "helmet-shell"), component("g1", "gloves")

    assert sort_plain(helmet, room=replace(ROOM, sinks=basin)).sorts[0].places == ("basin-1",)
    assert not sort_plain(gloves, room=replace(ROOM, sinks=bench)).sorts


def test_boots_take_basin_or_bench() -> None:
    """Boots alone may go to either."""
    assert sort_plain(component("b1", "boots-leather")).sorts[0].places == (
        PlaceId("basin-1"),
        PlaceId("bench-1"),
    )


def test_a_kind_nobody_washes_here_is_refused() -> None:
    """The mask goes to its own technician."""
    sorting = sort_plain(component("m1", "mask"))

    assert {"laundry.method.none", "laundry.refused.wash"} <= messages(sorting, "m1")


def test_unknown_kinds_and_components_are_refused() -> None:
    """A kind nobody knows is bad input; a decision without its component a mistake of ours."""
    with pytest.raises(BadInputError):
        sort_all([(replace(SHELL, kind="cape"), decide(SHELL))])  # type: ignore[arg-type]
    with pytest.raises(KeyError):
        sort_all([(SHELL, decide(HOOD))])


def test_an_empty_room_sorts_nothing_and_says_so() -> None:
    """Without washers, sinks and racks everything is refused, and nothing is lost."""
    sorting = sort_plain(SHELL, HOOD, room=WashRoom(), book=rulebook(practice=PRACTICE))

    assert sorting.sorts == ()
    assert messages(sorting, "cs1")
    assert messages(sorting, "h1")
