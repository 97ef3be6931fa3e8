"""Was a person's gear in smoke, and is that known, assumed or denied?

Being inside counts by itself; at a fire, neither an unknown zone nor unknown smoke is read as no
smoke. Source: NFPA 1851, 2020 edition, what triggers advanced cleaning (secondary accounts); the
reading of unknowns is this program's own and the stricter one.
"""

from sootline.core.basis import Bearing, Finding, Ground
from sootline.core.exposure.calls import Answer, Call, Presence, Zone
from sootline.core.exposure.grades import SMOKE, Statement, stated, tell
from sootline.core.exposure.zones import INTERIOR, closest_zone
from sootline.core.rulebook.contaminants import Knowledge
from sootline.core.rulebook.rules import Rule, Rulebook

TRIGGER = "clean.advanced.trigger"
AIR_REQUIRED = "air-required-inside"


def trigger(rulebook: Rulebook, *words: str) -> Ground | None:
    """Return the ground of the first text that counts one of these among its cleaning triggers."""
    for text in rulebook.texts:
        for rule in text.on(TRIGGER):
            if _counts(rule, words):
                return rule.ground(text.id)
    return None


def _counts(rule: Rule, words: tuple[str, ...]) -> bool:
    return isinstance(rule.value, tuple) and not set(words).isdisjoint(rule.value)


def grade_smoke(call: Call, presence: Presence, inside: Ground | None) -> Statement:
    """Say whether smoke met everything one person wore at one call.

    Args:
        inside: the rule by which entering counts as exposure, where a text has one.
    """
    knowledge, message = _grade(call, presence)
    ground = stated("presence", str(presence.member))
    if message == "exposure.smoke.inside" and inside:
        ground = inside
    if message == "exposure.smoke.absent":
        ground = stated("hazard", _denied_by(call))
    return Statement(
        contaminant=SMOKE,
        knowledge=knowledge,
        firm=knowledge is Knowledge.KNOWN,
        finding=_finding(call, presence, knowledge, message, ground),
    )


def _finding(
    call: Call, presence: Presence, knowledge: Knowledge, message: str, ground: Ground
) -> Finding:
    bearing = {Knowledge.KNOWN: Bearing.REQUIRES, Knowledge.SUSPECTED: Bearing.ASKS}
    return tell(
        bearing.get(knowledge, Bearing.NOTES),
        message,
        ground,
        call,
        member=str(presence.member),
        zone=closest_zone((presence,)),
        training="training" if call.training else None,
    )


def _grade(call: Call, presence: Presence) -> tuple[Knowledge, str]:
    """Return what is known and the message that says why, the strongest fact first."""
    zone = closest_zone((presence,))
    facts = (
        (presence.smoke is Answer.YES, Knowledge.KNOWN, "exposure.smoke.stated"),
        (presence.on_air is Answer.YES, Knowledge.KNOWN, "exposure.smoke.on_air"),
        (_denied_by(call) is not None, Knowledge.ABSENT, "exposure.smoke.absent"),
        (zone in INTERIOR, Knowledge.KNOWN, "exposure.smoke.inside"),
        (zone is Zone.UNKNOWN, Knowledge.SUSPECTED, "exposure.smoke.zone_unknown"),
        (presence.smoke is Answer.NO, Knowledge.ABSENT, "exposure.smoke.none"),
    )
    for holds, knowledge, message in facts:
        if holds:
            return knowledge, message
    return Knowledge.SUSPECTED, "exposure.smoke.unknown"


def _denied_by(call: Call) -> str | None:
    """Return who said that nothing burned, unless somebody says or suspects otherwise."""
    said = [hazard for hazard in call.hazards if hazard.contaminant == SMOKE]
    if any(one.knowledge in (Knowledge.KNOWN, Knowledge.SUSPECTED) for one in said):
        return None
    return next(
        (one.said_by for one in said if one.knowledge is Knowledge.ABSENT and one.said_by), None
    )
