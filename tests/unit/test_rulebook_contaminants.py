"""The file of contaminants: what each row asks for, and every fault of it."""

from collections.abc import Mapping

import pytest

from sootline.core.basis import BadInputError
from sootline.core.rulebook import ContaminantRule, Decider, Knowledge, Level, read_contaminants

ROW: dict[str, object] = {
    "id": "purple-slime",
    "known": "specialised",
    "suspected": "advanced",
    "source": "invented for a test",
    "confidence": "practice",
}


def read_row(**fields: object) -> ContaminantRule:
    """Read a file of one row."""
    kept = {name: value for name, value in {**ROW, **fields}.items() if value is not None}
    return read_contaminants({"contaminant": [kept]}, "file")[0]


def test_a_row_asks_for_its_levels_and_no_more() -> None:
    """What is not written is not asked for; the usual decider is the safety officer."""
    rule = read_row()

    assert (rule.floor(Knowledge.KNOWN), rule.floor(Knowledge.SUSPECTED)) == (
        Level.SPECIALISED,
        Level.ADVANCED,
    )
    assert (rule.floor(Knowledge.UNKNOWN), rule.floor(Knowledge.ABSENT)) == (None, None)
    assert rule.holds_when == ()
    assert {rule.disinfect, rule.own_load, rule.alone, rule.seal} == {False}
    assert (rule.decider, rule.deputy) == (Decider.SAFETY_OFFICER, Decider.CHIEF)


def test_a_row_says_who_ends_a_hold_and_when_it_goes_up() -> None:
    """A hold names decider, deputy and hours."""
    rule = read_row(
        holds_when=["known"],
        decider="chief",
        deputy="gear-officer",
        escalate_after_h=4,
        cautions=["hazard.caution.do_not_open"],
        not_known=["hazard.unknown.everything"],
        seal=True,
    )

    assert (rule.holds_when, rule.escalate_after_h) == ((Knowledge.KNOWN,), 4)
    assert (rule.decider, rule.deputy) == (Decider.CHIEF, Decider.GEAR_OFFICER)
    assert rule.ground.edition == "practice/contaminants"


BAD: list[tuple[Mapping[str, object], str, str]] = [
    ({"id": "Purple Slime"}, "id", "contaminant_id"),
    ({"id": None}, "id", "missing"),
    ({"known": "rinse"}, "known", "word"),
    ({"known": "look"}, "suspected", "levels"),
    ({"disinfect": "yes"}, "disinfect", "flag"),
    ({"holds_when": ["absent"]}, "holds_when", "holds_absent"),
    ({"holds_when": ["maybe"]}, "holds_when[0]", "word"),
    ({"decider": "neighbour"}, "decider", "word"),
    ({"decider": "chief"}, "deputy", "deputy"),
    ({"escalate_after_h": 0}, "escalate_after_h", "number"),
    ({"escalate_after_h": True}, "escalate_after_h", "number"),
    ({"escalate_after_h": 337}, "escalate_after_h", "number"),
    ({"cautions": ["Be careful."]}, "cautions[0]", "message"),
    ({"cautions": "hazard.caution.x"}, "cautions", "list"),
    ({"not_known": ["hazard.caution.do_not_open"]}, "not_known[0]", "message"),
    ({"source": None}, "source", "missing"),
    ({"confidence": "sure"}, "confidence", "word"),
    ({"colour": "purple"}, "colour", "unknown_field"),
]


@pytest.mark.parametrize(("change", "field", "message"), BAD)
def test_a_faulty_field_is_named(change: Mapping[str, object], field: str, message: str) -> None:
    """Each fault has its place and its reason."""
    with pytest.raises(BadInputError) as refusal:
        read_row(**change)

    assert (f"file: contaminant[0].{field}", f"rules.fault.{message}") in {
        (fault.place, fault.message) for fault in refusal.value.faults
    }


def test_one_contaminant_has_one_row() -> None:
    """Two rows for one contaminant would contradict each other."""
    with pytest.raises(BadInputError, match=r"rules\.fault\.twice"):
        read_contaminants({"contaminant": [ROW, ROW]}, "file")


@pytest.mark.parametrize("mapping", [{}, {"contaminant": []}, {"contaminant": [ROW] * 501}, 4])
def test_a_file_needs_rows_and_not_without_end(mapping: object) -> None:
    """An empty file would lower every requirement; one without end is no rule file."""
    with pytest.raises(BadInputError, match=r"rules\.fault\.rows"):
        read_contaminants(mapping, "file")


def test_levels_stand_in_order() -> None:
    """A higher floor includes the lower ones."""
    assert sorted(Level, key=lambda level: level.rank) == [
        Level.LOOK,
        Level.ROUTINE,
        Level.ADVANCED,
        Level.SPECIALISED,
    ]
