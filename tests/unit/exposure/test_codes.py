"""Incident codes only raise questions; what is not in the table is kept and flagged."""

import pytest

from sootline.core.basis import Bearing
from sootline.core.exposure import CodeForm, ask_about, read_code


@pytest.mark.parametrize(
    ("raw", "form", "recognised"),
    [
        ("111", CodeForm.NFIRS, True),
        (" 651 ", CodeForm.NFIRS, True),
        ("119", CodeForm.NFIRS, False),
        ("FIRE", CodeForm.NERIS, True),
        ("FIRE||STRUCTURE_FIRE", CodeForm.NERIS, True),
        ("fire||structure_fire||chimney_fire", CodeForm.NERIS, True),
        ("FIRE||STRUCTURE_FIRE||NEW_LEAF", CodeForm.NERIS, False),
        ("FIRE||NEW_BRANCH", CodeForm.NERIS, False),
        ("MEDICAL||ILLNESS||ANY_LEAF", CodeForm.NERIS, True),
        ("FIRE||STRUCTURE_FIRE||CHIMNEY_FIRE||DEEPER", CodeForm.UNREAD, False),
        ("FIRE||", CodeForm.UNREAD, False),
        ("WEATHER", CodeForm.UNREAD, False),
        ("", CodeForm.UNREAD, False),
        ("011", CodeForm.UNREAD, False),
    ],
)
def test_a_code_is_read_at_one_to_three_levels(raw: str, form: CodeForm, recognised: bool) -> None:
    """Both forms; an unknown code or leaf is flagged and kept exactly as given."""
    code = read_code(raw)

    assert (code.form, code.recognised, code.raw) == (form, recognised, raw)


@pytest.mark.parametrize("spelling", ["BACKCOUNTRY_RESCUE", "BACKOUNTRY_RESCUE"])
def test_both_spellings_of_one_rescue_are_the_same(spelling: str) -> None:
    """Source: NERIS list of July 2025 and interface of June 2026 differ in one letter."""
    code = read_code(f"RESCUE||OUTSIDE||{spelling}")

    assert code.parts == ("RESCUE", "OUTSIDE", "BACKCOUNTRY_RESCUE")
    assert code.recognised


@pytest.mark.parametrize(
    ("raw", "questions"),
    [
        ("111", ["smoke"]),
        ("142", ["ensemble", "smoke"]),
        ("321", ["blood"]),
        ("422", ["hazardous"]),
        ("445", ["electrical", "smoke"]),
        ("463", ["hazardous", "blood"]),
        ("651", ["worn"]),
        ("FIRE||SPECIAL_FIRE||ESS_FIRE", ["smoke"]),
        ("FIRE||OUTSIDE_FIRE||DUMPSTER", ["ensemble", "smoke"]),
        ("HAZSIT||HAZARDOUS_MATERIALS||GAS_LEAK_ODOR", ["hazardous"]),
        ("MEDICAL||INJURY", ["blood"]),
        ("NOEMERG||CANCELLED", ["worn"]),
    ],
)
def test_a_code_raises_questions(raw: str, questions: list[str]) -> None:
    """The deepest level the table knows says what is asked; nothing is decided."""
    found = ask_about(raw)

    assert [one.message for one in found] == [f"exposure.ask.{one}" for one in questions]
    assert {one.bearing for one in found} == {Bearing.ASKS}


def test_an_unread_code_is_itself_a_question() -> None:
    """It is shown as given, and what was worn is asked."""
    found = ask_about("house on fire")

    assert [one.message for one in found] == ["exposure.ask.worn", "exposure.code.unrecognised"]
    assert found[1].value("code") == "house on fire"
