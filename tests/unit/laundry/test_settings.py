"""On which washer and programme a component may go, and the reason against each other one."""

from dataclasses import replace

import pytest
from tests.unit.laundry.wash_cases import (
    ADOPTED,
    ROOM,
    component,
    edition,
    limit,
    messages,
    programme,
    rulebook,
    sort_plain,
    sort_with,
    washer,
)

from sootline.core.basis import quantity
from sootline.core.gear.labels import CareText
from sootline.core.laundry.rooms import Company, Washer
from sootline.core.laundry.sorts import Sorting

SHELL = component("cs1", "coat-shell")


def with_washers(*washers: Washer, care: CareText | None = None) -> Sorting:
    """Sort one coat shell in a room with these washers."""
    coat = component("cs1", "coat-shell", care=care)
    return sort_plain(coat, room=replace(ROOM, washers=washers))


@pytest.mark.parametrize(
    ("bath", "spin", "refusal"),
    [
        ("105 °F", "100 G", None),
        ("40 °C", "100 G", None),
        ("106 °F", "100 G", "laundry.bath.beyond"),
        ("41 °C", "100 G", "laundry.bath.beyond"),
        (None, "100 G", "laundry.bath.unknown"),
        ("105 °F", "101 G", "laundry.spin.beyond"),
        ("105 °F", None, "laundry.spin.unknown"),
    ],
)
def test_bath_and_spin_at_and_beyond_the_limit(
    bath: str | None, spin: str | None, refusal: str | None
) -> None:
    """At the adopted limit it passes, one step beyond it fails, and what is unknown asks."""
    sorting = with_washers(washer("W1", programme("p", bath=bath, spin=spin)))

    assert bool(sorting.sorts) is (refusal is None)
    assert messages(sorting, "cs1") >= ({refusal, "laundry.refused.wash"} if refusal else set())


def test_a_label_of_40_c_refuses_a_105_f_bath() -> None:
    """The label states one unit, so 105 °F is converted and is too hot; 104 °F passes."""
    care = CareText(wash_temp=limit("40 °C"))

    hot = with_washers(washer("W1", programme("p", bath="105 °F")), care=care)
    cooler = with_washers(washer("W1", programme("p", bath="104 °F")), care=care)

    [refusal] = [one for one in hot.refused if one.message == "laundry.bath.beyond"]
    assert (refusal.ground.edition, refusal.value("reading")) == ("label", "105 °F")
    assert cooler.sorts


def test_no_stated_limit_is_asked_for() -> None:
    """Where no text gives a number, the programme is not used until somebody gives one."""
    silent = edition("invented/silent")

    sorting = sort_plain(SHELL, book=rulebook(adopted=silent))

    assert {"laundry.bath.no_limit", "laundry.spin.no_limit"} <= messages(sorting, "cs1")


def test_an_unset_limit_cites_the_text_that_is_silent() -> None:
    """The question rests on the edition that speaks without a known value."""
    unset = replace(
        ADOPTED,
        rules=tuple(
            replace(one, value=None) if one.topic == "wash.bath_temp" else one
            for one in ADOPTED.rules
        ),
    )

    sorting = sort_plain(SHELL, book=rulebook(adopted=unset))

    [asked] = [one for one in sorting.refused if one.message == "laundry.bath.no_limit"]
    assert asked.ground.edition == "invented/1"


@pytest.mark.parametrize(
    ("machine", "refusal"),
    [
        (replace(washer(), working=False), "laundry.washer.down"),
        (washer(mass=None), "laundry.washer.no_limit"),
        (washer(mass="4.9 lb"), "laundry.washer.too_heavy"),
        (replace(washer(), front_loading=False), "laundry.washer.top_loader"),
    ],
)
def test_washers_that_may_not_be_used(machine: Washer, refusal: str) -> None:
    """Down, without a limit, too small for the one piece, or a banned top-loader."""
    sorting = with_washers(machine)

    assert not sorting.sorts
    assert refusal in messages(sorting, "cs1")


def test_a_top_loader_is_used_where_no_text_forbids_it() -> None:
    """The ban is the edition's, not the program's."""
    free = edition("invented/2", *(one for one in ADOPTED.rules if one.topic != "wash.forbidden"))
    room = replace(ROOM, washers=(replace(washer(), front_loading=False),))

    assert sort_plain(SHELL, room=room, book=rulebook(adopted=free)).sorts


def test_an_unweighed_piece_of_unknown_kind_mass_asks() -> None:
    """Wristlets have no typical mass: until weighed no drum is chosen for them."""
    assert "laundry.mass.unknown" in messages(sort_plain(component("w1", "wristlets")), "w1")


def test_a_weighed_piece_counts_as_weighed() -> None:
    """A coat shell of 4.9 lb fits where the heaviest of its kind would not."""
    light = component("cs1", "coat-shell", mass="4.9 lb")

    assert sort_plain(light, room=replace(ROOM, washers=(washer(mass="4.9 lb"),))).sorts


def test_programmes_are_for_their_company() -> None:
    """A shell goes only on programmes for shells, or for anything."""
    machine = washer("W1", programme("l", Company.LINERS), programme("s", Company.SHELLS))

    sorting = with_washers(machine)

    assert [one.programme for one in sorting.sorts[0].settings] == ["s"]


def test_settings_carry_the_limit_and_its_reasons() -> None:
    """A setting says its limit in weight and pieces, and what bath and spin were held against."""
    sorting = with_washers(washer("W1", pieces=4))

    [setting] = sorting.sorts[0].settings
    assert (setting.limit, setting.pieces) == (quantity("42 lb"), 4)
    assert {one.message for one in setting.reasons} == {
        "laundry.bath.within",
        "laundry.spin.within",
    }


def test_a_company_splits_when_no_programme_suits_all() -> None:
    """A cool label and a washer with one cool and one warm setting per drum make two sorts."""
    cool = component("cs1", "coat-shell", care=CareText(wash_temp=limit("30 °C")))
    other = component("cs2", "coat-shell", owner="M02")
    machines = (
        washer("W1", programme("cool", bath="30 °C", spin="80 G"), mass="4 lb"),
        washer("W2", programme("warm", bath="40 °C")),
        washer("W3", programme("cool", bath="30 °C")),
    )
    only_warm = replace(ROOM, washers=machines[1:2])
    both = replace(ROOM, washers=machines)
    heavy_other = replace(other, mass=quantity("50 lb"))

    assert len(sort_plain(cool, other, room=both).sorts) == 1
    assert "laundry.refused.wash" in messages(sort_plain(cool, other, room=only_warm), "cs1")
    assert sort_with(sort_plain(cool, other, room=both), "cs1").settings[0].washer == "W3"
    assert "laundry.washer.too_heavy" in messages(sort_plain(heavy_other, room=both), "cs2")


def test_a_split_names_its_parts_and_says_why() -> None:
    """One must be cool, another is too heavy for the only cool drum: two sorts of shells."""
    cool = component("cs1", "coat-shell", care=CareText(wash_temp=limit("30 °C")), mass="3 lb")
    heavy = component("cs2", "coat-shell", owner="M02", mass="9 lb")
    machines = (
        washer("W1", programme("cool", bath="30 °C"), mass="4 lb"),
        washer("W2", programme("warm", bath="40 °C")),
    )

    sorting = sort_plain(heavy, cool, room=replace(ROOM, washers=machines))

    assert [sort.id for sort in sorting.sorts] == ["shells/1", "shells/2"]
    assert all(
        any(one.message == "laundry.split" for one in sort.reasons) for sort in sorting.sorts
    )
