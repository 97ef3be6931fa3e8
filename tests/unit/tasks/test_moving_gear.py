"""Gear goes out, comes back, changes hands and ends: refused where its state forbids it."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from tests.unit.tasks.memory_book import COAT, LINER, MAREN, act, book, coat, state_of

from sootline.core.basis import (
    BadInputError,
    Bearing,
    ComponentId,
    Confidence,
    EditionId,
    Ground,
    MemberId,
    RuleId,
    finding,
)
from sootline.core.gear import CareStage, Custody, Life
from sootline.core.ledger import ItemKind, OvertakenError, item
from sootline.core.riding import ExchangeAnswer, ExchangeFacts
from sootline.tasks.exchange_gear import exchange_gear
from sootline.tasks.hand_out_gear import issue, lend, return_soiled, return_to_rack, take_back
from sootline.tasks.recording import Book, RefusedError
from sootline.tasks.register_gear import register_components
from sootline.tasks.retire_gear import dispose, mark_for_training, retire
from sootline.tasks.secure_member import secure_member
from sootline.tasks.transfer_gear import accept, decline, offer

GROUND = Ground(
    rule=RuleId("exchange"), edition=EditionId("practice"), source="common practice",
    confidence=Confidence.PRACTICE,
)  # fmt: skip
FACTS = ExchangeFacts(member=MAREN, returns=COAT, takes=LINER)
FIRST = finding(Bearing.REQUIRES, "riding.exchange.wash_first", GROUND)


def _answer(*, possible: bool = True, issuable: bool = False) -> ExchangeAnswer:
    forbids = finding(Bearing.FORBIDS, "riding.exchange.out", GROUND)
    return ExchangeAnswer(
        moves=(object(), object()) if possible else (),  # type: ignore[arg-type]
        issuable=issuable, interior=False, months_left=None,
        findings=(FIRST,) if possible else (forbids, FIRST),
    )  # fmt: skip


def _refusals(error: pytest.ExceptionInfo[RefusedError]) -> list[str]:
    return [reason.message for _, reason in error.value.refused]


def test_issue() -> None:
    """An issued piece is with the member."""
    made = book(coat(custody=Custody.SPARE_RACK))

    issue(made, act("a"), [COAT], holder=MAREN)

    assert (state_of(made).custody, state_of(made).holder) == (Custody.MEMBER, MAREN)


def test_issue_is_all_or_none() -> None:
    """One piece that is not checked keeps all of them where they are."""
    made = book(coat(), coat(LINER, stage=CareStage.TO_WASH))
    end = made.ledger.head()

    with pytest.raises(RefusedError) as raised:
        issue(made, act("a"), [COAT, LINER], holder=MAREN)

    assert [piece for piece, _ in raised.value.refused] == [LINER]
    assert _refusals(raised) == ["gear.refused.not_checked"]
    assert made.ledger.head() == end


def test_issue_to_a_stranger() -> None:
    """A member nobody registered gets nothing."""
    with pytest.raises(BadInputError) as raised:
        issue(book(), act("a"), [COAT], holder=MemberId("999"))

    assert raised.value.faults[0].message == "tasks.no_such_member"


def test_nothing_to_issue() -> None:
    """An empty list is refused."""
    with pytest.raises(BadInputError):
        issue(book(), act("a"), [], holder=MAREN)


ROUNDS: list[Callable[[Book, str], object]] = [
    lambda made, key: return_soiled(made, act(key), [COAT], by="200"),
    lambda made, key: return_to_rack(made, act(key), [COAT], by="200", place="rack"),
    lambda made, key: lend(made, act(key), [COAT], holder="Quillmere", by="200"),
    lambda made, key: retire(made, act(key), COAT, by="200", reason="worn out"),
    lambda made, key: mark_for_training(made, act(key), COAT, by="200", reason="no date"),
    lambda made, key: offer(made, act(key), COAT, to="3", by="200"),
    lambda made, key: exchange_gear(made, act(key), FACTS, _answer(), by="200"),
    lambda made, key: secure_member(made, act(key), MAREN, by="200", reason="injury"),
]


@pytest.mark.parametrize("do", ROUNDS)
def test_lost_replies(do: Callable[[Book, str], object]) -> None:
    """Whatever was asked for under a key is done once, however often it is asked."""
    made = book(coat(), coat(LINER))
    first = do(made, "k")
    end = made.ledger.head()

    again = do(made, "k")

    assert made.ledger.head() == end
    assert [one.entry for one in again] == [one.entry for one in first]  # type: ignore[attr-defined]


def test_returning() -> None:
    """Soiled gear is to be washed; checked gear goes to the rack."""
    made = book(coat(), coat(LINER))

    return_soiled(made, act("a"), [COAT], by="200")
    return_to_rack(made, act("b"), [LINER], by="200", place="rack 2")

    assert state_of(made).stage is CareStage.TO_WASH
    assert (state_of(made, LINER).custody, state_of(made, LINER).place) == (
        Custody.SPARE_RACK, "rack 2",
    )  # fmt: skip


def test_a_loan_and_its_return() -> None:
    """What comes home is looked over first: nobody knows where it was."""
    made = book()
    lend(made, act("a", minute=1), [COAT], holder="Quillmere", by="200")
    assert state_of(made).custody is Custody.LOAN

    take_back(made, act("b", minute=2), [COAT], by="200")

    assert state_of(made).stage is CareStage.TO_CHECK


def test_an_exchange_moves_both() -> None:
    """One piece comes in soiled, the other goes out: two entries of one act."""
    made = book(coat(holder=MAREN, custody=Custody.MEMBER), coat(LINER))

    done = exchange_gear(made, act("a"), FACTS, _answer(), by="200")

    assert len(done) == 2
    assert (state_of(made).stage, state_of(made, LINER).holder) == (CareStage.TO_WASH, MAREN)


def test_an_exchange_that_needs_no_wash() -> None:
    """A piece nobody wore since its wash goes to the rack."""
    made = book(coat(), coat(LINER))

    exchange_gear(made, act("a"), FACTS, _answer(issuable=True), by="200", place="rack")

    assert state_of(made).custody is Custody.SPARE_RACK


@pytest.mark.parametrize(
    ("answer", "place", "said"),
    [
        (_answer(possible=False), "", ["riding.exchange.out"]),
        (_answer(), "rack", ["riding.exchange.wash_first"]),
    ],
)
def test_an_exchange_that_may_not_be(answer: ExchangeAnswer, place: str, said: list[str]) -> None:
    """What the check forbids moves neither piece."""
    made = book(coat(), coat(LINER))
    end = made.ledger.head()

    with pytest.raises(RefusedError) as raised:
        exchange_gear(made, act("a"), FACTS, answer, by="200", place=place)

    assert (_refusals(raised), made.ledger.head()) == (said, end)


def test_an_exchange_of_a_soiled_piece() -> None:
    """The piece taken must be checked, whatever the answer said before."""
    made = book(coat(), coat(LINER, stage=CareStage.WORN))

    with pytest.raises(RefusedError):
        exchange_gear(made, act("a"), FACTS, _answer(), by="200")


def test_a_transfer_needs_acceptance() -> None:
    """Offered gear stays until somebody over there takes it."""
    made = book()
    offer(made, act("a", minute=1), COAT, to="3", by="200")
    assert (made.known(COAT)[0].station, made.known(COAT)[0].offered_to) == ("2", "3")

    accept(made, act("b", minute=2), COAT, station="3", by="300")

    assert (made.known(COAT)[0].station, made.known(COAT)[0].offered_to) == ("3", None)


def test_a_declined_transfer() -> None:
    """It stays where it was, and the offer is over."""
    made = book()
    offer(made, act("a", minute=1), COAT, to="3", by="200")

    decline(made, act("b", minute=2), COAT, by="300", said="no room")

    assert (made.known(COAT)[0].station, made.known(COAT)[0].offered_to) == ("2", None)


@pytest.mark.parametrize(
    ("do", "message"),
    [
        (lambda m: offer(m, act("x"), COAT, to="2", by="200"), "tasks.transfer.theirs"),
        (
            lambda m: accept(m, act("x"), COAT, station="3", by="300"),
            "tasks.transfer.not_offered",
        ),
        (lambda m: decline(m, act("x"), COAT, by="3", said="no"), "tasks.transfer.not_offered"),
    ],
)
def test_transfers_that_cannot_be(do: Callable[[Book], object], message: str) -> None:
    """Nothing is offered to whom it belongs, nor accepted or declined without an offer."""
    with pytest.raises(BadInputError) as raised:
        do(book())

    assert raised.value.faults[0].message == message


def test_an_offer_that_stands() -> None:
    """Nothing is offered twice."""
    made = book()
    offer(made, act("a", minute=1), COAT, to="3", by="200")

    with pytest.raises(BadInputError) as raised:
        offer(made, act("b", minute=2), COAT, to="4", by="200")

    assert raised.value.faults[0].message == "tasks.transfer.offered_already"


def test_answers_to_an_offer_asked_for_again() -> None:
    """Accepting or declining under the same key is done once."""
    made = book()
    offer(made, act("a", minute=1), COAT, to="3", by="200")
    for _ in range(2):
        declined = decline(made, act("b", minute=2), COAT, by="300", said="no room")
    offer(made, act("c", minute=3), COAT, to="3", by="200")
    for _ in range(2):
        accepted = accept(made, act("d", minute=4), COAT, station="3", by="300")

    assert all(one.repeated for one in (*declined, *accepted))


def test_everything_of_a_member_is_secured() -> None:
    """Owned, held, soiled or borrowed: all is locked in one act; what is gone is not."""
    hood = ComponentId("0612")
    made = book(coat(), coat(LINER, stage=CareStage.WORN), coat(hood, life=Life.DISPOSED))
    spare = ComponentId("S-1")
    register_spare(made, spare)

    secure_member(made, act("a", minute=1), MAREN, by="500", reason="injury", also=[spare])

    custodies = [state_of(made, piece).custody for piece in (COAT, LINER, spare, hood)]
    assert custodies == [Custody.EVIDENCE] * 3 + [Custody.HOOK]
    life = made.register.thing(item(ItemKind.MEMBER, MAREN))
    assert life is not None
    assert life.facts["member-locked"]["pieces"] == [COAT, LINER, spare]  # type: ignore[index,call-overload]


def register_spare(made: Book, piece: ComponentId) -> None:
    """Register one more coat that is nobody's."""
    register_components(made, act("s", minute=-59), [replace(coat(piece), owner=None)])


def test_a_member_with_nothing() -> None:
    """There must be something to secure."""
    with pytest.raises(BadInputError) as raised:
        secure_member(book(), act("a"), MemberId("120"), by="500", reason="injury")

    assert raised.value.faults[0].message == "tasks.secure.nothing"


def test_the_end_of_a_piece() -> None:
    """Retired, then made unusable before a witness."""
    made = book()
    retire(made, act("a", minute=1), COAT, by="200", reason="ten years")

    dispose(made, act("b", minute=2), COAT, by="200", method="cut up", witness="300")

    assert state_of(made).life is Life.DISPOSED
    assert made.register.components() == ()


def test_nobody_witnesses_himself() -> None:
    """The witness is somebody else."""
    with pytest.raises(BadInputError) as raised:
        dispose(book(), act("a"), COAT, by="200", method="cut", witness=" 200 ")

    assert raised.value.faults[0].message == "tasks.same_witness"


def test_what_is_in_use_is_not_disposed_of() -> None:
    """It is retired first."""
    with pytest.raises(RefusedError) as raised:
        dispose(book(), act("a"), COAT, by="200", method="cut", witness="300")

    assert _refusals(raised) == ["gear.refused.not_retired"]


def test_training_only() -> None:
    """The mark stays with the piece."""
    made = book()

    mark_for_training(made, act("a"), COAT, by="200", reason="edition too old")

    assert state_of(made).life is Life.TRAINING_ONLY


def test_an_act_on_what_somebody_just_changed(monkeypatch: pytest.MonkeyPatch) -> None:
    """Between looking and writing somebody else wrote: the asker is told, nothing is kept."""
    made = book()
    seen = made.known(COAT)
    monkeypatch.setattr(type(made), "known", lambda _self, *_pieces: seen)
    retire(made, act("a", minute=1), COAT, by="200", reason="torn")

    with pytest.raises(OvertakenError):
        retire(made, act("b", minute=2), COAT, by="201", reason="torn")
