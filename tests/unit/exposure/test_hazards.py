"""What statements and surveys on hazards mean for the gear of each person."""

import datetime as dt

import pytest
from tests.care_facts import NOW, bystander, fire, grade, hazard, person, piece, remark

from sootline.core.basis import ContaminantId
from sootline.core.exposure import Answer, Building, Call, Hazard, Presence, Remark, Survey, Zone
from sootline.core.rulebook import Knowledge

HOOD = piece("hood")
KNOWN, SUSPECTED = Knowledge.KNOWN, Knowledge.SUSPECTED
UNKNOWN, ABSENT = Knowledge.UNKNOWN, Knowledge.ABSENT


def survey(found: Knowledge, hours: int = 0) -> Survey:
    """Return a survey signed some hours after now."""
    return Survey(
        contaminant=ContaminantId("asbestos"),
        found=found,
        signed_by="surveyor",
        signed_at=NOW + dt.timedelta(hours=hours),
    )


def known_of(name: str, call: Call, now: dt.datetime | None = None) -> list[Knowledge]:
    """List what is known of a contaminant on the hood."""
    return [one.knowledge for one in grade([HOOD], call, now=now) if one.contaminant == name]


@pytest.mark.parametrize(
    ("hazards", "expected"),
    [
        ((hazard("fuel", KNOWN),), [KNOWN]),
        ((hazard("fuel", UNKNOWN),), [UNKNOWN]),
        ((hazard("fuel", ABSENT),), [ABSENT]),
        ((hazard("fuel", ABSENT, None),), [UNKNOWN]),
        ((hazard("fuel", ABSENT), hazard("fuel", UNKNOWN)), [ABSENT]),
        ((hazard("fuel", ABSENT), hazard("fuel", SUSPECTED)), [ABSENT, SUSPECTED]),
        ((hazard("fuel", ABSENT), hazard("fuel", KNOWN)), [ABSENT, KNOWN]),
        ((hazard("foam", ABSENT), hazard("fuel", UNKNOWN)), [UNKNOWN]),
    ],
)
def test_a_named_denial_answers_only_what_nobody_knows(
    hazards: tuple[Hazard, ...], expected: list[Knowledge]
) -> None:
    """Of its own contaminant, and never against somebody who knows or suspects."""
    assert known_of("fuel", fire(person(), hazards=hazards)) == expected


@pytest.mark.parametrize(
    ("presence", "reached"),
    [
        (bystander(), False),
        (person("A", Zone.STAGING, Zone.PUMP, smoke=Answer.NO), False),
        (person("A", Zone.PUMP), True),
        (person("A", Zone.PUMP, smoke=Answer.NO, on_air=Answer.YES), True),
        (person("A", Zone.OUTSIDE, smoke=Answer.NO), True),
        (person("A", zones=(), smoke=Answer.NO), True),
    ],
)
def test_a_hazard_reaches_whoever_was_not_plainly_away(presence: Presence, reached: bool) -> None:
    """Only at the pump or in staging, in no smoke and not on air, is away."""
    call = fire(presence, hazards=(hazard("fuel", SUSPECTED),))

    assert bool(known_of("fuel", call)) is reached


@pytest.mark.parametrize(
    ("found", "opened", "expected"),
    [
        (KNOWN, Answer.YES, [KNOWN]),
        (KNOWN, Answer.UNKNOWN, [KNOWN]),
        (KNOWN, Answer.NO, [SUSPECTED]),
        (SUSPECTED, Answer.NO, [SUSPECTED]),
        (UNKNOWN, Answer.YES, [UNKNOWN]),
        (ABSENT, Answer.YES, [ABSENT]),
    ],
)
def test_a_survey_speaks_for_the_whole_building(
    found: Knowledge, opened: Answer, expected: list[Knowledge]
) -> None:
    """Who left before the opening is suspected of what was found behind the ceiling."""
    call = fire(person(opened=opened), building=Building(surveys=(survey(found),)))

    assert known_of("asbestos", call) == expected


@pytest.mark.parametrize(
    ("said", "surveys", "expected"),
    [
        (SUSPECTED, (ABSENT,), [ABSENT]),
        (UNKNOWN, (ABSENT,), [ABSENT]),
        (KNOWN, (ABSENT,), [KNOWN, ABSENT]),
        (SUSPECTED, (ABSENT, KNOWN), [SUSPECTED, ABSENT, KNOWN]),
    ],
)
def test_a_negative_survey_answers_a_suspicion_and_no_certainty(
    said: Knowledge, surveys: tuple[Knowledge, ...], expected: list[Knowledge]
) -> None:
    """Another survey that found something leaves everything standing."""
    building = Building(surveys=tuple(survey(one) for one in surveys))
    call = fire(person(), building=building, hazards=(hazard("asbestos", said),))

    assert known_of("asbestos", call) == expected


def test_a_survey_signed_later_is_not_known_yet() -> None:
    """What is signed tomorrow changes nothing today."""
    call = fire(person(), building=Building(surveys=(survey(ABSENT, hours=1),)),
                hazards=(hazard("asbestos", SUSPECTED),))  # fmt: skip

    assert known_of("asbestos", call, NOW) == [SUSPECTED]


def looked(name: str, knowledge: Knowledge, said_by: str | None = "A") -> Remark:
    """Somebody looked at the hood."""
    return remark(HOOD, name, knowledge=knowledge, said_by=said_by)


@pytest.mark.parametrize(
    ("name", "said", "seen", "expected"),
    [
        ("blood", KNOWN, looked("blood", ABSENT), [ABSENT]),
        ("blood", KNOWN, looked("blood", ABSENT, None), [KNOWN, UNKNOWN]),
        ("blood", KNOWN, looked("fuel", ABSENT), [KNOWN]),
        ("blood", UNKNOWN, looked("blood", SUSPECTED), [UNKNOWN, SUSPECTED]),
        ("asbestos", SUSPECTED, looked("asbestos", ABSENT), [SUSPECTED, ABSENT]),
        ("asbestos", UNKNOWN, looked("asbestos", ABSENT), [ABSENT]),
        ("foam", KNOWN, looked("foam", ABSENT), [ABSENT]),
    ],
)
def test_a_named_look_outranks_the_calls_statement(
    name: str, said: Knowledge, seen: Remark, expected: list[Knowledge]
) -> None:
    """But nobody sees fibres: what a decider must rule on stays."""
    call = fire(person(), hazards=(hazard(name, said),), remarks=(seen,))

    assert known_of(name, call) == expected


def test_nobody_looks_away_the_smoke_they_stood_in() -> None:
    """A hood that looks fine was in smoke all the same."""
    call = fire(person(), remarks=(looked("smoke", ABSENT),))

    assert known_of("smoke", call) == [KNOWN, ABSENT]


def test_a_look_answers_smoke_that_was_only_assumed() -> None:
    """Nobody said where A was; somebody named looked and saw none on the hood."""
    call = fire(person("A", zones=()), remarks=(looked("smoke", ABSENT),))

    assert known_of("smoke", call) == [ABSENT]
