"""What work does a flaw take, and who may do it: the station's trained people, or others?"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import Bearing, Finding, Ground, finding
from sootline.core.gear import Component, Layer, find_kind
from sootline.core.gear.sources import kind_traits
from sootline.core.rebuild import Flaw
from sootline.core.rulebook import Rulebook, voices
from sootline.core.upkeep.qualified import PRACTICE, Scope


class Work(StrEnum):
    """A kind of repair, as the texts sort them."""

    SHELL_PATCH = "shell-patch"
    SHELL_STITCH = "shell-stitch"
    HARDWARE = "hardware"
    LINER_RECLOSE = "liner-reclose"
    STRUCTURAL_SEAM = "structural-seam"
    BARRIER = "barrier"
    TRIM = "trim"
    CLOSURE = "closure"
    LINER = "liner"
    CUFF = "cuff"
    PART = "part"


# Common practice, no published source: what a flaw takes until somebody has looked closer. An
# open seam counts as a structural one, a tear of a liner as the whole liner's.
_ON_SHELL = {
    Flaw.TORN: Work.SHELL_PATCH,
    Flaw.HOOK_SNAG: Work.SHELL_STITCH,
    Flaw.SEAM_OPEN: Work.STRUCTURAL_SEAM,
    Flaw.TRIM_LIFTED: Work.TRIM,
    Flaw.CLOSURE: Work.CLOSURE,
    Flaw.HARDWARE: Work.HARDWARE,
    Flaw.CUFF: Work.CUFF,
}
_ON_LINER = {
    Flaw.CUFF: Work.CUFF,
    Flaw.HARDWARE: Work.HARDWARE,
    Flaw.LEAK: Work.BARRIER,
    Flaw.LIGHT_THROUGH: Work.BARRIER,
}


@dataclass(frozen=True, kw_only=True)
class WorkPlace:
    """One work, and whether the station may do it.

    Args:
        scope: basic at the station, or advanced by the maker or a verified provider.
    """

    work: Work
    scope: Scope
    reasons: tuple[Finding, ...]


def work_of(flaw: Flaw, component: Component) -> Work:
    """Return the work a flaw takes on a component.

    Raises:
        BadInputError: the component's kind is unknown.
    """
    layer = find_kind(component.kind).layer
    if layer is Layer.SHELL:
        return _ON_SHELL.get(flaw, Work.STRUCTURAL_SEAM)
    if layer is Layer.LINER:
        return _ON_LINER.get(flaw, Work.LINER)
    return Work.PART


def place_work(work: Work, component: Component, rulebook: Rulebook) -> WorkPlace:
    """Say where a work is done.

    It is basic only when the adopted edition lists it so and no text lists it as advanced. What
    no text lists goes to the maker or a verified provider.

    Raises:
        BadInputError: the component's kind is unknown.
    """
    traits = kind_traits(find_kind(component.kind), component.traits)
    advanced = _listing("repair.advanced", work, rulebook, traits)
    adopted = rulebook.adopted.on("repair.basic", traits)
    basic = next(
        (
            rule.ground(rulebook.adopted.id)
            for rule in adopted
            if isinstance(rule.value, tuple) and work in rule.value
        ),
        None,
    )
    asked = tuple(
        finding(Bearing.ASKS, f"ask.{rule.topic}", rule.ground(rulebook.adopted.id))
        for rule in adopted
        if rule.value is None
    )
    if basic is not None and advanced is None:
        said = finding(Bearing.REQUIRES, "mend.basic.here", basic, work=work)
        return WorkPlace(work=work, scope=Scope.BASIC_REPAIR, reasons=(said, *asked))
    if advanced is not None:
        said = finding(Bearing.FORBIDS, "mend.advanced.not_here", advanced, work=work)
    else:
        said = finding(Bearing.FORBIDS, "mend.not_listed", PRACTICE, work=work)
    return WorkPlace(work=work, scope=Scope.ADVANCED_REPAIR, reasons=(said, *asked))


def _listing(topic: str, work: Work, rulebook: Rulebook, traits: frozenset[str]) -> Ground | None:
    """Return the ground of the first text that lists a work on a topic."""
    for spoken in voices(rulebook, topic, traits):
        if isinstance(spoken.rule.value, tuple) and work in spoken.rule.value:
            return spoken.ground
    return None
