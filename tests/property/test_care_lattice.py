"""What holds of every decision on care, whatever happened and in whatever order it is told."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.care_facts import EDITION, EDITIONS, FIRE_AT, book, contaminants, decide, hold, piece

from sootline.core.basis import CallId, ContaminantId, DateSpan, MemberId
from sootline.core.care import BuildingHold, CarePolicy, Decision, Fate, Product, ProductUse
from sootline.core.exposure import (
    Answer,
    Building,
    Call,
    Decon,
    DeconMethod,
    Done,
    Hazard,
    Presence,
    Remark,
    Survey,
    Zone,
)  # fmt: skip
from sootline.core.gear import Act, CareText, Component, State, WashMethod
from sootline.core.rulebook import Knowledge
from sootline.words import languages, say

KINDS = ("coat-shell", "coat-liner", "gloves", "boots-leather", "helmet-shell", "hood", "mask",
         "escape-kit")  # fmt: skip
MEMBERS = ("A", "B")
LABELS = (
    CareText(),
    CareText(wash=WashMethod.MACHINE, forbids=(Act.HAND_WASH,)),
    CareText(forbids=(Act.ANY_WASH,)),
    CareText(forbids=(Act.DISINFECT,)),
)
NAMES = [rule.id for rule in contaminants()]
POLICY = CarePolicy(
    building_holds=(BuildingHold(contaminant=ContaminantId("asbestos"), built_before=1980),),
    products=(Product(name="P", use=ProductUse.DISINFECTANT, materials=("fabric",)),),
)
ANSWERS = st.sampled_from(Answer)
KNOWN = st.sampled_from(Knowledge)
SPEAKERS = st.sampled_from(["A", "captain", None])
IDS = [f"{member}-{kind}" for member in MEMBERS for kind in KINDS]
ON_IT = (Knowledge.KNOWN, Knowledge.SUSPECTED)

hazards = st.builds(Hazard, contaminant=st.sampled_from(NAMES), knowledge=KNOWN, said_by=SPEAKERS)
remarks = st.builds(
    Remark,
    component=st.sampled_from(IDS),
    contaminant=st.sampled_from([*NAMES, None]),
    knowledge=KNOWN,
    reached_skin=ANSWERS,
    torn=st.booleans(),
    rinsed=ANSWERS,
    soiled=ANSWERS,
    said_by=SPEAKERS,
    detail=st.none(),
)
decons = st.builds(
    Decon, done=st.sampled_from(Done), method=st.sampled_from(DeconMethod), reason=st.none()
)
people = st.builds(
    Presence,
    member=st.sampled_from([MemberId(member) for member in MEMBERS]),
    zones=st.lists(st.sampled_from(Zone), max_size=2).map(tuple),
    role=st.none(),
    on_air=ANSWERS,
    smoke=ANSWERS,
    opened=ANSWERS,
    minutes=st.none(),
    decon=decons,
    bags=st.just(()),
    worn=st.none(),
)
surveys = st.builds(
    Survey,
    contaminant=st.just(ContaminantId("asbestos")),
    found=KNOWN,
    signed_by=st.just("surveyor"),
    signed_at=st.just(FIRE_AT),
)
buildings = st.builds(
    Building,
    built=st.sampled_from([DateSpan.parse(text) for text in ("1962", "1999", "unknown")]),
    opened=ANSWERS,
    surveys=st.lists(surveys, max_size=1).map(tuple),
)
calls = st.builds(
    Call,
    id=st.just(CallId("c1")),
    at=st.just(FIRE_AT),
    back_at=st.none(),
    code=st.sampled_from([None, "111", "321"]),
    title=st.just(""),
    training=st.booleans(),
    building=buildings,
    hazards=st.lists(hazards, max_size=3).map(tuple),
    people=st.lists(people, max_size=3).map(tuple),
    remarks=st.lists(remarks, max_size=4).map(tuple),
    evidence=st.lists(st.sampled_from(IDS), max_size=1).map(tuple),
    casualties=st.just(()),
)
editions = st.sampled_from(EDITIONS)
labels = st.sampled_from(LABELS)


def gear(care: CareText, state: State | None = None) -> tuple[Component, ...]:
    """Return the same few components for each member."""
    return tuple(
        piece(kind, member, care=care, state=state or State())
        for member in MEMBERS
        for kind in KINDS
    )


def decided(care: CareText, edition: str, call: Call) -> tuple[Decision, ...]:
    """Decide on everybody's gear."""
    return decide(gear(care), [call], rulebook=book(edition), policy=POLICY)


def asks_less(more: Decision, less: Decision) -> list[str]:
    """Say in what the first asks for less than the second."""
    standing = {hold.cause for hold in more.open_holds}
    faults = [
        f"hold {hold.cause}"
        for hold in less.open_holds
        if standing.isdisjoint((hold.cause, hold.cause.replace(".suspected/", ".known/")))
    ]
    if more.level.rank < less.level.rank:
        faults.append(f"level {more.level} below {less.level}")
    if more.separation.alone < less.separation.alone:
        faults.append("no longer alone")
    if not set(less.separation.hazards) <= set(more.separation.hazards):
        faults.append("no longer apart")
    if less.disinfection and not more.disinfection:
        faults.append("no disinfection")
    if more.sealed < less.sealed:
        faults.append("no longer sealed")
    return faults


@given(care=labels, edition=editions, call=calls, extra=st.one_of(hazards, remarks))
@settings(max_examples=60, deadline=None)
def test_one_more_exposure_never_lowers_anything(
    care: CareText, edition: str, call: Call, extra: Hazard | Remark
) -> None:
    """Another hazard or remark that something is there only ever adds."""
    adds = replace(extra, knowledge=ON_IT[extra.knowledge in ON_IT])
    if isinstance(adds, Hazard):
        told = replace(call, hazards=(*call.hazards, adds))
    else:
        told = replace(call, remarks=(*call.remarks, adds))
    pairs = zip(decided(care, edition, told), decided(care, edition, call), strict=True)

    assert [asks_less(more, less) for more, less in pairs if asks_less(more, less)] == []


def unsay_hazards(call: Call) -> Call:
    """Make every denied hazard a "don't know"."""
    unsaid = (
        replace(one, knowledge=Knowledge.UNKNOWN) if one.knowledge is Knowledge.ABSENT else one
        for one in call.hazards
    )
    return replace(call, hazards=tuple(unsaid))


def unsay_remarks(call: Call) -> Call:
    """Make every denying remark a "don't know"."""
    unsaid = (
        replace(one, knowledge=Knowledge.UNKNOWN) if one.knowledge is Knowledge.ABSENT else one
        for one in call.remarks
    )
    return replace(call, remarks=tuple(unsaid))


def unsay_answers(call: Call) -> Call:
    """Make every "no" of a person or a remark an "unknown", and no zone known."""
    people = (
        replace(one, smoke=unsaid(one.smoke), on_air=unsaid(one.on_air), opened=unsaid(one.opened))
        for one in call.people
    )
    remarks = (replace(one, reached_skin=unsaid(one.reached_skin)) for one in call.remarks)
    return replace(call, people=tuple(people), remarks=tuple(remarks))


def unsaid(answer: Answer) -> Answer:
    """Return what is left of an answer when a denial is taken back."""
    return Answer.UNKNOWN if answer is Answer.NO else answer


def unsay_survey(call: Call) -> Call:
    """Make every survey one that could not tell."""
    surveys = (replace(one, found=Knowledge.UNKNOWN) for one in call.building.surveys
               if one.found is Knowledge.ABSENT)  # fmt: skip
    kept = (one for one in call.building.surveys if one.found is not Knowledge.ABSENT)
    return replace(call, building=replace(call.building, surveys=(*surveys, *kept)))


@pytest.mark.parametrize("unsay", [unsay_hazards, unsay_remarks, unsay_answers, unsay_survey])
@given(care=labels, edition=editions, call=calls)
@settings(max_examples=40, deadline=None)
def test_not_knowing_never_asks_for_less_than_a_denial(
    unsay: Callable[[Call], Call], care: CareText, edition: str, call: Call
) -> None:
    """Whatever was denied, "unknown" in its place lowers nothing."""
    pairs = zip(decided(care, edition, unsay(call)), decided(care, edition, call), strict=True)

    assert [asks_less(more, less) for more, less in pairs if asks_less(more, less)] == []


@given(care=labels, call=calls)
@settings(max_examples=40, deadline=None)
def test_a_recorded_hold_survives_every_call(care: CareText, call: Call) -> None:
    """No call, remark or survey ends a hold that somebody put by hand."""
    held = State(holds=(hold("by hand"),))
    found = decide(gear(care, held), [call], policy=POLICY)

    assert all("by hand" in {one.cause for one in decision.open_holds} for decision in found)
    assert all(decision.fate not in (Fate.WASH, Fate.HOOK, Fate.LOOK) for decision in found)


@given(care=labels, edition=editions, call=calls)
@settings(max_examples=60, deadline=None)
def test_every_outcome_has_a_reason_with_a_source(care: CareText, edition: str, call: Call) -> None:
    """Reasons, questions, cautions and holds all say on what they rest."""
    for decision in decided(care, edition, call):
        holds = [one.reason for one in decision.holds if one.reason]
        found = (*decision.reasons, *decision.unknowns, *decision.cautions, *holds)
        assert decision.reasons
        assert len(set(decision.reasons)) == len(decision.reasons)
        assert len({one.cause for one in decision.holds}) == len(decision.holds)
        assert all(one.ground.source and one.ground.edition for one in found)


@pytest.mark.parametrize("lang", languages())
@given(call=calls)
@settings(max_examples=30, deadline=None)
def test_everything_a_decision_says_has_its_words_and_its_values(lang: str, call: Call) -> None:
    """No bare id, no placeholder left empty, in either language."""
    for decision in decided(CareText(), EDITION, call):
        asked = [(one.question, one.reason.values) for one in decision.holds if one.reason]
        acts = [(step.act, ()) for step in decision.preparation]
        skips = [(step.skipped, ()) for step in decision.preparation]
        found = (*decision.first, *decision.reasons, *decision.unknowns, *decision.cautions)
        told = [(one.message, one.values) for one in found]
        for message, values in (*told, *asked, *acts, *skips):
            text = say(message, values, lang=lang)
            assert not text.startswith("["), message
            assert "?]" not in text, message


@given(care=labels, call=calls, data=st.data())
@settings(max_examples=40, deadline=None)
def test_the_order_of_people_and_remarks_changes_nothing(
    care: CareText, call: Call, data: st.DataObject
) -> None:
    """Who was written down first is nobody's merit."""
    mixed = replace(
        call,
        people=tuple(data.draw(st.permutations(call.people))),
        remarks=tuple(data.draw(st.permutations(call.remarks))),
    )
    first, second = (decide(gear(care), [one], policy=POLICY) for one in (call, mixed))

    assert [replace(one, reasons=()) for one in first] == [
        replace(one, reasons=()) for one in second
    ]
    assert [set(one.reasons) for one in first] == [set(one.reasons) for one in second]


@given(care=labels, call=calls)
@settings(max_examples=40, deadline=None)
def test_nothing_open_is_washed_and_nothing_forbidden_is_done(care: CareText, call: Call) -> None:
    """A held, sealed or secured piece is never on its way to a drum."""
    for decision in decide(gear(care), [call], policy=POLICY):
        if decision.open_holds or decision.sealed:
            assert decision.fate in (Fate.HOLD, Fate.EVIDENCE, Fate.OUT)
        if Act.ANY_WASH in care.forbids:
            assert decision.wash is WashMethod.NONE
        if Act.HAND_WASH in care.forbids:
            assert decision.wash is not WashMethod.HAND
