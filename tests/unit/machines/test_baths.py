"""Whether heat, dose, hardness, rinses and moisture refuse what cannot be."""

from dataclasses import replace

import pytest
from tests.unit.machines.machine_cases import TABLE

from sootline.core.basis import Band, MachineId, Quantity, UnreadableValueError, quantity
from sootline.core.machines import (
    Detergent,
    DoseRow,
    WeighedSpin,
    carry_over,
    count_rinses,
    hardness_class,
    heating_kwh,
    moisture_after,
    scale_moisture,
)
from sootline.core.machines.bath_sheet import BathAsked, reckon_bath

LABEL = Detergent(
    name="Invented 5",
    rows=(
        DoseRow(up_to=quantity("120 mg/L"), per_kg=quantity("5 mL")),
        DoseRow(up_to=quantity("180 mg/L"), per_kg=quantity("8 mL")),
    ),
)
ANY_WATER = Detergent(name="Invented 6", rows=(DoseRow(parts=400),))
HARDER_TOO = Detergent(name="Invented 7", rows=(*LABEL.rows, DoseRow(per_kg=quantity("12 mL"))))
ASKED = BathAsked(
    water=quantity("100 L"), load=quantity("16 kg"), inlet=quantity("55 °F"),
    bath=quantity("105 °F"),
)  # fmt: skip


@pytest.mark.parametrize(
    ("label", "hardness", "dose"),
    [
        (LABEL, "100 mg/L", 80.0), (LABEL, "10 gpg", 128.0), (LABEL, "300 mg/L", None),
        (LABEL, "", None), (ANY_WATER, "", 250.0), (HARDER_TOO, "300 mg/L", 192.0),
    ],
)  # fmt: skip
def test_the_dose_is_the_labels_own(label: Detergent, hardness: str, dose: float | None) -> None:
    """A water the label does not speak of gets no dose, and a question."""
    water = quantity(hardness) if hardness else None
    sheet = reckon_bath(replace(ASKED, detergent=label, hardness=water), TABLE)

    assert sheet.dose_ml == (None if dose is None else pytest.approx(dose))
    asked = any(one.message == "machine.detergent.no_row" for one in sheet.findings)
    assert asked is (dose is None)


def test_a_bath_without_a_product_says_heat_and_rinses() -> None:
    """The rinse model always comes with its scope."""
    sheet = reckon_bath(ASKED, TABLE)

    assert sheet.dose_ml is None
    assert sheet.hardness is None
    assert [str(one.message) for one in sheet.findings] == ["machine.rinse.scope"]


def test_metered_water_narrows_the_heat() -> None:
    """A known mix is known three times better."""
    guessed, known = (
        reckon_bath(replace(ASKED, metered=it), TABLE).heat_kwh for it in (False, True)
    )

    assert guessed is not None
    assert known is not None
    assert known.high / known.low < guessed.high / guessed.low


def test_a_bath_no_warmer_than_its_inlet_needs_no_heat() -> None:
    """Cold water stays cold for nothing."""
    assert reckon_bath(replace(ASKED, bath=quantity("50 °F")), TABLE).heat_kwh is None


def test_an_unspun_load_needs_more_rinses() -> None:
    """What is only drained keeps most of its liquor."""
    spun, drained = (
        reckon_bath(replace(ASKED, spun=it), TABLE).rinses.rinses for it in (True, False)
    )

    assert spun < drained


@pytest.mark.parametrize("wrong", [{"water": quantity("0 L")}, {"load": quantity("0 kg")}])
def test_no_water_or_no_load_is_no_bath(wrong: dict[str, Quantity]) -> None:
    """The amount is named."""
    with pytest.raises(UnreadableValueError, match=r"machine\.setting.amount"):
        reckon_bath(replace(ASKED, **wrong), TABLE)  # type: ignore[arg-type]


@pytest.mark.parametrize(("cloth", "efficiency"), [(-1.0, 1.0), (1.0, 0.0), (1.0, 1.1)])
def test_heat_refuses_amounts_that_cannot_be(cloth: float, efficiency: float) -> None:
    """No negative goods, and no more than all of the energy."""
    with pytest.raises(UnreadableValueError, match=r"machine\.heat.amount"):
        heating_kwh(
            water_l=1, cloth_kg=cloth, metal_kg=0, inlet=quantity("10 °C"),
            bath=quantity("40 °C"), efficiency=efficiency,
        )  # fmt: skip


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("60 mg/L", "soft"), ("61 mg/L", "moderate"), ("121 mg/L", "hard"),
        ("181 mg/L", "very-hard"),
    ],
)  # fmt: skip
def test_hardness_classes(text: str, word: str) -> None:
    """0-60, 61-120, 121-180, above (classes credited to the US Geological Survey; medium)."""
    assert hardness_class(quantity(text), TABLE) == word


def test_a_hardness_below_zero_is_refused() -> None:
    """In a class and in a label's row."""
    with pytest.raises(UnreadableValueError, match=r"machine\.detergent.hardness"):
        hardness_class(quantity("-1 mg/L"), TABLE)
    with pytest.raises(UnreadableValueError, match=r"machine\.detergent.hardness"):
        DoseRow(up_to=quantity("-1 mg/L"), parts=100)


@pytest.mark.parametrize(
    ("per_kg", "parts", "message"),
    [
        ("", None, "row"), ("5 mL", 100, "row"), ("0 mL", None, "amount"), ("", 0, "amount"),
    ],
)  # fmt: skip
def test_a_label_row_says_one_dose(per_kg: str, parts: int | None, message: str) -> None:
    """Not both, not neither, and above zero."""
    with pytest.raises(UnreadableValueError, match=rf"machine\.detergent.{message}"):
        DoseRow(per_kg=quantity(per_kg) if per_kg else None, parts=parts)


@pytest.mark.parametrize(("kept", "liquor"), [(0.0, 6.0), (6.0, 6.0), (7.0, 6.0)])
def test_a_load_keeps_less_than_there_is(kept: float, liquor: float) -> None:
    """Otherwise there is nothing to rinse with."""
    with pytest.raises(UnreadableValueError, match=r"machine\.rinse.liquor"):
        carry_over(kept, liquor)


@pytest.mark.parametrize(
    ("share", "target", "message"),
    [(0.1, 0.0, "target"), (0.1, 1.0, "target"), (0.99, 0.01, "many")],
)
def test_rinse_counts_that_cannot_be(share: float, target: float, message: str) -> None:
    """A target is a share, and nobody rinses for ever."""
    with pytest.raises(UnreadableValueError, match=rf"machine\.rinse.{message}"):
        count_rinses(share, target, TABLE)


def weighed(dry: str, wet: str, error: str = "0.05 kg", at: str = "") -> WeighedSpin:
    """Weigh a load."""
    return WeighedSpin(
        washer=MachineId("W"), dry=quantity(dry), wet=quantity(wet), scale_error=quantity(error),
        at=quantity(at) if at else None,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("dry", "wet", "error", "at", "message"),
    [
        ("5 kg", "5 kg", "0 kg", "", "lighter"), ("5 kg", "4 kg", "0 kg", "", "lighter"),
        ("0 kg", "4 kg", "0 kg", "", "lighter"), ("5 kg", "6 kg", "5 kg", "", "scale"),
        ("5 kg", "6 kg", "0 kg", "0 G", "spin"),
    ],
)  # fmt: skip
def test_weights_that_cannot_be(dry: str, wet: str, error: str, at: str, message: str) -> None:
    """Wet lighter than dry is a question, and nothing comes of it."""
    with pytest.raises(UnreadableValueError, match=rf"machine\.moisture.{message}"):
        weighed(dry, wet, error, at)


def test_unweighed_moisture_is_marked_a_default() -> None:
    """A wide figure that says so."""
    default = moisture_after(None, quantity("90 G"), TABLE)

    assert default.rests_on == "machine.moisture.default"
    assert default.band == Band(low=0.35, likely=0.55, high=0.80)


@pytest.mark.parametrize(
    ("at", "spin", "message"),
    [
        ("", "90 G", "weighed"), ("90 G", "", "weighed"), ("90 G", "90 G", "weighed"),
        ("90 G", "80 G", "scaled"),
    ],
)  # fmt: skip
def test_a_weighing_counts_and_is_scaled_to_another_spin(at: str, spin: str, message: str) -> None:
    """Only where both spins are known and differ."""
    one = moisture_after(weighed("5 kg", "7.75 kg", at=at), quantity(spin) if spin else None, TABLE)

    assert one.rests_on == f"machine.moisture.{message}"


@pytest.mark.parametrize(("at", "to"), [("40 G", "90 G"), ("90 G", "210 G")])
def test_scaling_stays_within_its_range(at: str, to: str) -> None:
    """50 to 200 G; further off a load is weighed again."""
    with pytest.raises(UnreadableValueError, match=r"machine\.moisture.range"):
        scale_moisture(Band.exactly(0.5), quantity(at), quantity(to), TABLE)
