"""Which tests does an inspection of a liner take, and was each carried out as asked?"""

from collections.abc import Iterator
from dataclasses import dataclass

from sootline.core.basis import Bearing, Finding, Ground, Limit, Quantity, finding
from sootline.core.basis import Standing as Within
from sootline.core.exposure.calls import Answer
from sootline.core.gear import Component, Layer, find_kind
from sootline.core.gear.sources import kind_traits
from sootline.core.rulebook import Rulebook, Spoken, voices
from sootline.core.upkeep.inspections.facts import (
    Inspection,
    InspectionKind,
    LinerTest,
    LinerTestDone,
)

_TESTS = {
    InspectionKind.ADVANCED: "inspect.advanced.tests",
    InspectionKind.LINER: "inspect.liner.tests",
}


@dataclass(frozen=True, kw_only=True)
class Asked:
    """Which tests are asked for, by whom, and what the texts leave open."""

    tests: tuple[tuple[LinerTest, Ground], ...]
    questions: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class Tested:
    """How the tests of one inspection stand.

    Args:
        lacking: tests that are asked for and were not carried out as asked.
        failed: tests in which something came through.
    """

    lacking: tuple[LinerTest, ...]
    failed: tuple[LinerTestDone, ...]
    reasons: tuple[Finding, ...]


def hold_tests(component: Component, inspection: Inspection, rulebook: Rulebook) -> Tested:
    """Hold the tests of an inspection against what the texts ask for.

    A test that was carried out in another way than asked, or nobody knows how, is still to be
    done; one in which something came through has failed however it was carried out.

    Raises:
        BadInputError: the component's kind is unknown.
    """
    asked = list_tests(component, inspection.kind, rulebook)
    done = {one.test: one for one in inspection.tests}
    lacking = []
    said: list[Finding] = list(asked.questions)
    for test, ground in asked.tests:
        one = done.get(test)
        if one is not None and one.passed is Answer.NO:
            continue
        short = tuple(_short(test, ground, one, component, rulebook))
        if short:
            lacking.append(test)
            said.extend(short)
    failures = tuple(one for one in inspection.tests if one.passed is Answer.NO)
    return Tested(lacking=tuple(lacking), failed=failures, reasons=tuple(said))


def list_tests(component: Component, kind: InspectionKind, rulebook: Rulebook) -> Asked:
    """List the tests that an inspection of a component takes; only liners are tested.

    Raises:
        BadInputError: the component's kind is unknown.
    """
    if kind not in _TESTS or find_kind(component.kind).layer is not Layer.LINER:
        return Asked(tests=(), questions=())
    spoken = _spoken(_TESTS[kind], component, rulebook)
    tests = {
        LinerTest(word): one.ground
        for one in reversed(spoken)
        if isinstance(one.rule.value, tuple)
        for word in one.rule.value
    }
    questions = tuple(
        finding(Bearing.ASKS, f"ask.{one.rule.topic}", one.ground)
        for one in spoken
        if one.rule.value is None
    )
    return Asked(
        tests=tuple((test, tests[test]) for test in LinerTest if test in tests), questions=questions
    )


def _short(
    test: LinerTest,
    ground: Ground,
    done: LinerTestDone | None,
    component: Component,
    rulebook: Rulebook,
) -> Iterator[Finding]:
    """Say in what a test falls short of what is asked; nothing when it does not."""
    if done is None or done.passed is Answer.UNKNOWN:
        yield finding(Bearing.REQUIRES, "inspection.test.not_done", ground, test=test)
        return
    if test is LinerTest.LEAKAGE:
        yield from _mixture(done, component, rulebook)
    for topic, reading in _readings(test, done):
        yield from _too_little(topic, reading, component, rulebook)


def _mixture(done: LinerTestDone, component: Component, rulebook: Rulebook) -> Iterator[Finding]:
    for one in _spoken("inspect.leakage.water_parts", component, rulebook):
        parts = one.rule.value
        if parts is not None and done.water_parts != parts:
            given = "?" if done.water_parts is None else done.water_parts
            yield finding(
                Bearing.REQUIRES, "inspection.test.parts", one.ground, given=given, parts=parts
            )


def _readings(test: LinerTest, done: LinerTestDone) -> Iterator[tuple[str, Quantity | None]]:
    if test is LinerTest.LEAKAGE:
        yield "inspect.leakage.hold_time", done.waited
    elif test is LinerTest.HYDROSTATIC:
        yield "inspect.hydrostatic.hold_time", done.waited
        yield "inspect.hydrostatic.pressure", done.pressure


def _too_little(
    topic: str, reading: Quantity | None, component: Component, rulebook: Rulebook
) -> Iterator[Finding]:
    for one in _spoken(topic, component, rulebook):
        limit = one.rule.value
        if isinstance(limit, Limit) and limit.stand(reading) is not Within.WITHIN:
            given = "?" if reading is None else reading
            yield finding(
                Bearing.REQUIRES,
                "inspection.test.too_little",
                one.ground,
                topic=topic,
                given=given,
                limit=limit,
            )


def _spoken(topic: str, component: Component, rulebook: Rulebook) -> tuple[Spoken, ...]:
    return voices(rulebook, topic, kind_traits(find_kind(component.kind), component.traits))
