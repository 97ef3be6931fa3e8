"""Limits over everything that speaks."""

import pytest
from tests.unit.gear.gear_cases import at_least, at_most, book, guide, piece, rule, terms, unset

from sootline.core.basis import Standing, quantity
from sootline.core.gear import CareText

BATH = "wash.bath_temp"


def test_the_strictest_of_all_counts() -> None:
    """Label, guide, edition and policy are heard together."""
    care = CareText(wash_temp=at_most("60 °C"))
    maker = guide(CareText(wash_temp=at_most("50 °C")))
    rules = book(rule(BATH, at_most("105 °F / 40 °C")), policy=(rule(BATH, at_most("30 °C")),))

    limit = terms(piece(care=care), rules, maker).limit(BATH)

    assert [str(ground.edition) for _, ground in limit.limits] == [
        "policy", "edition", "guide", "label",
    ]  # fmt: skip


def test_a_label_in_one_unit_is_stricter_than_a_pair_it_refuses() -> None:
    """A label of 40 °C comes before the pair 105 °F / 40 °C."""
    care = CareText(wash_temp=at_most("40 °C"))

    limit = terms(piece(care=care), book(rule(BATH, at_most("105 °F / 40 °C")))).limit(BATH)

    assert limit.binding is not None
    assert limit.binding[1].edition == "label"


def test_of_lower_limits_the_highest_counts() -> None:
    """A detergent must be no more acid than any source permits."""
    care = CareText(ph_low=quantity("pH 6.5"))

    limit = terms(piece(care=care), book(rule("wash.ph_low", at_least("pH 6.0")))).limit(
        "wash.ph_low"
    )

    assert limit.stand(quantity("pH 6.2")) is Standing.BEYOND
    assert limit.stand(quantity("pH 6.5")) is Standing.WITHIN


def test_nobody_speaking_leaves_a_reading_unknown() -> None:
    """Silence permits nothing."""
    limit = terms(piece()).limit(BATH)

    assert limit.stand(quantity("20 °C")) is Standing.UNKNOWN
    assert limit.binding is None


def test_an_unmentioned_topic_has_no_limit() -> None:
    """Asking for a topic nobody resolves is not an error."""
    assert terms(piece()).limit("wash.colour").limits == ()


def test_an_unset_value_is_asked_for_and_lowers_nothing() -> None:
    """The label's own limit still counts."""
    care = CareText(wash_temp=at_most("60 °C"))

    resolved = terms(piece(care=care), book(unset(BATH)))

    assert resolved.limit(BATH).stand(quantity("61 °C")) is Standing.BEYOND
    assert [question.message for question in resolved.questions] == ["ask.wash.bath_temp"]


def test_a_policy_value_answers_what_the_edition_leaves_unset() -> None:
    """The department read its own copy and wrote the number down."""
    resolved = terms(piece(), book(unset(BATH), policy=(rule(BATH, at_most("40 °C")),)))

    assert resolved.questions == ()


def test_a_general_policy_does_not_answer_for_one_trait() -> None:
    """What is unset for reflective shells alone is still asked for."""
    rules = book(unset(BATH, "aluminised"), policy=(rule(BATH, at_most("40 °C")),))

    assert len(terms(piece("coat-shell", None, "aluminised"), rules).questions) == 1


@pytest.mark.parametrize(("trait", "strictest"), [("aluminised", "30 °C"), ("leather", "40 °C")])
def test_a_rule_confined_to_a_trait_counts_only_there(trait: str, strictest: str) -> None:
    """A rule for reflective shells says nothing of others."""
    rules = book(rule(BATH, at_most("40 °C")), rule(BATH, at_most("30 °C"), "aluminised"))

    binding = terms(piece("coat-shell", None, trait), rules).limit(BATH).binding

    assert binding is not None
    assert str(binding[0].values[0]) == strictest


DECIDED = rule(BATH, at_most("60 °C"), decision="A. Chief, 2026-02-01")


def test_a_looser_policy_without_a_decision_is_shown_and_not_used() -> None:
    """Nobody loosens an edition by writing a higher number."""
    rules = book(rule(BATH, at_most("40 °C")), policy=(rule(BATH, at_most("60 °C")),))

    resolved = terms(piece(care=CareText(wash_temp=at_most("60 °C"))), rules)

    assert resolved.limit(BATH).stand(quantity("50 °C")) is Standing.BEYOND
    assert {note.message for note in resolved.notes} == {"gear.terms.looser"}


def test_a_recorded_decision_lets_a_more_permissive_label_count() -> None:
    """The edition's limit is set aside, and who decided it is said."""
    rules = book(rule(BATH, at_most("40 °C")), policy=(DECIDED,))

    resolved = terms(piece(care=CareText(wash_temp=at_most("50 °C"))), rules)

    limit = resolved.limit(BATH)
    assert limit.stand(quantity("50 °C")) is Standing.WITHIN
    assert [str(value.values[0]) for value, _ in limit.set_aside] == ["40 °C"]
    used = next(note for note in resolved.notes if note.message == "gear.terms.decision_used")
    assert "A. Chief, 2026-02-01" in used.value("decision")


def test_a_decision_never_goes_beyond_the_label() -> None:
    """The label's own 50 °C refuses 55 °C, whatever was decided."""
    rules = book(rule(BATH, at_most("40 °C")), policy=(DECIDED,))

    limit = terms(piece(care=CareText(wash_temp=at_most("50 °C"))), rules).limit(BATH)

    assert limit.stand(quantity("55 °C")) is Standing.BEYOND


def test_a_decision_changes_nothing_where_the_maker_is_silent() -> None:
    """Nobody knows then what the piece bears."""
    rules = book(rule(BATH, at_most("40 °C")), policy=(DECIDED,))

    assert terms(piece(), rules).limit(BATH).stand(quantity("50 °C")) is Standing.BEYOND


def test_a_decision_changes_nothing_where_the_label_is_unreadable() -> None:
    """The guide permits 60 °C, but the label may forbid it."""
    rules = book(rule(BATH, at_most("40 °C")), policy=(DECIDED,))
    maker = guide(CareText(wash_temp=at_most("60 °C")))

    limit = terms(piece(readable=False), rules, maker).limit(BATH)

    assert limit.stand(quantity("50 °C")) is Standing.BEYOND


def test_a_general_decision_does_not_reach_a_rule_of_one_trait() -> None:
    """Reflective shells keep the edition's own limit."""
    rules = book(rule(BATH, at_most("30 °C"), "aluminised"), policy=(DECIDED,))
    component = piece("coat-shell", CareText(wash_temp=at_most("60 °C")), "aluminised")

    assert terms(component, rules).limit(BATH).stand(quantity("40 °C")) is Standing.BEYOND


def test_a_decision_that_loosens_nothing_only_tightens() -> None:
    """A decided 30 °C under an edition's 40 °C is a limit like any other."""
    decided = rule(BATH, at_most("30 °C"), decision="A. Chief, 2026-02-01")
    rules = book(rule(BATH, at_most("40 °C")), policy=(decided,))

    limit = terms(piece(care=CareText(wash_temp=at_most("60 °C"))), rules).limit(BATH)

    assert limit.set_aside == ()
    assert limit.stand(quantity("35 °C")) is Standing.BEYOND


def test_words_of_a_label_are_kept_as_typed_and_capped_by_a_number() -> None:
    """No number is read into "warm"; the strictest limit of the others caps it."""
    care = CareText(wash_words="warm")

    resolved = terms(piece(care=care), book(rule(BATH, at_most("40 °C"))))

    assert [voice.text for voice in resolved.limit(BATH).as_typed] == ["warm"]
    assert [note.message for note in resolved.notes] == ["gear.terms.words_capped"]
    assert resolved.notes[0].value("words") == "warm"


def test_words_without_any_number_are_a_question() -> None:
    """Nobody guesses how warm warm is."""
    resolved = terms(piece(care=CareText(wash_words="warm")))

    assert resolved.limit(BATH).stand(quantity("30 °C")) is Standing.UNKNOWN
    assert [question.message for question in resolved.questions] == ["gear.terms.words_only"]


def test_an_unreadable_label_is_asked_for_and_the_edition_still_counts() -> None:
    """What nobody can read lowers nothing."""
    resolved = terms(piece(readable=False), book(rule(BATH, at_most("40 °C"))))

    assert resolved.limit(BATH).stand(quantity("41 °C")) is Standing.BEYOND
    assert [question.message for question in resolved.questions] == ["gear.terms.label_unreadable"]


def test_a_label_is_cited_by_maker_and_style() -> None:
    """Where a number comes from is said for each."""
    limit = terms(piece(care=CareText(extraction=quantity("80 G")))).limit("wash.extraction")

    assert limit.binding is not None
    assert (limit.binding[1].rule, limit.binding[1].source) == ("label.extraction", "label")
