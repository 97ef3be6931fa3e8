"""What an officer expects of one coat shell's life on record (Tarn Hollow, invented).

Issued to 201, worn at a fire, rinsed on scene, bagged, washed in W-12, hung, felt over by 118, put
together, back on the hook; then worn again while on hold, lent, retired and disposed of with a
witness. Common practice, no published source.
"""

import datetime as dt

from tests.ledger_cases import DAY, SHELL, Book, load

from sootline.core.basis import DeviceId, MemberId
from sootline.core.gear import CareStage, Custody, Life
from sootline.core.gear.records import Deed
from sootline.core.ledger import (
    ClockSource,
    Draft,
    EntryKind,
    Established,
    ItemKind,
    Occurred,
    item,
    verify_chain,
    write_payload,
)
from sootline.core.ledger.folding import fold
from sootline.core.ledger.lives import PieceLife

K = EntryKind
CALL = item(ItemKind.CALL, "c-31")
READY = {"custody": "spare-rack", "stage": "checked", "assembly": "assembled", "life": "reserve"}
# Day, kind, what is said, and about what.
LIFE: tuple[tuple[int, EntryKind, dict[str, object], str], ...] = (
    (0, K.REGISTERED, {"kind": "coat-shell", "state": READY, "wash_count": 0}, SHELL),
    (0, K.LABEL_READ, {"by": "131", "made": "2025-11", "serial": "771"}, SHELL),
    (1, K.ISSUED, {"holder": "201", "condition": "new"}, SHELL),
    (9, K.CALL_RECORDED, {"title": "warehouse fire"}, CALL),
    (9, K.WORN, {"member": "201", "call": "c-31"}, SHELL),
    (9, K.REDUCED_ON_SCENE, {"done": "part", "reason": "second call"}, SHELL),
    (9, K.BAGGED, {"bag": "B7"}, SHELL),
    (10, K.DECIDED, {"fate": "wash", "level": "advanced"}, SHELL),
    (10, K.SORTED, {"by": "131"}, SHELL),
    (10, K.PUT_IN_WASHER, {"load": "W-12", "by": "131"}, SHELL),
    (10, K.LOAD_STARTED, {"machine": "washer 1", "level": "advanced"}, load("W-12")),
    (11, K.LOAD_ENDED, {"by": "131", "findings": "none", "reason": "smoke"}, load("W-12")),
    (11, K.HUNG, {"place": "cabinet"}, SHELL),
    (12, K.DRIED, {}, SHELL),
    (12, K.TOUCH_CHECKED, {"by": "118"}, SHELL),
    (12, K.REBUILT, {"by": "118"}, SHELL),
    (12, K.BACK_ON_HOOK, {"holder": "201"}, SHELL),
    (20, K.HOLD_OPENED, {"cause": "powder", "question": "care.ask.powder",
                         "decider": "safety-officer", "deputy": "chief"}, SHELL),
    (21, K.WORN, {"member": "203", "call": "c-32"}, SHELL),
    (22, K.HOLD_RELEASED, {"cause": "powder", "by": "so", "office": "safety-officer",
                           "said": "flour"}, SHELL),
    (23, K.LOOKED_OVER, {"by": "203"}, SHELL),
    (24, K.LENT, {"holder": "d-17"}, SHELL),
    (30, K.CAME_BACK, {}, SHELL),
    (40, K.INSPECTED_ADVANCED, {"by": "131", "findings": "seam open"}, SHELL),
    (41, K.RETIRED, {"by": "chief", "reason": "not worth mending"}, SHELL),
    (42, K.DISPOSED, {"by": "chief", "method": "cut up", "witness": "118"}, SHELL),
)  # fmt: skip


def whole() -> Book:
    """Return the record, each entry written on its day."""
    book = Book()
    for order, (day, kind, payload, thing) in enumerate(LIFE):
        book.now = DAY + dt.timedelta(days=day, minutes=order)
        book.add(
            Draft(
                idem=f"k{order}",
                item=item(ItemKind(thing.partition(":")[0]), thing.partition(":")[2]),
                kind=kind,
                occurred=Occurred.at(book.now, ClockSource.WALL),
                device=DeviceId("desk"),
                actor=MemberId("131"),
                established=Established.SIGNED_IN,
                payload=write_payload(payload),
            ),
            seen=book.now,
        )
    return book


def life(*, day: int | None = None) -> PieceLife:
    """Return the shell's life, as of the end of a day."""
    as_of = DAY + dt.timedelta(days=day + 1) if day is not None else None
    return fold(whole().entries, as_of=as_of).piece(SHELL)


def test_the_whole_life_fits_together() -> None:
    """Nothing is refused, nothing is asked, and the chain holds."""
    told = life()
    assert told.questions == ()
    assert [line.seq for line in told.history] == [1, 2, 3, *range(5, 27)]
    assert verify_chain(whole().entries).intact


def test_the_end_is_the_end() -> None:
    """Retired and disposed of."""
    assert life().state.life is Life.DISPOSED


def test_the_state_on_any_day_can_be_asked() -> None:
    """In the bag, back on the hook, on hold, with the neighbours."""
    assert life(day=9).state.custody is Custody.BAG
    assert life(day=12).state.custody is Custody.HOOK
    assert [hold.cause for hold in life(day=20).state.open_holds] == ["powder"]
    assert life(day=24).state.custody is Custody.LOAN


def test_being_worn_on_hold_is_kept_without_blame() -> None:
    """The hold stayed, and so does the exposure of whoever wore it."""
    told = life(day=21)
    assert [(one.member, one.call, one.on_hold) for one in told.exposures] == [
        ("201", "c-31", False),
        ("203", "c-32", True),
    ]
    assert told.state.open_holds
    assert told.state.stage is CareStage.WORN


def test_its_dates_rest_on_its_deeds() -> None:
    """Issue, wear, the one advanced cleaning and the inspection."""
    assert [record.deed for record in life().records] == [
        Deed.ISSUED,
        Deed.WORN,
        Deed.ADVANCED_CLEANING,
        Deed.WORN,
        Deed.ADVANCED_INSPECTION,
    ]
    assert life().wash_count == 1


def test_the_label_adds_to_the_register() -> None:
    """What was read later stands beside what was registered."""
    register = life().register
    assert (register["kind"], register["made"]) == ("coat-shell", "2025-11")
