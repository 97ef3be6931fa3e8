"""Where a component may dry, and what keeps it out of a place or out of the wash."""

from dataclasses import replace

import pytest
from tests.unit.laundry.wash_cases import (
    ADOPTED,
    ROOM,
    STATED,
    component,
    decide,
    drying_place,
    edition,
    limit,
    messages,
    rulebook,
    sort_all,
    sort_plain,
)

from sootline.core.basis import PlaceId
from sootline.core.care.decisions import Disinfection, Fate
from sootline.core.gear.kinds import DryMethod
from sootline.core.gear.labels import Act, CareText
from sootline.core.gear.state import Hold
from sootline.core.laundry.rooms import DryingPlace
from sootline.core.laundry.sorts import DryingChoice, Sorting
from sootline.core.rulebook import Decider

SHELL = component("cs1", "coat-shell")


def choice(*places: DryingPlace, kind: str = "coat-shell", care: CareText | None = None) -> Sorting:
    """Sort one component in a room with these drying places."""
    return sort_plain(component("x1", kind, care=care), room=replace(ROOM, drying=places))


def chosen(sorting: Sorting) -> DryingChoice:
    """Return the only drying choice."""
    [one] = sorting.drying
    return one


def why(sorting: Sorting) -> set[str]:
    """List the reasons of the only drying choice."""
    return {reason.message for reason in chosen(sorting).reasons}


@pytest.mark.parametrize(
    ("air", "places", "reason"),
    [
        (None, ("c",), "laundry.dry.unheated"),
        ("105 °F", ("c",), "laundry.dry.within"),
        ("106 °F", (), "laundry.dry.beyond"),
    ],
)
def test_cabinet_air_at_and_beyond_the_limit(
    air: str | None, places: tuple[str, ...], reason: str
) -> None:
    """At the limit a cabinet may be used, one step beyond not; unheated air has no limit."""
    sorting = choice(drying_place("c", DryMethod.CABINET, air=air))

    assert chosen(sorting).places == places
    assert reason in why(sorting)


def test_heated_air_without_any_limit_is_asked_for() -> None:
    """Nobody says how warm: the cabinet is not used, and the shell hangs elsewhere."""
    free = edition("invented/2", *(one for one in ADOPTED.rules if one.topic != "dry.air_temp"))
    room = replace(ROOM, drying=(drying_place("c", DryMethod.CABINET, air="100 °F"),))

    sorting = sort_plain(SHELL, room=room, book=rulebook(adopted=free))

    assert "laundry.dry.no_limit" in why(sorting)
    assert chosen(sorting).elsewhere is DryMethod.HANG


def test_an_unset_air_limit_cites_its_text() -> None:
    """The question rests on the edition without a known value."""
    unset = replace(
        ADOPTED,
        rules=tuple(
            replace(one, value=None) if one.topic == "dry.air_temp" else one
            for one in ADOPTED.rules
        ),
    )
    room = replace(ROOM, drying=(drying_place("c", DryMethod.CABINET, air="100 °F"),))

    [asked] = [
        one
        for one in chosen(sort_plain(SHELL, room=room, book=rulebook(adopted=unset))).reasons
        if one.message == "laundry.dry.no_limit"
    ]

    assert asked.ground.edition == "invented/1"


@pytest.mark.parametrize(
    ("act", "air", "taken"),
    [
        (Act.HEATED_DRY, "100 °F", False),
        (Act.HEATED_DRY, None, True),
        (Act.MACHINE_DRY, None, False),
    ],
)
def test_forbidden_heat_and_machines(act: Act, air: str | None, taken: bool) -> None:
    """A label against heat refuses a heated cabinet only; one against machines every cabinet."""
    sorting = choice(drying_place("c", DryMethod.CABINET, air=air), care=CareText(forbids=(act,)))

    assert bool(chosen(sorting).places) is taken
    assert ("laundry.dry.banned" in why(sorting)) is not taken


def test_a_method_the_label_does_not_name_is_refused() -> None:
    """A label that wants it hung keeps it off rack and cabinet."""
    sorting = choice(
        drying_place("c", DryMethod.CABINET), care=CareText(dry=(DryMethod.RACK, DryMethod.HANG))
    )

    assert "laundry.dry.method" in why(sorting)
    assert chosen(sorting).elsewhere is DryMethod.HANG


def test_what_is_hung_first_of_all_takes_no_rack_place() -> None:
    """Straps hang, though a rack would take them."""
    sorting = choice(drying_place("r", DryMethod.RACK), kind="drag-device")

    assert (chosen(sorting).places, chosen(sorting).elsewhere) == ((), DryMethod.HANG)


def test_places_are_for_their_kinds() -> None:
    """A rack for shells and liners leaves the hood to be laid flat."""
    places = (
        drying_place("r", DryMethod.RACK, 6, "coat-shell"),
        drying_place("f", DryMethod.FLAT, 0, "hood"),
    )

    assert chosen(choice(*places, kind="hood")).elsewhere is DryMethod.FLAT
    assert chosen(choice(*places)).places == (PlaceId("r"),)


def test_what_a_hazard_sets_apart_shares_no_cabinet() -> None:
    """A cabinet run is closed over all in it: such a shell hangs on the rack, or elsewhere."""
    cabinet, rack = drying_place("c", DryMethod.CABINET), drying_place("r", DryMethod.RACK)
    pair = [(SHELL, decide(SHELL, "foam"))]

    with_rack = sort_all(pair, replace(ROOM, drying=(cabinet, rack)))
    without = sort_all(pair, replace(ROOM, drying=(cabinet,)))

    assert chosen(with_rack).places == (PlaceId("r"),)
    assert "laundry.dry.apart" in why(with_rack)
    assert chosen(without).elsewhere is DryMethod.HANG


def test_what_can_dry_nowhere_is_refused() -> None:
    """Boots need a rack; without one they are not even washed."""
    sorting = choice(drying_place("c", DryMethod.CABINET), kind="boots-leather")

    assert not sorting.sorts
    assert {"laundry.dry.method", "laundry.refused.dry"} <= messages(sorting, "x1")


@pytest.mark.parametrize("fate", [Fate.HOOK, Fate.LOOK, Fate.HOLD, Fate.EVIDENCE, Fate.OUT])
def test_what_is_not_to_be_washed_is_kept_out(fate: Fate) -> None:
    """Every other fate stays out, with a reason that names it."""
    sorting = sort_all([(SHELL, decide(SHELL, fate=fate))])

    [(name, reason)] = sorting.kept_out
    assert (name, reason.message) == ("cs1", f"laundry.out.{fate}")
    assert not sorting.sorts


def test_what_is_sealed_is_kept_out() -> None:
    """A sealed bag is not opened for the wash."""
    sorting = sort_all([(SHELL, decide(SHELL, sealed=True))])

    assert sorting.kept_out[0][1].message == "laundry.out.sealed"


@pytest.mark.parametrize("reason", [None, STATED])
def test_an_open_hold_keeps_out_whatever_the_fate(reason: object) -> None:
    """The refusal names who ends the hold; an ended hold lets it in."""
    hold = Hold(
        cause="powder",
        question="ask.powder",  # type: ignore[arg-type]
        decider=Decider.SAFETY_OFFICER,
        deputy=Decider.CHIEF,
        escalate_after_h=12,
    )
    held = replace(decide(SHELL), holds=(hold,))
    if reason:
        because = sort_all([(SHELL, held)]).kept_out[0][1]
        held = replace(held, holds=(replace(hold, reason=replace(because, ground=STATED)),))
    ended = replace(hold, released_by="SO-1", released_at="2026-01-01T09:00+00:00")

    sorting = sort_all([(SHELL, held)])

    assert sorting.kept_out[0][1].value("decider") == "safety-officer"
    assert sort_all([(SHELL, replace(held, holds=(ended,)))]).sorts


@pytest.mark.parametrize(
    ("minutes", "message"), [(10, "laundry.disinfect.first"), (None, "laundry.disinfect.no_time")]
)
def test_disinfection_comes_before_sharing(minutes: int | None, message: str) -> None:
    """A sort that was asked to be disinfected says so, with the contact time or the question."""
    decision = replace(
        decide(SHELL, "sewage"), disinfection=Disinfection.DISINFECT, contact_min=minutes
    )

    sorting = sort_all([(SHELL, decision)])

    assert message in {reason.message for reason in sorting.sorts[0].reasons}


def test_a_hazard_rests_on_the_reason_that_names_it() -> None:
    """The ground of a separation is that of the contaminant's rule where the decision has it."""
    blood = replace(STATED, rule="contaminant.blood")  # type: ignore[arg-type]
    shown = sort_all([(SHELL, decide(SHELL, "blood"))]).sorts[0].reasons[0]
    decision = replace(decide(SHELL, "blood"), reasons=(replace(shown, ground=blood),))

    sorting = sort_all([(SHELL, decision)])

    [apart] = [one for one in sorting.sorts[0].reasons if one.message == "laundry.apart"]
    assert apart.ground == blood


def test_the_strictest_member_sets_the_detergent_and_the_silent_one_asks() -> None:
    """A label with a narrower range binds its sort; where a member has none, it is asked for."""
    narrow = component("cs1", "coat-shell", care=CareText(ph_high=limit("9.5 pH").values[0]))
    other = component("cs2", "coat-shell", owner="M02")
    free = edition("invented/2", *(one for one in ADOPTED.rules if one.topic != "wash.ph_high"))

    strict = limits(sort_plain(other, narrow))
    asked = limits(sort_plain(other, narrow, book=rulebook(adopted=free)))

    assert "9.5 pH" in strict["laundry.limit.ph_high"]
    assert {"laundry.limit.ph_high", "laundry.limit.ask.ph_high"} <= set(asked)


def test_handwork_without_any_limit_asks_for_each() -> None:
    """Gloves are washed by hand all the same; water and detergent are asked for."""
    gloves = component("g1", "gloves")

    asked = limits(sort_plain(gloves, book=rulebook(adopted=edition("invented/silent"))))

    assert set(asked) == {
        f"laundry.limit.ask.{word}" for word in ("bath_temp", "ph_low", "ph_high")
    }


def limits(sorting: Sorting) -> dict[str, str]:
    """List the limits the only sort states or asks for."""
    return {
        one.message: dict(one.values).get("limit", "")
        for one in sorting.sorts[0].reasons
        if one.message.startswith("laundry.limit.")
    }
