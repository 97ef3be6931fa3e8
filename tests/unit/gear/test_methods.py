"""How a component is washed and dried, and what is forbidden."""

import pytest
from tests.unit.gear.gear_cases import book, guide, piece, rule, terms

from sootline.core.basis import BadInputError
from sootline.core.gear import Act, CareText, DryMethod, WashMethod

HAND = CareText(wash=WashMethod.HAND)
MACHINE = CareText(wash=WashMethod.MACHINE)


def test_the_label_speaks_first() -> None:
    """A label's hand wash counts before a policy's machine."""
    rules = book(policy=(rule("wash.method", "machine"),))

    method = terms(piece(care=HAND), rules).method

    assert (method.wash, method.ground.edition) == (WashMethod.HAND, "label")
    assert [voice.text for voice in method.voices] == ["hand", "machine", "machine"]


def test_the_guide_speaks_after_a_silent_label() -> None:
    """A maker's guide counts before any edition."""
    rules = book(rule("wash.method", "machine"))

    assert terms(piece(), rules, guide(HAND)).method.wash is WashMethod.HAND


def test_the_kind_speaks_last() -> None:
    """Where everybody is silent common practice counts, and says so."""
    method = terms(piece("boots-leather")).method

    assert (method.wash, method.ground.rule) == (WashMethod.HAND, "kind.boots-leather")


def test_a_policy_may_be_confined_to_a_kind() -> None:
    """The helmet's padding goes by hand, the hood does not."""
    rules = book(
        policy=(rule("wash.method", "machine"), rule("wash.method", "hand", "helmet-padding"))
    )

    assert terms(piece("helmet-padding"), rules).method.wash is WashMethod.HAND
    assert terms(piece("hood"), rules).method.wash is WashMethod.MACHINE


def test_a_forbidden_method_falls_to_the_next_less_demanding() -> None:
    """A label names the machine, the edition forbids it: by hand, on the edition's ground."""
    rules = book(rule("wash.forbidden", ("machine-wash",), "aluminised"))

    resolved = terms(piece("coat-shell", MACHINE, "aluminised"), rules)

    assert (resolved.method.wash, resolved.method.wanted) == (WashMethod.HAND, WashMethod.MACHINE)
    assert resolved.method.ground.edition == "edition"
    assert [note.message for note in resolved.notes] == ["gear.terms.method_fell"]


def test_machine_and_hand_forbidden_leaves_the_brush() -> None:
    """Prohibitions of several sources add up."""
    care = CareText(forbids=(Act.MACHINE_WASH,))
    maker = guide(CareText(forbids=(Act.HAND_WASH,)))

    assert terms(piece(care=care), None, maker).method.wash is WashMethod.BRUSH


def test_any_wash_forbidden_leaves_nothing() -> None:
    """Then a person must decide."""
    method = terms(piece(care=CareText(forbids=(Act.ANY_WASH,)))).method

    assert method.wash is WashMethod.NONE


def test_a_guide_that_wants_no_wash_forbids_one_the_label_names() -> None:
    """A prohibition holds whoever states it."""
    resolved = terms(piece(care=MACHINE), None, guide(CareText(wash=WashMethod.NONE)))

    assert resolved.method.wash is WashMethod.NONE
    ban = resolved.banned(Act.ANY_WASH)
    assert ban is not None
    assert ban.ground.rule == "guide.wash"


def test_practice_may_forbid_too() -> None:
    """Any source is heard on what is forbidden."""
    rules = book(practice=(rule("wash.forbidden", ("softener",)),))

    assert terms(piece(), rules).banned(Act.SOFTENER) is not None
    assert terms(piece(), rules).banned(Act.STARCH) is None


def test_a_machine_that_may_not_dry_it_rules_out_the_cabinet() -> None:
    """The rack stays."""
    care = CareText(dry=(DryMethod.CABINET, DryMethod.RACK), forbids=(Act.MACHINE_DRY,))

    resolved = terms(piece(care=care))

    assert resolved.dry == (DryMethod.RACK,)
    assert [note.message for note in resolved.notes] == ["gear.terms.drying_fell"]


def test_hanging_is_left_when_only_the_cabinet_was_named() -> None:
    """Something wet has to dry somewhere."""
    care = CareText(dry=(DryMethod.CABINET,), forbids=(Act.MACHINE_DRY,))

    assert terms(piece(care=care)).dry == (DryMethod.HANG,)


def test_a_ban_on_the_cabinet_changes_nothing_for_what_lies_flat() -> None:
    """No note is made of what nobody wanted."""
    care = CareText(dry=(DryMethod.FLAT,), forbids=(Act.MACHINE_DRY,))

    resolved = terms(piece(care=care))

    assert (resolved.dry, resolved.notes) == ((DryMethod.FLAT,), ())


def test_a_flag_is_taken_from_the_first_maker_text_that_speaks() -> None:
    """The label is silent, the guide wants the barrier outward."""
    resolved = terms(piece("coat-liner"), None, guide(CareText(barrier_outward=True)))

    assert resolved.barrier_outward.value is True
    assert resolved.assembled.value is None


@pytest.mark.parametrize("topic", ["wash.forbidden", "wash.method"])
def test_a_word_that_names_nothing_is_refused(topic: str) -> None:
    """A slip in a rule file is told with its place."""
    value = ("boil",) if topic == "wash.forbidden" else "boil"

    with pytest.raises(BadInputError) as refused:
        terms(piece(), book(rule(topic, value)))

    assert refused.value.faults[0].place == f"edition: {topic}"


def test_terms_are_the_same_for_an_equal_rulebook() -> None:
    """Which copy of a rulebook is asked makes no difference."""
    rules = (rule("wash.method", "hand"),)

    assert terms(piece(), book(*rules)) == terms(piece(), book(*rules))
