"""Folding: times, overlaps, loads, washes, questions, as of and known at."""

import datetime as dt

import pytest
from tests.ledger_cases import SHELL, Book, at, draft, load, recorded, span

from sootline.core.gear import Assembly, CareStage, Custody, Life
from sootline.core.gear.records import Deed
from sootline.core.ledger import Draft, EntryKind, component
from sootline.core.ledger.folding import fold
from sootline.core.ledger.lives import Effect, PieceLife

K = EntryKind
READY = {"custody": "hook", "stage": "checked", "assembly": "assembled", "life": "in-service"}
TO_CHECK = {**READY, "stage": "to-check", "custody": "wash-room"}
START = draft(K.REGISTERED, "00:10", state=READY)


def held(when: str, *, device: str = "phone-a") -> Draft:
    """Return a hold for powder."""
    return draft(
        K.HOLD_OPENED, when, device=device, cause="powder", question="care.ask.powder",
        decider="safety-officer", deputy="chief",
    )  # fmt: skip


def life(*drafts: Draft, as_of: dt.datetime | None = None) -> PieceLife:
    """Return the shell's life after these entries."""
    return fold(recorded(drafts), as_of=as_of).piece(SHELL)


def test_gear_nobody_registered_waits_for_a_check() -> None:
    """Nobody has said that it may be used."""
    state = life(draft(K.NOTED, "04:00", said="found behind the lockers")).state
    assert (state.stage, state.assembly) == (CareStage.TO_CHECK, Assembly.UNKNOWN)


def test_a_registration_without_a_state_says_nothing_of_it() -> None:
    """The register may hold facts only."""
    told = life(draft(K.REGISTERED, "04:00", kind="coat-shell", state={"stage": "polished"}))
    assert told.state.stage is CareStage.TO_CHECK
    assert told.register["kind"] == "coat-shell"
    assert life(draft(K.REGISTERED, "04:00")).state.stage is CareStage.TO_CHECK


def test_a_second_registration_lowers_nothing() -> None:
    """Whoever registers a worn coat anew has not checked it; facts are taken."""
    again = draft(K.REGISTERED, "05:00", state=READY, size="44R")
    told = life(START, draft(K.WORN, "04:00", member="201"), again)
    assert (told.state.stage, told.history[-1].effect) == (CareStage.WORN, Effect.NOTED)
    assert told.register["size"] == "44R"


def test_a_registration_ends_no_hold() -> None:
    """What was held before it was registered is still held."""
    told = life(held("00:05"), START)
    assert [hold.cause for hold in told.state.open_holds] == ["powder"]


def test_the_order_of_things_is_when_they_happened() -> None:
    """A late entry folds where it belongs."""
    told = life(START, draft(K.RETURNED_SOILED, "05:00"), draft(K.WORN, "04:00", member="201"))
    assert told.state.stage is CareStage.TO_WASH
    assert [line.seq for line in told.history] == [1, 3, 2]


def test_at_the_same_moment_the_record_decides() -> None:
    """Two entries of one minute count in the order in which they were written."""
    told = life(START, draft(K.BAGGED, "05:00"), draft(K.SORTED, "05:00"))
    assert told.state.custody is Custody.WASH_ROOM
    assert told.questions == ()


def test_overlapping_spans_of_two_devices_end_in_the_safest_state() -> None:
    """Found and not seen in one hour: it counts as not seen, and both people are asked."""
    told = life(
        draft(K.REGISTERED, "00:10", state={**READY, "custody": "not-seen"}),
        draft(K.FOUND, span("05:00", "06:00")),
        draft(K.LOST_SIGHT, span("05:30", "06:10"), device="phone-b", actor="204"),
    )
    assert told.state.custody is Custody.NOT_SEEN
    (question,) = told.questions
    assert (question.people, question.entries) == (("201", "204"), (2, 3))


def test_orders_that_all_end_alike_ask_nothing() -> None:
    """Checked and bagged in one hour: bagged in whatever order; the check may have counted."""
    told = life(
        draft(K.REGISTERED, "00:10", state=TO_CHECK),
        draft(K.TOUCH_CHECKED, span("05:00", "06:00"), by="118"),
        draft(K.BAGGED, span("05:30", "06:10"), device="phone-b", actor="204"),
    )
    assert (told.state.stage, told.state.custody) == (CareStage.TO_WASH, Custody.BAG)
    assert told.questions == ()
    assert told.history[1].effect is Effect.DEPENDS


def test_spans_that_touch_do_not_overlap() -> None:
    """One ends when the other begins: the order is certain."""
    told = life(
        START,
        draft(K.BAGGED, span("05:00", "06:00")),
        draft(K.SORTED, span("06:00", "07:00"), device="phone-b", actor="204"),
    )
    assert (told.state.custody, told.questions) == (Custody.WASH_ROOM, ())


def test_what_one_device_wrote_of_one_span_is_in_its_order() -> None:
    """A sheet written up for a whole morning, line by line."""
    morning = span("05:00", "12:00")
    told = life(START, draft(K.BAGGED, morning), draft(K.SORTED, morning),
                draft(K.PUT_IN_WASHER, morning, load="W-1"))  # fmt: skip
    assert (told.state.stage, told.questions) == (CareStage.IN_WASHER, ())


def test_overlap_without_a_difference_asks_nothing() -> None:
    """Two notes in the same hour are two notes."""
    told = life(START, draft(K.NOTED, span("05:00", "06:00"), said="x"),
                draft(K.BAGGED, span("05:10", "06:00"), device="phone-b"))  # fmt: skip
    assert told.questions == ()


def test_a_point_inside_a_span_is_not_ordered_by_it() -> None:
    """Washed some time yesterday, worn at two: it counts as worn, in whatever order written."""
    day = span("00:20", "23:00")
    washed = draft(K.WASHED_BY_HAND, day, by="131", device="paper")
    worn = draft(K.WORN, "14:00", member="201")
    soiled = draft(K.REGISTERED, "00:10", state={**TO_CHECK, "stage": "to-wash"})
    assert life(soiled, washed, worn).state.stage is CareStage.WORN
    assert life(soiled, worn, washed).state.stage is CareStage.WORN


def test_one_devices_order_holds_inside_an_uncertain_hour() -> None:
    """Bagged, then sorted, on one sheet; a note of somebody else's in the same hours."""
    hour = span("05:00", "06:00")
    told = life(
        START,
        draft(K.NOTED, span("04:00", "05:30"), device="phone-b", actor="204", said="x"),
        draft(K.BAGGED, hour, device="sheet"),
        draft(K.SORTED, hour, device="sheet"),
    )
    assert (told.state.custody, told.questions) == (Custody.WASH_ROOM, ())


def test_spans_that_touch_inside_an_uncertain_hour_are_in_order() -> None:
    """Bagged until five, sorted from five on; whatever else is said of the whole time."""
    told = life(
        START,
        draft(K.NOTED, span("04:00", "06:00"), device="phone-c", said="x"),
        draft(K.BAGGED, span("04:30", "05:00")),
        draft(K.SORTED, span("05:00", "05:30"), device="phone-b"),
    )
    assert (told.state.custody, told.questions) == (Custody.WASH_ROOM, ())


def test_a_note_is_never_asked_about() -> None:
    """Only what changes a state can contradict."""
    hour = span("05:00", "06:00")
    told = life(
        draft(K.REGISTERED, "00:10", state={**READY, "custody": "not-seen"}),
        draft(K.FOUND, hour),
        draft(K.LOST_SIGHT, hour, device="phone-b", actor="204"),
        draft(K.NOTED, hour, device="phone-c", actor="118", said="x"),
    )
    (question,) = told.questions
    assert question.entries == (2, 3)


def test_very_many_overlaps_count_every_state_on_the_way() -> None:
    """Nobody can follow every order of thirty entries; the state that asks for most stands."""
    acts = (K.BAGGED, K.SORTED, K.LOST_SIGHT, K.FOUND, K.RETURNED_SOILED)
    many = [
        draft(acts[n % 5], span("05:00", f"06:{n:02}"), device=f"phone-{n}", actor=str(n))
        for n in range(30)
    ]
    told = life(START, *many)
    assert (told.state.stage, told.state.custody) == (CareStage.TO_WASH, Custody.NOT_SEEN)
    assert len(told.questions) == 1
    assert {line.effect for line in told.history[1:]} == {Effect.DEPENDS}


def test_very_many_overlaps_with_a_hold_keep_it() -> None:
    """A hold opened among them is open, what was worn was worn on hold, and notes are notes."""
    hour = span("05:00", "06:00")
    many = [draft(K.BAGGED, hour, device=f"phone-{n}", actor=str(n), thing=SHELL) for n in range(9)]
    told = life(
        START,
        *many,
        draft(K.HOLD_OPENED, hour, device="b", cause="powder", question="care.ask.powder",
              decider="safety-officer", deputy="chief"),
        draft(K.WORN, hour, device="c", member="201"),
        draft(K.NOTED, hour, device="d", said="x"),
        draft(K.REGISTERED, hour, device="e", state={**READY, "life": "retired"}),
    )  # fmt: skip
    assert [hold.cause for hold in told.state.open_holds] == ["powder"]
    assert (told.state.life, told.exposures[0].on_hold) == (Life.RETIRED, True)
    effects = {line.settled.fact.kind: line.effect for line in told.history}
    assert (effects[K.NOTED], effects[K.WORN]) == (Effect.NOTED, Effect.DEPENDS)


def test_points_within_an_uncertain_span_keep_their_own_order() -> None:
    """Two entries of one minute are ordered also where a third is not."""
    told = life(
        START,
        draft(K.NOTED, span("04:00", "06:00"), device="paper", said="x"),
        draft(K.BAGGED, "05:00"),
        draft(K.SORTED, "05:00"),
    )
    assert (told.state.custody, told.questions) == (Custody.WASH_ROOM, ())


def test_a_load_counts_for_every_piece_in_it() -> None:
    """One entry for the load ends it for all its pieces, with its level."""
    other = component("0413")
    drafts = [START, draft(K.REGISTERED, "00:10", thing=other, state=READY)]
    for thing in (SHELL, other):
        drafts += [
            draft(K.BAGGED, "04:00", thing=thing),
            draft(K.SORTED, "04:10", thing=thing),
            draft(K.PUT_IN_WASHER, "04:20", thing=thing, load="W-1"),
        ]
    drafts += [
        draft(K.LOAD_STARTED, "04:21", thing=load("W-1"), level="advanced"),
        draft(K.LOAD_ENDED, "05:20", thing=load("W-1"), by="131"),
    ]
    folded = fold(recorded(drafts))
    for thing in (SHELL, other):
        piece = folded.piece(thing)
        assert (piece.state.stage, piece.washes) == (CareStage.WASHED, 1)
        assert [record.deed for record in piece.records] == [Deed.ADVANCED_CLEANING]
    assert folded.load(load("W-1")).pieces == (SHELL, other)


def test_another_loads_end_ends_nothing() -> None:
    """Only the load a piece is in can wash it."""
    told = life(
        START,
        draft(K.BAGGED, "04:00"),
        draft(K.SORTED, "04:10"),
        draft(K.PUT_IN_WASHER, "04:20", load="W-1"),
        draft(K.LOAD_FAILED, "04:40", thing=load("W-1")),
        draft(K.PUT_IN_WASHER, "05:00", load="W-2"),
        draft(K.LOAD_ENDED, "05:30", thing=load("W-1")),
    )
    assert (told.state.stage, told.washes, told.questions) == (CareStage.IN_WASHER, 0, ())


def test_a_hold_opens_while_the_drum_turns() -> None:
    """The load still ends; the hold stays, and nothing hangs it up."""
    told = life(
        draft(K.REGISTERED, "00:10", state={**TO_CHECK, "stage": "to-wash"}),
        draft(K.PUT_IN_WASHER, "04:00", load="W-1"),
        held("04:30"),
        draft(K.LOAD_ENDED, "05:00", thing=load("W-1")),
        draft(K.HUNG, "05:10"),
    )
    assert (told.state.stage, len(told.state.open_holds)) == (CareStage.WASHED, 1)
    folded = fold(recorded([draft(K.LOAD_ENDED, "05:00", thing=load(n)) for n in ("W-1", "W-2")]))
    assert folded.load(load("W-2")).pieces == ()


def test_a_hold_that_may_have_been_released_is_open() -> None:
    """Opened again and released in one hour, by two devices: it counts as open."""
    release = draft(
        K.HOLD_RELEASED, span("04:00", "05:00"), device="phone-b", actor="so", cause="powder",
        by="so", office="safety-officer",
    )  # fmt: skip
    again = draft(
        K.HOLD_OPENED, span("04:10", "05:00"), cause="powder", question="care.ask.powder",
        decider="safety-officer", deputy="chief",
    )  # fmt: skip
    told = life(START, held("03:00"), release, again)
    assert [hold.open for hold in told.state.holds] == [True]
    assert len(told.questions) == 1


def test_worn_within_an_uncertain_hour_may_have_been_on_hold() -> None:
    """It is told as worn on hold: unknown lowers nothing."""
    worn = draft(K.WORN, span("02:30", "04:00"), member="201", device="phone-b")
    told = life(START, held("03:00"), worn)
    assert [one.on_hold for one in told.exposures] == [True]


def test_washes_before_the_record_are_added_where_they_are_known() -> None:
    """A count nobody knows stays unknown."""
    washed = (draft(K.WASH_WRITTEN_UP, "05:00", level="advanced", by="contractor"),)
    assert life(draft(K.REGISTERED, "00:10", wash_count=7), *washed).wash_count == 8
    assert life(draft(K.REGISTERED, "00:10"), *washed).wash_count is None


def test_deeds_have_the_date_that_is_written_out() -> None:
    """A record of 2019 that only says the month; one that says nonsense has its own day."""
    told = life(
        START,
        draft(K.WASH_WRITTEN_UP, "05:00", level="advanced", by="x", on="2019-05"),
        draft(K.INSPECTED_ADVANCED, "06:00", by="y", on="last spring"),
        draft(K.WASH_WRITTEN_UP, "07:00", level="routine", by="x"),
    )
    first, second = told.records
    assert (str(first.on), str(second.on)) == ("2019-05", "2026-03-01")


def test_worn_on_hold_is_a_fact_without_blame() -> None:
    """The exposure is on record, and that the hold was open then; so is a refused one."""
    told = life(
        START,
        held("03:00"),
        draft(K.WORN, "04:00", member="201", call="c-1"),
        draft(K.EVIDENCE_TAKEN, "05:00", by="inv"),
        draft(K.WORN, "06:00", member="202"),
    )
    assert [(one.member, one.call, one.on_hold) for one in told.exposures] == [
        ("201", "c-1", True),
        ("202", None, True),
    ]
    assert [record.deed for record in told.records] == [Deed.WORN, Deed.WORN]
    assert told.history[-1].effect is Effect.REFUSED


def test_a_hold_for_the_same_cause_twice_is_no_contradiction() -> None:
    """Two people open the same hold: one hold, no question."""
    told = life(
        START,
        held("03:00"),
        held("03:05", device="phone-b"),
    )
    assert (len(told.state.holds), told.questions) == (1, ())


def test_an_erased_hold_still_holds() -> None:
    """What it was about is gone; that it was held is not."""
    book = Book()
    book.add(START, held("03:00"))
    book.erase(2)
    (hold,) = fold(book.entries).piece(SHELL).state.open_holds
    assert (hold.cause, hold.decider, hold.question) == (
        "entry 2", "safety-officer", "ledger.ask.erased_hold",
    )  # fmt: skip


def test_an_erased_release_releases_nothing() -> None:
    """Nobody can show any more who ended the hold."""
    book = Book()
    book.add(
        START,
        held("03:00"),
        draft(K.HOLD_RELEASED, "04:00", cause="powder", by="so", office="safety-officer"),
    )
    assert fold(book.entries).piece(SHELL).state.open_holds == ()
    book.erase(3)
    told = fold(book.entries).piece(SHELL)
    assert (len(told.state.open_holds), len(told.questions)) == (1, 1)


def test_a_question_is_answered_by_name() -> None:
    """After somebody who was there has answered, nothing is asked; the refusal stays told."""
    odd = draft(K.HUNG, "04:00")
    assert [question.entries for question in life(START, odd).questions] == [(2,)]
    answer = draft(K.ANSWERED, "08:00", said="it was another coat", entries=[2])
    told = life(START, odd, answer)
    assert (told.questions, told.history[1].effect) == ((), Effect.REFUSED)
    assert life(START, odd, draft(K.ANSWERED, "08:00", said="?")).questions


def test_one_persons_entry_that_does_not_fit_is_asked_of_that_person() -> None:
    """No second name is drawn in."""
    (question,) = life(START, draft(K.HUNG, "04:00")).questions
    assert (question.finding.message, question.people) == ("ledger.ask.unfitting", ("201",))
    (alone,) = life(draft(K.HUNG, "04:00")).questions
    assert alone.people == ("201",)


def test_as_of_asks_for_an_earlier_state() -> None:
    """What was it at five?"""
    drafts = (START, draft(K.WORN, "04:00", member="201"), draft(K.BAGGED, "06:00"))
    assert life(*drafts, as_of=at("05:00")).state.stage is CareStage.WORN
    assert life(*drafts, as_of=at("03:00")).state.stage is CareStage.CHECKED


def test_as_of_takes_what_may_have_happened_as_maybe() -> None:
    """Bagged between four and six: at five it counts as bagged; checked between: as unchecked."""
    bagged = draft(K.BAGGED, span("04:00", "06:00"))
    assert life(START, bagged, as_of=at("05:00")).state.stage is CareStage.TO_WASH
    unchecked = draft(K.REGISTERED, "00:10", state={**READY, "stage": "to-check"})
    check = draft(K.TOUCH_CHECKED, span("04:00", "06:00"), by="118")
    assert life(unchecked, check, as_of=at("05:00")).state.stage is CareStage.TO_CHECK
    assert life(unchecked, check, as_of=at("06:00")).state.stage is CareStage.CHECKED


def test_known_at_asks_what_the_record_said_then() -> None:
    """Before the late entry came in, the coat was on the hook."""
    book = Book()
    book.add(START)
    book.now = at("12:00")
    book.add(draft(K.WORN, "04:00", member="201"))
    by_time = fold(book.entries, known_at=at("09:00")).piece(SHELL)
    by_place = fold(book.entries, known_at=1).piece(SHELL)
    assert by_time == by_place
    assert by_place.state.stage is CareStage.CHECKED
    assert fold(book.entries, known_at=at("12:00")).piece(SHELL).state.stage is CareStage.WORN


def test_an_entry_with_a_doubtful_clock_folds_where_it_was_recorded() -> None:
    """A server whose clock jumped to 2036 and one set back a day change no order."""
    book = Book()
    book.add(START, draft(K.WORN, "04:00", member="201"))
    book.now = at("08:00").replace(year=2036)
    far = span("04:00")
    late = type(far)(earliest=book.now, latest=book.now, clock=far.clock)
    book.add(draft(K.BAGGED, late))
    book.now = at("08:00") - dt.timedelta(days=1)
    early = type(far)(earliest=book.now, latest=book.now, clock=far.clock)
    book.add(draft(K.SORTED, early))
    told = fold(book.entries)
    piece = told.piece(SHELL)
    assert [line.seq for line in piece.history] == [1, 2, 3, 4]
    assert (piece.state.stage, piece.state.custody) == (CareStage.TO_WASH, Custody.WASH_ROOM)
    assert [(clock.offset_s, clock.entries) for clock in told.clocks] == [(None, (3, 4))]
    assert fold(book.entries, known_at=at("08:00")).piece(SHELL).history == piece.history


def test_what_is_stated_for_later_folds_when_it_was_written_down() -> None:
    """A phone half an hour fast cannot put its entry behind the next one."""
    book = Book()
    book.add(START, draft(K.BAGGED, "08:30"))
    book.now = at("08:10")
    book.add(draft(K.SORTED, "08:10"))
    assert [line.seq for line in fold(book.entries).piece(SHELL).history] == [1, 2, 3]


def test_the_first_entry_of_all_may_have_a_doubtful_clock() -> None:
    """There is nothing to compare it with but another machine."""
    book = Book()
    book.add(START, seen=at("08:00") - dt.timedelta(days=3))
    assert fold(book.entries).piece(SHELL).state.stage is CareStage.CHECKED


@pytest.mark.parametrize(
    ("kind", "said", "stage", "custody"),
    [
        (K.RETURNED, {}, CareStage.TO_WASH, Custody.WASH_ROOM),
        (K.EXCHANGED, {"holder": "202", "with": "0413"}, CareStage.CHECKED, Custody.MEMBER),
        (K.LENT, {"holder": "d-17"}, CareStage.CHECKED, Custody.LOAN),
    ],
)
def test_other_acts_change_the_state_through_its_events(
    kind: EntryKind, said: dict[str, str], stage: CareStage, custody: Custody
) -> None:
    """Handing in, swapping and lending follow the one table."""
    state = life(START, draft(kind, "04:00", payload_of=said)).state
    assert (state.stage, state.custody) == (stage, custody)


def test_a_life_ends_with_a_witness() -> None:
    """Retired, then disposed of."""
    told = life(
        START,
        draft(K.RETIRED, "04:00", by="chief", reason="ten years"),
        draft(K.DISPOSED, "05:00", by="chief", method="cut up", witness="118"),
    )
    assert told.state.life is Life.DISPOSED
    assert told.last_seq == 3


def test_nothing_is_known_of_what_was_never_written_about() -> None:
    """A piece or a load that no entry names."""
    folded = fold(recorded([START]))
    with pytest.raises(KeyError):
        folded.piece(component("9999"))
    with pytest.raises(KeyError):
        folded.load(load("W-1"))
