"""What an officer expects when two offline phones and a wall sheet meet (Tarn Hollow, invented).

Shell 0412: the captain's phone, whose clock is right, has it on hold for battery smoke at 04:20
and in load W-9 at 05:02. The lieutenant's phone, eleven minutes slow, has it hung at 04:25 and
dry-checked by 118 at 07:10. The wall sheet: W-9 stopped at minute 18, power cut at 05:20, not
restarted. All of them meet at 08:00. Common practice, no published source.
"""

import pytest
from tests.ledger_cases import SHELL, Book, at, draft, load, span

from sootline.core.gear import Assembly, CareStage, Custody
from sootline.core.ledger import EntryKind, component
from sootline.core.ledger.folding import fold
from sootline.core.ledger.lives import Effect, Folded

K = EntryKind
SLOW = -11 * 60
W9 = load("W-9")
OTHERS = (component("0413"), component("0421"))
STATE = {"custody": "wash-room", "stage": "to-wash", "assembly": "apart"}


def met() -> Folded:
    """Return what the record adds up to at 08:00."""
    book = Book()
    book.add(
        *(draft(K.REGISTERED, "04:00", thing=one, state=STATE) for one in (SHELL, *OTHERS)),
        draft(K.RETURNED_SOILED, "04:20"),
        draft(
            K.HOLD_OPENED,
            "04:20",
            cause="battery-smoke",
            question="care.ask.battery",
            decider="safety-officer",
            deputy="chief",
        ),
        *(draft(K.PUT_IN_WASHER, "05:02", thing=one, load="W-9") for one in (SHELL, *OTHERS)),
        draft(K.HUNG, span("04:25", offset_s=SLOW), device="phone-b", actor="204", place="rack 3"),
        draft(K.TOUCH_CHECKED, span("07:10", offset_s=SLOW), device="phone-b", actor="204",
              by="118"),
        draft(K.LOAD_FAILED, "05:20", thing=W9, device="wall sheet", said="power cut, minute 18"),
    )  # fmt: skip
    return fold(book.entries)


def test_the_shell_is_on_hold_and_not_washed() -> None:
    """The last word would say ready; the hold was never ended, and the wash never finished."""
    state = met().piece(SHELL).state
    assert [hold.cause for hold in state.open_holds] == ["battery-smoke"]
    assert (state.stage, state.custody) == (CareStage.TO_WASH, Custody.WASH_ROOM)
    assert state.assembly is Assembly.APART


def test_all_five_facts_stay_with_device_person_and_stated_time() -> None:
    """Nothing anybody wrote is lost, and the times stand as they were read."""
    facts = [line.settled.fact for line in met().piece(SHELL).history]
    told = [
        (fact.kind, fact.device, fact.actor, fact.occurred.earliest)
        for fact in facts
        if fact.kind is not K.REGISTERED
    ]
    assert told == [
        (K.RETURNED_SOILED, "phone-a", "201", at("04:20")),
        (K.HOLD_OPENED, "phone-a", "201", at("04:20")),
        (K.HUNG, "phone-b", "204", at("04:25")),
        (K.PUT_IN_WASHER, "phone-a", "201", at("05:02")),
        (K.LOAD_FAILED, "wall sheet", "201", at("05:20")),
        (K.TOUCH_CHECKED, "phone-b", "204", at("07:10")),
    ]


def test_the_slow_clock_is_suspect_and_its_times_are_put_right() -> None:
    """04:25 on a clock eleven minutes slow was 04:36, and 07:10 was 07:21."""
    folded = met()
    (clock,) = folded.clocks
    assert (clock.device, clock.offset_s, len(clock.entries)) == ("phone-b", SLOW, 2)
    times = [line.settled.fact.earliest for line in folded.piece(SHELL).history]
    assert times[1:] == [at("04:20"), at("04:20"), at("04:36"), at("05:02"), at("05:20"),
                         at("07:21")]  # fmt: skip


def test_one_question_names_both_people() -> None:
    """What does not fit is asked once, of both, and says what counts until then."""
    (question,) = met().questions
    assert question.item == SHELL
    assert question.people == ("201", "204")
    assert question.finding.message == "ledger.ask.disagree_held"
    assert question.finding.value("stage") == "to-wash"
    assert question.finding.value("causes") == "battery-smoke"
    assert question.finding.value("deciders") == "safety-officer"


def test_what_the_hold_refuses_says_why() -> None:
    """The wash, the hanging and the dry check changed nothing."""
    effects = {line.settled.fact.kind: line.effect for line in met().piece(SHELL).history}
    assert effects[K.PUT_IN_WASHER] is Effect.REFUSED
    assert effects[K.HUNG] is Effect.REFUSED
    assert effects[K.TOUCH_CHECKED] is Effect.REFUSED
    assert effects[K.LOAD_FAILED] is Effect.NOTED


def test_the_stopped_load_names_its_other_pieces() -> None:
    """Whoever starts W-9 again sees all that was in it, also what should not have been."""
    assert set(met().load(W9).pieces) == {SHELL, *OTHERS}


@pytest.mark.parametrize("other", OTHERS)
def test_the_other_pieces_wait_for_a_wash_again(other: str) -> None:
    """A load that stopped has washed nothing."""
    state = met().piece(component(other.partition(":")[2])).state
    assert (state.stage, state.open_holds) == (CareStage.TO_WASH, ())
