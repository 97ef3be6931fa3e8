"""What an officer expects of a recall by lot (Dunmarrow County, invented).

Coat liners, styles K4 and K4L, made 1 March to 31 August 2021, lots beginning 2103 to 2108 except
2105-C; stop use. Fourteen records, with the gaps and slips of a real register.
"""

import datetime as dt

import pytest

from sootline.core.basis import (
    ComponentId,
    DateSpan,
    KindId,
    MemberId,
    PlaceId,
    SetId,
    UnreadableValueError,
)
from sootline.core.exposure import Answer
from sootline.core.gear import Component, Custody, Element, Label, Life, State
from sootline.core.rebuild import Built
from sootline.core.upkeep.recalls import (
    Action,
    Affected,
    Closure,
    Field,
    LotSpan,
    Match,
    Notice,
    Sighting,
    Step,
    close_notice,
    fitted_into,
    match_notice,
    trace_whereabouts,
)

HERE = State()
AT = dt.datetime(2026, 3, 2, 9, tzinfo=dt.UTC)
NOTICE = Notice(
    id="n1",
    issuer="an invented maker",
    title="coat liners, notice 7",
    issued=DateSpan.parse("2026-03-01"),
    kinds=(KindId("coat-liner"),),
    styles=("K4", "K4L"),
    made=DateSpan.parse("2021-03-01..2021-08-31"),
    lots=(LotSpan(first="2103", last="2108", beginning=True),),
    except_lots=(LotSpan(first="2105-C"),),
)


def record(
    number: int,
    style: str | None,
    made: str,
    lot: str | None,
    *,
    kind: str = "coat-liner",
    readable: bool = True,
    state: State = HERE,
    guest: str | None = None,
) -> Component:
    """Return one line of the register."""
    return Component(
        id=ComponentId(str(number)),
        kind=KindId(kind),
        owner=MemberId(f"m{number}"),
        set=SetId(f"set {number}"),
        label=Label(style=style, lot=lot, readable=readable),
        made=DateSpan.parse(made),
        state=state,
        guest=guest,
    )


REGISTER = (
    record(1, "K4", "2021-03-01", "2103-A"),
    record(2, "K4", "2021-05-12", "2105-C"),
    record(3, "K4L", "2021-08-31", "2108-F"),
    record(4, "K4", "2021-09-02", "2108-F"),
    record(5, "K4", "2021-06", None),
    record(6, "K4", "..2021-09-30", None, readable=False),
    record(7, "K4", "2021-04-10", "2104-B", kind="trouser-liner"),
    record(8, "K5", "2021-04-10", "2104-B"),
    record(9, "K4", "2021-07-01", "21O7-B"),
    record(10, "K4", "2021-05-20", "2105-A", state=State(life=Life.DISPOSED)),
    record(
        11,
        "K4",
        "2021-06-15",
        "2106-A",
        state=State(custody=Custody.LOAN, place=PlaceId("D17")),
        guest="D05",
    ),
    record(12, "K4", "2021-06-15", "2106-A"),
    record(13, "K4", "2021-02-27", "2102-Z"),
    record(14, "K4L", "2021-04", "210?-C"),
)
SHELL = record(99, "K4", "2021-06-15", "2106-A", kind="coat-shell")


@pytest.fixture(scope="module")
def matches() -> dict[str, Match]:
    """Hold the register against the notice."""
    return {str(one.component): one for one in match_notice(NOTICE, REGISTER)}


def standing(matches: dict[str, Match], affected: Affected) -> list[int]:
    """List the records that stand so."""
    return [int(number) for number, one in matches.items() if one.affected is affected]


def said(match: Match) -> set[str]:
    """Return the messages of a match's reasons."""
    return {str(reason.message) for reason in match.reasons}


def test_affected_are_pulled_now(matches: dict[str, Match]) -> None:
    """All the notice names lies inside: 1, 3, 11, 12."""
    assert standing(matches, Affected.AFFECTED) == [1, 3, 11, 12]
    assert "recall.is.affected.stop" in said(matches["1"])


def test_possible_are_pulled_and_looked_at(matches: dict[str, Match]) -> None:
    """Something is missing, contradicts itself or can be read in two ways: 4, 5, 6, 9, 14."""
    assert standing(matches, Affected.POSSIBLE) == [4, 5, 6, 9, 14]


def test_what_is_disposed_of_is_only_recorded(matches: dict[str, Match]) -> None:
    """Number 10 is gone."""
    assert standing(matches, Affected.GONE) == [10]


def test_not_affected_by_a_field_that_decides(matches: dict[str, Match]) -> None:
    """2 is the excepted lot, 7 another kind, 8 another style, 13 out by date and lot."""
    assert standing(matches, Affected.NOT_AFFECTED) == [2, 7, 8, 13]
    assert [matches[n].decided_by for n in ("2", "7", "8", "13")] == [
        (Field.LOT,),
        (Field.KIND,),
        (Field.STYLE,),
        (Field.MADE, Field.LOT),
    ]


def test_date_and_lot_that_disagree_are_said_to(matches: dict[str, Match]) -> None:
    """Number 4: made after the last day, in an affected lot."""
    assert {"recall.made.out", "recall.lot.in", "recall.disagree"} <= said(matches["4"])


def test_a_likely_slip_is_shown_and_not_mended(matches: dict[str, Match]) -> None:
    """Number 9 is written with the letter O; the reading with a zero is shown beside it."""
    reason = next(one for one in matches["9"].reasons if one.message == "recall.lot.slip")

    assert reason.value("given") == "21O7-B"
    assert reason.value("reading") == "2107-B"


def test_a_missing_sign_is_shown_with_a_reading_that_lies_inside(
    matches: dict[str, Match],
) -> None:
    """Number 14: one sign of the lot cannot be read."""
    reason = next(one for one in matches["14"].reasons if one.message == "recall.lot.slip")

    assert (reason.value("given"), reason.value("reading")) == ("210?-C", "2103-C")


def test_owner_and_borrower_are_told() -> None:
    """Number 11 is owned by D05 and lent to D17: both hear of it."""
    found = trace_whereabouts(REGISTER[10], department="County", fitted={})

    assert found.tell == ("D05", "D17", "m11")


def test_the_present_wearer_is_told() -> None:
    """Number 12 is inside the shell of 99: that member is wearing it."""
    built = Built(element=Element.COAT, parts=(SHELL.id, ComponentId("12")))
    fitted = fitted_into((built,), (*REGISTER, SHELL))
    found = trace_whereabouts(REGISTER[11], department="County", fitted=fitted)

    assert (found.wearer, found.inside, found.in_set) == ("m99", "99", "set 99")
    assert found.tell == ("County", "m12", "m99")


def seen(number: int, affected: Answer = Answer.NO, by: str = "118") -> Sighting:
    """Return a named person's reading of one component."""
    component = ComponentId(str(number))
    return Sighting(notice="n1", component=component, by=by, at=AT, affected=affected, read="x")


def pulled(*numbers: int) -> tuple[Action, ...]:
    """Return that components were pulled."""
    return tuple(
        Action(notice="n1", component=ComponentId(str(n)), step=Step.PULLED, by="118", at=AT)
        for n in numbers
    )


def close(
    matches: dict[str, Match], sightings: tuple[Sighting, ...], actions: tuple[Action, ...]
) -> Closure:
    """Say what is left."""
    return close_notice(NOTICE, matches.values(), sightings, actions)


def test_open_while_one_possible_is_unseen(matches: dict[str, Match]) -> None:
    """Four of five read by eye: the fifth keeps it open."""
    closure = close(matches, tuple(seen(n) for n in (4, 5, 6, 9)), pulled(1, 3, 11, 12))

    assert closure.unseen == ("14",)
    assert not closure.closed


def test_closed_when_all_are_seen_and_dealt_with(matches: dict[str, Match]) -> None:
    """Each possible one read, each affected one pulled."""
    closure = close(matches, tuple(seen(n) for n in (4, 5, 6, 9, 14)), pulled(1, 3, 11, 12))

    assert closure.closed
    assert closure.cleared == ("4", "5", "6", "9", "14")


def test_what_could_not_be_read_stays_possible(matches: dict[str, Match]) -> None:
    """Somebody looked and could not tell: it is not done with."""
    sightings = (*(seen(n) for n in (4, 5, 6, 9)), seen(14, Answer.UNKNOWN))

    assert close(matches, sightings, pulled(1, 3, 11, 12)).unseen == ("14",)


def test_a_possible_one_found_affected_waits_for_its_end(matches: dict[str, Match]) -> None:
    """Reading it by eye does not yet pull it."""
    sightings = (*(seen(n) for n in (4, 5, 6, 14)), seen(9, Answer.YES))
    closure = close(matches, sightings, pulled(1, 3, 11, 12))

    assert (closure.found, closure.waiting) == (("9",), ("9",))


def test_nobody_reads_anything_without_a_name() -> None:
    """A sighting by nobody is none."""
    with pytest.raises(UnreadableValueError):
        seen(14, by=" ")
