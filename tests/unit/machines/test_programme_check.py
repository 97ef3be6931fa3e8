"""Whether every finding about a programme is listed, against every limit."""

import pytest
from tests.unit.machines.machine_cases import LIMITS, NO_LIMITS, TABLE, drum, setting

from sootline.core.basis import Bearing, UnreadableValueError
from sootline.core.machines import Drum, Setting, WashLimits, check_programme


def found(one: Setting, of: Drum | None = None, limits: WashLimits = LIMITS) -> dict[str, Bearing]:
    """Return what each finding does, by its message."""
    return {str(each.message): each.bearing for each in check_programme(one, of, limits, TABLE)}


@pytest.mark.parametrize(
    ("speed", "message"),
    [
        ("424 rpm", "machine.spin.within"),
        ("440 rpm", "machine.spin.uncertain"),
        ("450 rpm", "machine.spin.beyond"),
    ],
)
def test_speed_and_drum_are_judged_at_two_deviations(speed: str, message: str) -> None:
    """What is only within if the figures were exact is refused too."""
    bearing = found(setting(speed=speed), drum())[message]

    assert (bearing is Bearing.FORBIDS) is (message != "machine.spin.within")


def test_the_speed_to_set_is_named() -> None:
    """Whoever is refused learns the highest speed, rounded down."""
    one = check_programme(setting(speed="450 rpm"), drum(), LIMITS, TABLE)[0]

    assert (one.value("set_g"), one.value("set_speed")) == ("92", "424")


@pytest.mark.parametrize(
    ("stated", "message"), [("90 G", "machine.spin.inside"), ("101 G", "machine.spin.past")]
)
def test_without_drum_the_stated_g_counts(stated: str, message: str) -> None:
    """A speed without a drum says nothing; the maker's figure is taken as stated."""
    assert message in found(setting(spin=stated, speed="900 rpm"))


def test_nothing_known_is_asked_for() -> None:
    """Unknown spin, bath and pH are questions, never within."""
    assert found(setting()) == {
        "machine.spin.unknown": Bearing.ASKS,
        "machine.bath.unknown": Bearing.ASKS,
        "machine.ph.unknown": Bearing.ASKS,
    }


def test_readings_without_a_limit_are_asked_about() -> None:
    """Where no text gives a number nothing is taken as permitted."""
    one = setting(speed="400 rpm", bath="100 °F", ph="pH 8")

    assert set(found(one, drum(), NO_LIMITS).values()) == {Bearing.ASKS}
    assert found(setting(spin="90 G"), None, NO_LIMITS)["machine.spin.no_limit_for"]


@pytest.mark.parametrize(
    ("bath", "bearing"),
    [
        ("105 °F", Bearing.LIMITS), ("106 °F", Bearing.FORBIDS),
        ("40 °C", Bearing.LIMITS), ("41 °C", Bearing.FORBIDS),
    ],
)  # fmt: skip
def test_the_bath_is_held_in_the_unit_it_was_entered_in(bath: str, bearing: Bearing) -> None:
    """105 °F and 40 °C are both within a limit that pairs them."""
    assert [
        one.bearing
        for one in check_programme(setting(bath=bath), None, LIMITS, TABLE)
        if one.message in ("machine.bath.inside", "machine.bath.past")
    ] == [bearing]


def test_fahrenheit_typed_as_celsius_is_asked_about() -> None:
    """A bath of 104 °C is beyond, and the other unit is offered."""
    assert "machine.bath.other_unit" in found(setting(bath="104 °C"))
    assert "machine.bath.other_unit" not in found(setting(bath="140 °C"))
    assert "machine.bath.other_unit" not in found(setting(bath="140 °F"))


@pytest.mark.parametrize(
    ("reading", "beyond"), [("pH 5.9", 1), ("pH 6.0", 0), ("pH 10.5", 0), ("pH 10.6", 1)]
)
def test_a_ph_reading_is_held_on_both_sides(reading: str, beyond: int) -> None:
    """The lower and the upper limit both speak."""
    judged = check_programme(setting(ph=reading), None, LIMITS, TABLE)

    assert sum(one.message == "machine.ph.past" for one in judged) == beyond
    assert sum(one.message == "machine.ph.inside" for one in judged) == 2 - beyond


@pytest.mark.parametrize(("load", "word"), [("20 kg", "filled"), ("80 kg", "dense")])
def test_density_warns_and_never_permits(load: str, word: str) -> None:
    """A drum filled like cotton is worth a warning, never a refusal."""
    bearing = found(setting(load=load), drum(depth="20 in"))[f"machine.load.{word}"]

    assert bearing in (Bearing.NOTES, Bearing.WARNS)


def test_density_needs_a_depth() -> None:
    """Without a depth nothing is said about how full the drum is."""
    assert not any(key.startswith("machine.load") for key in found(setting(load="9 kg"), drum()))


@pytest.mark.parametrize("wrong", [{"spin": "-1 G"}, {"speed": "-1 rpm"}, {"load": "0 kg"}])
def test_amounts_that_cannot_be_are_refused(wrong: dict[str, str]) -> None:
    """No spin below zero, and no load of nothing."""
    with pytest.raises(UnreadableValueError, match=r"machine\.setting"):
        setting(**wrong)


def test_a_programme_may_leave_out_its_spin() -> None:
    """0 G is within any limit."""
    assert "machine.spin.inside" in found(setting(spin="0 G"))


def test_a_reading_of_something_else_is_refused() -> None:
    """A mass is no temperature."""
    with pytest.raises(UnreadableValueError, match="dimension"):
        found(setting(bath="40 kg"))
