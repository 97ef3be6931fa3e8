"""Resolution of terms under any sources: nothing is ever loosened by hearing one more."""

from dataclasses import replace
from decimal import Decimal
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st
from tests.unit.gear.gear_cases import book, guide, piece, rule, terms, unset

from sootline.core.basis import Limit, Quantity, Side, Standing
from sootline.core.gear import Act, CareText, WashMethod
from sootline.core.gear.limits import LIMIT_TOPICS
from sootline.core.gear.terms import CareTerms
from sootline.core.rulebook.rules import Rule, Rulebook

UNITS = {
    "wash.bath_temp": ("°C", "°F"),
    "dry.air_temp": ("°C", "°F"),
    "wash.extraction": ("G",),
    "wash.ph_low": ("pH",),
    "wash.ph_high": ("pH",),
}
amounts = st.decimals(min_value=0, max_value=120, places=1)
topics = st.sampled_from(LIMIT_TOPICS)
acts = st.lists(st.sampled_from(Act), max_size=3, unique=True).map(tuple)


@st.composite
def limits(draw: st.DrawFn, topic: str) -> Limit:
    """Draw a limit on a topic, in one unit or as a pair."""
    side = Side.AT_LEAST if topic == "wash.ph_low" else Side.AT_MOST
    units = draw(st.permutations(UNITS[topic]).flatmap(lambda u: st.sampled_from([u[:1], u])))
    values = tuple(Quantity(amount=draw(amounts), unit=unit) for unit in units)
    return Limit(side=side, values=values)


@st.composite
def care_texts(draw: st.DrawFn) -> CareText:
    """Draw what a label or a guide may say."""
    number = st.none() | amounts
    extraction, low, high = draw(number), draw(number), draw(number)
    return CareText(
        wash=draw(st.none() | st.sampled_from(WashMethod)),
        wash_temp=draw(st.none() | limits("wash.bath_temp")),
        wash_words=draw(st.none() | st.just("warm")),
        dry_temp=draw(st.none() | limits("dry.air_temp")),
        extraction=None if extraction is None else Quantity(amount=extraction, unit="G"),
        ph_low=None if low is None else Quantity(amount=low, unit="pH"),
        ph_high=None if high is None else Quantity(amount=high, unit="pH"),
        forbids=draw(acts),
    )


@st.composite
def rules(draw: st.DrawFn) -> Rule:
    """Draw a rule that limits, leaves open, forbids, or names a method."""
    traits = draw(st.sampled_from([(), ("shell",), ("aluminised",), ("glove",)]))
    topic = draw(st.sampled_from((*LIMIT_TOPICS, "wash.forbidden", "wash.method")))
    if topic == "wash.forbidden":
        return rule(topic, tuple(act.value for act in draw(acts)), *traits)
    if topic == "wash.method":
        return rule(topic, draw(st.sampled_from(WashMethod)).value, *traits)
    limit = draw(st.none() | limits(topic))
    return unset(topic, *traits) if limit is None else rule(topic, limit, *traits)


many_rules = st.lists(rules(), max_size=4).map(tuple)
books = st.builds(lambda adopted, policy: book(*adopted, policy=policy), many_rules, many_rules)


@st.composite
def readings(draw: st.DrawFn) -> tuple[str, Quantity]:
    """Draw a reading on a topic."""
    topic = draw(topics)
    unit = draw(st.sampled_from(UNITS[topic]))
    return topic, Quantity(amount=draw(amounts) + Decimal("0.05"), unit=unit)


def permits_no_more(new: CareTerms, old: CareTerms, reading: tuple[str, Quantity]) -> bool:
    """Whether what was beyond stays beyond, and every prohibition stays."""
    topic, value = reading
    was_beyond = old.limit(topic).stand(value) is Standing.BEYOND
    still_beyond = new.limit(topic).stand(value) is Standing.BEYOND
    return (still_beyond or not was_beyond) and set(old.bans) <= set(new.bans)


def method_is_banned(resolved: CareTerms) -> bool:
    """Whether the method that counts is one somebody forbids."""
    by = {
        WashMethod.MACHINE: (Act.MACHINE_WASH, Act.ANY_WASH),
        WashMethod.HAND: (Act.HAND_WASH, Act.ANY_WASH),
        WashMethod.BRUSH: (Act.ANY_WASH,),
        WashMethod.WIPE: (Act.ANY_WASH,),
        WashMethod.NONE: (),
    }
    return any(resolved.banned(act) for act in by[resolved.method.wash])


@given(care_texts(), care_texts(), books, readings())
def test_a_guide_never_loosens(
    label: CareText, maker: CareText, rulebook: Rulebook, reading: tuple[str, Quantity]
) -> None:
    """Hearing the maker's guide as well permits nothing that was not permitted."""
    component = piece("coat-shell", label, "aluminised")

    without, heard = terms(component, rulebook), terms(component, rulebook, guide(maker))

    assert permits_no_more(heard, without, reading)


@given(care_texts(), books, rules(), st.booleans(), readings())
def test_one_more_rule_never_loosens(
    label: CareText, rulebook: Rulebook, more: Rule, by_policy: bool, reading: tuple[str, Quantity]
) -> None:
    """A rule added to edition or policy, without a decision, only tightens."""
    component = piece("coat-shell", label, "aluminised")
    edition = rulebook.policy if by_policy else rulebook.adopted
    longer = replace(edition, rules=(*edition.rules, more))
    added = replace(rulebook, policy=longer) if by_policy else replace(rulebook, adopted=longer)

    assert permits_no_more(terms(component, added), terms(component, rulebook), reading)


@given(care_texts(), many_rules, many_rules, readings())
def test_the_order_of_sources_makes_no_difference_to_limits(
    label: CareText, one: tuple[Rule, ...], two: tuple[Rule, ...], reading: tuple[str, Quantity]
) -> None:
    """Edition and policy may change places, and the rules within each their order."""
    component = piece("coat-shell", label)
    topic, value = reading

    there = terms(component, book(*one, policy=two)).limit(topic)
    back = terms(component, book(*reversed(two), policy=tuple(reversed(one)))).limit(topic)

    assert there.stand(value) is back.stand(value)


@given(care_texts(), books, readings())
def test_what_is_not_known_lowers_nothing(
    label: CareText, rulebook: Rulebook, reading: tuple[str, Quantity]
) -> None:
    """A label nobody can read permits no more than the same texts without that label."""
    topic, value = reading
    blind = terms(piece("coat-shell", None, readable=False), rulebook)
    silent = terms(piece("coat-shell"), rulebook)

    assert blind.limit(topic).stand(value) is silent.limit(topic).stand(value)
    assert blind.bans == silent.bans
    assert len(blind.questions) == len(silent.questions) + 1
    assert permits_no_more(terms(piece("coat-shell", label), rulebook), blind, reading)


@given(care_texts(), books)
def test_resolving_twice_is_resolving_once(label: CareText, rulebook: Rulebook) -> None:
    """The same facts give the same terms, from the same rulebook or an equal one."""
    component = piece("gloves", label)
    copy = replace(rulebook, policy=replace(rulebook.policy))

    assert terms(component, rulebook) == terms(component, rulebook) == terms(component, copy)


@given(care_texts(), care_texts(), books)
def test_no_method_is_one_that_somebody_forbids(
    label: CareText, maker: CareText, rulebook: Rulebook
) -> None:
    """Whoever forbids is heard, whoever speaks first."""
    resolved = terms(piece("gloves", label), rulebook, guide(maker))

    assert not method_is_banned(resolved)


@given(care_texts(), care_texts(), books, amounts, readings())
def test_a_decision_never_goes_beyond_label_or_maker(
    label: CareText,
    maker: CareText,
    rulebook: Rulebook,
    decided: Decimal,
    reading: tuple[str, Quantity],
) -> None:
    """Whatever the department decides, what label or guide refuses stays refused."""
    topic, value = reading
    side = Side.AT_LEAST if topic == "wash.ph_low" else Side.AT_MOST
    loose = Limit(side=side, values=(Quantity(amount=decided, unit=UNITS[topic][0]),))
    policy = replace(
        rulebook.policy, rules=(*rulebook.policy.rules, rule(topic, loose, decision="C, 2026"))
    )
    resolved = terms(piece(care=label), replace(rulebook, policy=policy), guide(maker))

    own = [text.limit(topic) for text in (label, maker)]
    refused = any(one and one.stand(value) is Standing.BEYOND for one in own)
    assert not refused or resolved.limit(topic).stand(value) is Standing.BEYOND


@given(care_texts(), care_texts(), books)
def test_limits_in_one_unit_stand_in_order_of_strictness(
    label: CareText, maker: CareText, rulebook: Rulebook
) -> None:
    """Of two limits in the same single unit, the one further down is never the stricter."""
    for resolved in terms(piece(care=label), rulebook, guide(maker)).limits:
        for unit in UNITS[resolved.topic]:
            single = [lim for lim, _ in resolved.limits if [v.unit for v in lim.values] == [unit]]

            assert not any(down.stricter(up) for up, down in pairwise(single))
