"""Every sheet, printed and read back: words, boxes, fonts, codes, both languages, both papers."""

import time
from collections.abc import Callable
from dataclasses import replace

import pytest
from tests.paper_night import NOW, night, page, piece, planned
from tests.paper_reading import (
    codes_in,
    fonts_of,
    images_of,
    pages_of,
    text_of,
    text_outside,
    words_of,
)
from tests.unit.tasks.test_sheet_facts import HELD_BY_HAND

from sootline.core.basis import KindId
from sootline.core.care.decisions import Separation
from sootline.core.gear import find_kind
from sootline.core.job.jobs import Job
from sootline.core.rebuild import Flaw
from sootline.paper.check_sheets import print_check_sheets
from sootline.paper.handover import print_handover
from sootline.paper.hold_labels import print_hold_labels
from sootline.paper.load_cards import print_load_cards
from sootline.paper.page import Page, PaperSize
from sootline.paper.radio import print_radio_sheet
from sootline.paper.tags import print_tags
from sootline.tasks.check_sheets import list_after_wash, list_routine_look
from sootline.tasks.decide import decide_job
from sootline.tasks.hand_over import Left, hand_over
from sootline.tasks.hold_labels import list_hold_labels
from sootline.tasks.load_cards import list_load_cards
from sootline.tasks.plan_wash import PlanResult
from sootline.tasks.who_can_ride import backs_of, who_can_ride
from sootline.wiring.demo import demo_job
from sootline.wiring.rules import RULES
from sootline.words import languages, name, say
from sootline.words.never_say import find_claims

Capture = pytest.CaptureFixture[str]
PAPERS = [(size, langs) for size in PaperSize for langs in (("en",), ("en", "es"), ("es",))]


@pytest.fixture(scope="module")
def demo() -> tuple[Job, PlanResult]:
    """Return the demo department's night and its plan."""
    job = demo_job()
    return job, planned(job)


def load_cards(job: Job, plan: PlanResult, paper: Page) -> bytes:
    """Print the load cards."""
    return print_load_cards(list_load_cards(job, plan), paper)


def hold_labels(job: Job, plan: PlanResult, paper: Page) -> bytes:
    """Print the hold labels."""
    return print_hold_labels(list_hold_labels(job, plan.loads.decided), paper)


def handover(job: Job, plan: PlanResult, paper: Page) -> bytes:
    """Print the handover sheet."""
    return print_handover(hand_over(job, plan.loads.decided), paper, plan=plan, now=job.now)


def check_sheets(job: Job, plan: PlanResult, paper: Page) -> bytes:
    """Print both check sheets."""
    decided = plan.loads.decided
    return print_check_sheets(list_after_wash(job, decided), list_routine_look(job, decided), paper)


def radio(job: Job, plan: PlanResult, paper: Page) -> bytes:
    """Print the radio-room sheet."""
    answer = who_can_ride(RULES, job, backs=backs_of(plan, job))
    return print_radio_sheet(answer.riding.now, answer.now, paper)


def tags(job: Job, plan: PlanResult, paper: Page) -> bytes:  # noqa: ARG001 - as every sheet
    """Print tags for everything."""
    return print_tags(job.components, paper)


Sheet = Callable[[Job, PlanResult, Page], bytes]
SHEETS: tuple[Sheet, ...] = (load_cards, hold_labels, handover, check_sheets, radio, tags)


def has(pdf: bytes, text: str) -> bool:
    """Whether a PDF says a text, however its lines are broken."""
    return "".join(text.split()) in text_of(pdf)


@pytest.mark.parametrize("sheet", SHEETS)
@pytest.mark.parametrize(("size", "langs"), PAPERS)
def test_no_text_leaves_the_page_and_fonts_are_embedded(
    sheet: Sheet, size: PaperSize, langs: tuple[str, ...], demo: tuple[Job, PlanResult]
) -> None:
    """On A4 and US Letter, in one language and in two."""
    pdf = sheet(*demo, page(*langs, size=size))
    fonts = fonts_of(pdf)

    assert text_outside(pdf) == []
    assert fonts
    assert all(fonts.values())
    assert {font.partition("-")[0] for font in fonts} == {"AtkinsonHyperlegibleNext"}


@pytest.mark.parametrize("sheet", [one for one in SHEETS if one is not tags])
def test_every_page_says_what_it_is_when_it_was_printed_and_which_page_of_how_many(
    sheet: Sheet, demo: tuple[Job, PlanResult]
) -> None:
    """A sheet on the wall must show how old it is."""
    pdf = sheet(*demo, page())

    assert has(pdf, "printed Tue 10 Mar 2026, 22:20")  # the department's own clock
    assert has(pdf, f"page 1 of {pages_of(pdf)}")


@pytest.mark.parametrize("sheet", SHEETS)
@pytest.mark.parametrize("lang", languages())
def test_no_sheet_claims_what_the_program_must_not_claim(
    sheet: Sheet, lang: str, demo: tuple[Job, PlanResult]
) -> None:
    """What was recorded, never that anything is clean or safe."""
    assert find_claims(words_of(sheet(*demo, page(lang))), lang) == ()


@pytest.mark.parametrize(("size", "langs"), PAPERS)
def test_a_load_card_is_one_page(
    size: PaperSize, langs: tuple[str, ...], demo: tuple[Job, PlanResult]
) -> None:
    """Also in two languages on the shorter paper."""
    cards = list_load_cards(*demo)

    assert pages_of(print_load_cards(cards, page(*langs, size=size))) == len(cards)


def test_a_load_card_names_everything_that_goes_in_with_its_limits(
    demo: tuple[Job, PlanResult],
) -> None:
    """Every piece, the washer, the programme, the water, the weight, every step."""
    for card in list_load_cards(*demo):
        pdf = print_load_cards([card], page())
        told = [card.where, *(piece.id for piece in card.contents.components)]
        told += [say(step) for step in card.contents.preparation]
        told += [card.programme or "", str(card.weight_limit or "")]
        told += [card.contents.water.numbers if card.contents.water else ""]

        assert [text for text in told if not has(pdf, text)] == []


def test_a_card_is_printed_in_half_a_second(demo: tuple[Job, PlanResult]) -> None:
    """Nobody waits for paper at 03:40; the first printing loads the fonts."""
    cards = list_load_cards(*demo)
    print_load_cards(cards[:1], page())
    began = time.perf_counter()
    print_load_cards(cards, page())

    assert (time.perf_counter() - began) / len(cards) < 0.5


def test_the_cautions_stand_where_the_work_is_done() -> None:
    """Blood on a coat, gear bagged wet, pockets, drying: on the sheets that are at hand there."""
    job = night()
    plan = planned(job)
    cards, labels = load_cards(job, plan, page()), hold_labels(job, plan, page())

    assert has(cards, say("paper.caution.sharps"))
    assert has(cards, say("paper.caution.no_heat"))
    assert has(cards, "301 (bag 12) 1-3 h")
    assert has(labels, say("paper.caution.blood"))
    assert has(labels, say("care.first.infection_control"))


def test_a_hold_label_says_who_decides_by_name_and_when_it_goes_up() -> None:
    """The officer, the deputy, the hour; and that nobody opens it."""
    job = night()
    pdf = hold_labels(job, planned(job), page("en", "es"))

    for text in ("SEALED, don't open", "CERRADA, no abrir", "infection control officer 207",
                 "safety officer 204", "coat shell 302-coat"):  # fmt: skip
        assert has(pdf, text), text


def test_a_hold_without_hour_office_or_tag_is_printed_all_the_same() -> None:
    """What is not on record is said to be so; an id that makes no tag has no code."""
    bare = piece("no tag!", "hood", holds=(HELD_BY_HAND,))
    job = night(gear=(bare,), calls=())
    pdf = print_hold_labels(list_hold_labels(job, decide_job(RULES, job)), page())

    assert has(pdf, "not recorded")
    assert has(pdf, "if undecided after 12 h")
    assert all(codes_in(image) == set() for image in images_of(pdf))


def test_a_handover_names_every_exception_in_both_languages() -> None:
    """Each way a piece is not on its hook, its pieces, the washer that is down."""
    job = night()
    plan = planned(job)
    told = hand_over(job, plan.loads.decided)
    pdf = print_handover(told, page("en", "es"), plan=plan, now=NOW)

    for left, pieces in told.exceptions:
        for lang in ("en", "es"):
            assert has(pdf, say(f"paper.left.{left}", lang=lang))
        assert all(has(pdf, one.id) for one in pieces)
    assert has(pdf, "Out of order: drum 2")
    assert Left.HELD in dict(told.exceptions)


def test_a_quiet_handover_says_so() -> None:
    """Nothing out of the usual is an answer too."""
    job = night(gear=(piece("S-4", "hood"),), calls=())
    pdf = print_handover(
        replace(hand_over(job, decide_job(RULES, job)), down=()),
        page(),
        plan=planned(job),
        now=NOW,
    )

    assert has(pdf, say("paper.handover.nothing"))


def test_a_check_sheet_numbers_its_rows_letters_its_points_and_numbers_the_flaws() -> None:
    """A row is typed in as its number, its letters and its flaws."""
    job = night()
    pdf = check_sheets(job, planned(job), page())

    assert all(has(pdf, f"{letter} {say(point)}") for letter, point in _points("coat-shell"))
    assert all(has(pdf, name("flaw", flaw)) for flaw in Flaw)
    assert has(pdf, "6 301-3")
    assert has(pdf, say("paper.check.nothing"))  # nobody has to look anything over


def _points(kind: str) -> list[tuple[str, str]]:
    return list(zip("ABCDE", find_kind(KindId(kind)).touch_points, strict=True))


def test_the_radio_sheet_says_who_cannot_ride_before_who_can(demo: tuple[Job, PlanResult]) -> None:
    """By name, largest and first; nothing of blood, powder or persons' health."""
    pdf = radio(*demo, page())
    text = text_of(pdf)

    assert text.index("Cannotride") < text.rindex("Canride")
    assert all(has(pdf, member.id) for member in demo[0].members)
    assert not any(word in text.lower() for word in ("blood", "asbestos", "infection"))


def test_a_card_says_what_is_not_known_of_its_load(demo: tuple[Job, PlanResult]) -> None:
    """Water nobody states, water of some pieces only, pieces not weighed, a load by itself."""
    card = list_load_cards(*demo)[0]
    contents = card.contents
    dry = replace(card, contents=replace(contents, water=None, water_unknown=7))
    partly = replace(card, contents=replace(contents, water_unknown=2), unweighed=3)
    alone = replace(card, separation=Separation(alone=True), contents=replace(contents, never=()))

    assert has(print_load_cards([dry], page()), "not known: read the label")
    assert has(print_load_cards([partly], page()), "read the labels of 2 pieces")
    assert has(print_load_cards([partly], page()), "3 not weighed")
    assert has(print_load_cards([alone], page()), "Alone: shares with nothing")


def test_a_sheet_has_one_language_or_two() -> None:
    """Three would leave no room to read."""
    with pytest.raises(ValueError, match="one language or two"):
        page("en", "es", "fr")
