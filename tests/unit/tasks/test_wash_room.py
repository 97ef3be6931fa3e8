"""Gear goes through the wash room step by step, and no step is skipped."""

from collections.abc import Callable

import pytest
from tests.unit.tasks.memory_book import (
    COAT,
    LINER,
    NOON,
    act,
    book,
    coat,
    last_about,
    state_of,
)

from sootline.core.basis import BadInputError
from sootline.core.gear import Assembly, CareStage, Custody, Element
from sootline.core.ledger import EntryKind
from sootline.core.rebuild import AfterWashCheck, Built, Next, Verdict
from sootline.core.rulebook.contaminants import Level
from sootline.tasks.after_wash_check import hang_up, record_build, record_check
from sootline.tasks.recording import Book, RefusedError
from sootline.tasks.wash_room import (
    begin_load,
    end_load,
    fail_load,
    hang,
    take_down,
    wash_by_hand,
)

SOILED = coat(custody=Custody.WASH_ROOM, stage=CareStage.TO_WASH)
CHECK = AfterWashCheck(component=COAT, by="118", at=NOON)


def _verdict(after: Next = Next.BACK) -> Verdict:
    return Verdict(component=COAT, next=after, to_feel=(), reasons=())


def _start(made: Book, load: str = "W-9", *, minute: int = 1) -> object:
    step = act(f"start-{load}", minute=minute)
    return begin_load(made, step, load, [COAT], machine="M1", by="118", level=Level.ADVANCED)


def test_from_the_drum_to_the_hook() -> None:
    """Started, ended, hung, taken down, felt, put together, hung up: every step by an entry."""
    made = book(SOILED)
    _start(made)
    end_load(made, act("b", minute=2), "W-9", by="118")
    hang(made, act("c", minute=3), [COAT], by="118", place="rack 3")
    take_down(made, act("d", minute=4), [COAT], by="118")
    record_check(made, act("e", minute=5), CHECK, _verdict())
    built = Built(element=Element.COAT, parts=(COAT,))
    record_build(made, act("f", minute=6), built, by="118", assembly=Assembly.ASSEMBLED)

    hang_up(made, act("g", minute=7), [COAT], by="118", place="hook 118")

    state = state_of(made)
    assert (state.stage, state.custody, state.place) == (
        CareStage.CHECKED, Custody.HOOK, "hook 118",
    )  # fmt: skip


def test_a_load_that_stopped() -> None:
    """All its pieces still need washing, under a new number."""
    made = book(SOILED)
    _start(made)

    fail_load(made, act("b", minute=2), "W-9", by="118", said="power cut")

    assert state_of(made).stage is CareStage.TO_WASH
    _start(made, "W-10", minute=3)
    assert state_of(made).stage is CareStage.IN_WASHER


def test_a_number_is_used_once() -> None:
    """A load never takes another load's number."""
    made = book(SOILED)
    _start(made)
    fail_load(made, act("b", minute=2), "W-9", by="118", said="power cut")

    with pytest.raises(BadInputError) as raised:
        begin_load(
            made, act("x", minute=3), "W-9", [COAT], machine="M1", by="118", level=Level.ADVANCED
        )

    assert raised.value.faults[0].message == "tasks.load.number_used"


def test_a_load_nobody_started() -> None:
    """It cannot end."""
    with pytest.raises(BadInputError) as raised:
        end_load(book(), act("b"), "W-9", by="118")

    assert raised.value.faults[0].message == "tasks.load.not_started"


def test_a_load_ends_once() -> None:
    """What ended does not stop afterwards."""
    made = book(SOILED)
    _start(made)
    end_load(made, act("b", minute=2), "W-9", by="118", said="")

    with pytest.raises(BadInputError) as raised:
        fail_load(made, act("c", minute=3), "W-9", by="118", said="power cut")

    assert raised.value.faults[0].message == "tasks.load.over"


def test_nothing_dirty_is_hung() -> None:
    """Only what is washed hangs; nothing is written."""
    made = book(SOILED)
    end = made.ledger.head()

    with pytest.raises(RefusedError):
        hang(made, act("a"), [COAT], by="118", place="rack 3")

    assert made.ledger.head() == end


def test_washing_by_hand() -> None:
    """A named person washes it."""
    made = book(SOILED)

    wash_by_hand(made, act("a"), [COAT], by="118", level=Level.ROUTINE)

    assert state_of(made).stage is CareStage.WASHED


def test_no_pieces() -> None:
    """There must be something to hang."""
    with pytest.raises(BadInputError):
        hang(book(), act("a"), [], by="118", place="rack 3")


def test_a_check_that_leaves_something_open() -> None:
    """What is damp somewhere is noted, and the component stays to be checked."""
    made = book(coat(custody=Custody.WASH_ROOM, stage=CareStage.TO_CHECK))

    record_check(made, act("a"), CHECK, _verdict(Next.DRY_ON))

    assert state_of(made).stage is CareStage.TO_CHECK
    assert last_about(made).read_header().kind is EntryKind.NOTED


def test_a_check_of_what_is_still_wet() -> None:
    """Nothing that is not to be checked gets checked."""
    made = book(coat(custody=Custody.WASH_ROOM, stage=CareStage.WASHED))

    with pytest.raises(RefusedError):
        record_check(made, act("a"), CHECK, _verdict())


def test_parts_that_do_not_belong_together() -> None:
    """They are recorded as put together, and as a mismatch; nothing of it goes on the hook."""
    made = book(coat(), coat(LINER))
    built = Built(element=Element.COAT, parts=(COAT, LINER))

    record_build(made, act("a", minute=1), built, by="118", assembly=Assembly.MISMATCHED)

    assert state_of(made, LINER).assembly is Assembly.MISMATCHED
    with pytest.raises(RefusedError):
        hang_up(made, act("b", minute=2), [COAT], by="118", place="hook")


STEPS: list[tuple[CareStage, Callable[[Book], object]]] = [
    (CareStage.TO_WASH, _start),
    (CareStage.TO_WASH, lambda made: wash_by_hand(
        made, act("k"), [COAT], by="118", level=Level.ROUTINE)),
    (CareStage.TO_CHECK, lambda made: record_check(made, act("k"), CHECK, _verdict())),
    (CareStage.CHECKED, lambda made: record_build(
        made, act("k"), Built(element=Element.COAT, parts=(COAT,)), by="118",
        assembly=Assembly.ASSEMBLED)),
    (CareStage.CHECKED, lambda made: hang_up(made, act("k"), [COAT], by="118", place="hook")),
]  # fmt: skip


@pytest.mark.parametrize(("stage", "do"), STEPS)
def test_lost_replies(stage: CareStage, do: Callable[[Book], object]) -> None:
    """Whatever was asked for under a key is done once."""
    made = book(coat(custody=Custody.WASH_ROOM, stage=stage))
    do(made)
    end = made.ledger.head()

    again = do(made)

    assert made.ledger.head() == end
    assert all(one.repeated for one in again)  # type: ignore[attr-defined]


def test_the_end_of_a_load_asked_for_again() -> None:
    """A load ends once, however often its end is reported under one key."""
    made = book(SOILED)
    _start(made)
    for _ in range(2):
        (done,) = end_load(made, act("b", minute=2), "W-9", by="118")

    assert done.repeated
