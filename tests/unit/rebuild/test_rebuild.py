"""After-wash check and rebuild, reason by reason."""

import datetime as dt
from dataclasses import replace

import pytest

from sootline.core.basis import (
    CallId,
    ComponentId,
    DateSpan,
    GuideId,
    KindId,
    MessageId,
    SetId,
    UnreadableValueError,
)
from sootline.core.exposure import Answer
from sootline.core.gear import Component, Element, Guide, Hold, Label, Life, State, find_kind
from sootline.core.gear.state import CareStage
from sootline.core.rebuild import (
    LEADS_TO,
    AfterWashCheck,
    Build,
    Felt,
    Flaw,
    FlawFound,
    Match,
    Next,
    judge_after_wash,
    judge_build,
)
from sootline.core.rulebook import Decider

TODAY = dt.date(2026, 3, 1)
NOW = dt.datetime(2026, 3, 1, 12, tzinfo=dt.UTC)
HOLD = Hold(
    cause="asbestos",
    question=MessageId("care.ask.asbestos"),
    decider=Decider.SAFETY_OFFICER,
    deputy=Decider.CHIEF,
    escalate_after_h=12,
)
WEBBING, STITCHING = MessageId("gear.touch.webbing"), MessageId("gear.touch.stitching")


def strap(stage: CareStage = CareStage.TO_CHECK, *holds: Hold) -> Component:
    """Return a drag device: two touch points, quickly felt."""
    state = State(stage=stage, holds=holds)
    return Component(id=ComponentId("D"), kind=KindId("drag-device"), state=state)


def check(
    webbing: Answer = Answer.YES, stitching: Answer = Answer.YES, *flaws: FlawFound
) -> AfterWashCheck:
    """Return what 118 felt and saw."""
    felt = (Felt(point=WEBBING, dry=webbing), Felt(point=STITCHING, dry=stitching))
    return AfterWashCheck(component=ComponentId("D"), by="118", at=NOW, felt=felt, flaws=flaws)


def judged(component: Component, found: AfterWashCheck | None, out: str = "unknown") -> Next:
    """Return what happens next."""
    first_day = DateSpan.parse(out)
    return judge_after_wash(component, found, first_day_out=first_day, today=TODAY).next


def test_nobody_cannot_check() -> None:
    """A check without a name is refused, not taken for one."""
    with pytest.raises(UnreadableValueError):
        AfterWashCheck(component=ComponentId("D"), by="  ", at=NOW)


def test_a_dry_check_before_the_wash_ended_does_not_count() -> None:
    """Whoever felt it: a wash that is not recorded as finished is no wash."""
    assert judged(strap(CareStage.IN_WASHER), check()) is Next.WASH_AGAIN


def test_a_hold_outlives_wash_and_check() -> None:
    """A hold ends by the word of who is entitled, not by a dry cuff."""
    assert judged(strap(CareStage.TO_CHECK, HOLD), check()) is Next.HOLD


def test_past_its_years_it_is_out_whatever_was_felt() -> None:
    """The first day out has come, under the earliest reading."""
    assert judged(strap(), check(), "2026-03") is Next.OUT
    assert judged(strap(), check(), "..2026-02-01") is Next.OUT
    assert judged(strap(), check(), "2026-03-02") is Next.BACK


def test_one_damp_point_dries_on() -> None:
    """Dry everywhere but one place is not dry."""
    verdict = judge_after_wash(
        strap(), check(webbing=Answer.NO), first_day_out=DateSpan(), today=TODAY
    )

    assert verdict.next is Next.DRY_ON
    assert verdict.reasons[0].value("point") == WEBBING


def test_an_unfelt_point_is_still_to_feel() -> None:
    """A point nobody answered, or answered "don't know", is named."""
    verdict = judge_after_wash(
        strap(), check(stitching=Answer.UNKNOWN), first_day_out=DateSpan(), today=TODAY
    )

    assert (verdict.next, verdict.to_feel) == (Next.CHECK, (STITCHING,))


def test_a_point_the_kind_does_not_have_is_asked_about() -> None:
    """A knee felt on a strap is a sheet mixed up."""
    knee = Felt(point=MessageId("gear.touch.knees"), dry=Answer.YES)
    mixed = AfterWashCheck(component=ComponentId("D"), by="118", at=NOW, felt=(*check().felt, knee))

    assert judged(strap(), mixed) is Next.CHECK


@pytest.mark.parametrize("flaw", list(Flaw))
def test_every_flaw_leads_somewhere_and_never_back(flaw: Flaw) -> None:
    """Nothing that was found is passed over."""
    found = check(Answer.YES, Answer.YES, FlawFound(flaw=flaw, place="left cuff"))

    assert judged(strap(), found) is LEADS_TO[flaw]
    assert LEADS_TO[flaw] is not Next.BACK


def test_the_most_that_any_reason_asks_for_counts() -> None:
    """Torn and soiled is washed before it is mended; both reasons are kept."""
    found = check(
        Answer.YES, Answer.YES, FlawFound(flaw=Flaw.TORN), FlawFound(flaw=Flaw.SOILED, note="tar")
    )

    verdict = judge_after_wash(strap(), found, first_day_out=DateSpan(), today=TODAY)

    assert verdict.next is Next.WASH_AGAIN
    assert {reason.value("flaw") for reason in verdict.reasons} == {"torn", "soiled"}


def coat(
    exchange: bool | None, *, style: str | None = "K", size: str = "44R"
) -> tuple[Build, dict[GuideId, Guide]]:
    """Return a coat whose liner comes from another set, under a guide that says this."""
    guide = Guide(id=GuideId("g"), title="guide", exchange=exchange)
    shell = Component(
        id=ComponentId("A"),
        kind=KindId("coat-shell"),
        set=SetId("1"),
        size=(("chest", "44R"),),
        label=Label(style=style),
        guide=guide.id,
    )
    liner = Component(
        id=ComponentId("b"),
        kind=KindId("coat-liner"),
        set=SetId("2"),
        size=(("chest", size),),
        label=Label(style=style),
        guide=guide.id,
    )
    drag = Component(
        id=ComponentId("d"), kind=KindId("drag-device"), set=SetId("1"), guide=guide.id
    )
    build = Build(element=Element.COAT, parts=(shell, liner, drag), routed_by="118")
    return build, {guide.id: guide}


@pytest.mark.parametrize(
    ("exchange", "match"),
    [(True, Match.ALLOWED), (False, Match.FORBIDDEN), (None, Match.UNKNOWN)],
)
def test_only_the_maker_allows_an_exchange(exchange: bool | None, match: Match) -> None:
    """Silence is no permission; a forbidden exchange stays forbidden."""
    verdict = judge_build(*coat(exchange))

    assert verdict.match is match
    assert bool(verdict.holds) is (match is not Match.ALLOWED)
    assert verdict.complete is (match is Match.ALLOWED)


@pytest.mark.parametrize(("style", "size"), [(None, "44R"), ("K", "44L")])
def test_an_allowed_exchange_needs_the_same_known_style_and_size(
    style: str | None, size: str
) -> None:
    """The maker allows like for like; an unreadable style is not like."""
    assert judge_build(*coat(True, style=style, size=size)).match is Match.UNKNOWN


def test_a_part_without_a_guide_is_not_covered_by_anothers() -> None:
    """One maker does not speak for another's liner."""
    build, _ = coat(True)

    assert judge_build(build, {}).match is Match.UNKNOWN


def test_a_part_of_no_set_is_no_match() -> None:
    """A liner nobody entered in a set may be anybody's."""
    loose = Component(id=ComponentId("x"), kind=KindId("coat-liner"))

    assert judge_build(Build(element=Element.COAT, parts=(loose,)), {}).match is Match.UNKNOWN


def test_trousers_need_no_drag_device() -> None:
    """Shell and liner of one set are whole trousers."""
    parts = tuple(
        Component(id=ComponentId(kind), kind=KindId(kind), set=SetId("1"))
        for kind in ("trouser-shell", "trouser-liner")
    )

    verdict = judge_build(Build(element=Element.TROUSERS, parts=parts), {})

    assert (verdict.complete, verdict.lacking) == (True, ())


def test_nothing_fitted_is_nothing_complete() -> None:
    """An empty build lacks everything."""
    verdict = judge_build(Build(element=Element.COAT, parts=()), {})

    assert verdict.lacking == ("coat-shell", "coat-liner", "drag-device")
    assert not verdict.complete


@pytest.mark.parametrize("kind", ["coat-liner", "trouser-liner", "coverall-liner"])
def test_a_liner_is_felt_between_its_layers(kind: str) -> None:
    """Water stays longest where the thermal layer meets the barrier."""
    assert "gear.touch.between_layers" in find_kind(KindId(kind)).touch_points


@pytest.mark.parametrize("life", [Life.RETIRED, Life.DISPOSED])
def test_what_is_out_of_service_never_goes_back(life: Life) -> None:
    """However dry it is felt: the record says it is gone."""
    gone = replace(strap(), state=State(stage=CareStage.TO_CHECK, life=life))

    assert judged(gone, check()) is Next.OUT


def test_a_call_after_the_check_takes_the_check_back() -> None:
    """Worn again, it is decided on anew and felt anew; the call is named."""
    verdict = judge_after_wash(
        strap(), check(), first_day_out=DateSpan(), today=TODAY, worn_since=(CallId("car"),)
    )

    assert verdict.next is Next.CHECK
    assert [reason.value("calls") for reason in verdict.reasons] == ["car"]


def test_suspenders_of_another_set_are_no_mismatch() -> None:
    """Only what carries an identity of its own is compared: shell, liner, drag device."""
    trousers = tuple(
        Component(id=ComponentId(kind), kind=KindId(kind), set=SetId(name))
        for kind, name in (("trouser-shell", "1"), ("trouser-liner", "1"), ("suspenders", "2"))
    )

    assert judge_build(Build(element=Element.TROUSERS, parts=trousers), {}).match is Match.OWN


def test_two_liners_in_one_coat_are_not_whole() -> None:
    """Somebody ticked one liner too many: which is fitted must be said."""
    build, guides = coat(True)
    twice = replace(build, parts=(*build.parts, replace(build.parts[1], id=ComponentId("c"))))

    verdict = judge_build(twice, guides)

    assert verdict.doubled == ("coat-liner",)
    assert not verdict.complete


@pytest.mark.parametrize(
    ("by", "right", "message"),
    [
        ("118", Answer.YES, "rebuild.routed_by"),
        ("118", Answer.NO, "rebuild.routed_wrong"),
        ("118", Answer.UNKNOWN, "rebuild.routing"),
        ("  ", Answer.YES, "rebuild.routing"),
        (None, Answer.YES, "rebuild.routing"),
    ],
)
def test_how_the_drag_device_is_led_is_a_check_of_its_own(
    by: str | None, right: Answer, message: str
) -> None:
    """Felt dry is not led right: a named person says which, or the coat is not whole."""
    build, guides = coat(True)

    verdict = judge_build(replace(build, routed_by=by, routed_right=right), guides)

    assert message in {reason.message for reason in verdict.reasons}
    assert verdict.routed is (message == "rebuild.routed_by")
