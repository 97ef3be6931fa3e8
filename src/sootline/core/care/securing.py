"""Is a component out of everybody's hands: evidence, a casualty's, torn and soiled, retired?"""

from collections.abc import Iterator

from sootline.core.basis import Bearing, Finding
from sootline.core.care.cases import Case, Texts, reason, recorded
from sootline.core.care.offices import open_hold
from sootline.core.exposure.grades import stated
from sootline.core.gear.kinds import Layer
from sootline.core.gear.state import Custody, Hold, Life
from sootline.core.rulebook.contaminants import Decider

EVIDENCE = "evidence"
TORN = "torn"
_ENTERED = "the call as entered"
_ENDED = (Life.RETIRED, Life.DISPOSED)


def secure(case: Case, texts: Texts) -> Iterator[Hold]:
    """List the holds of an investigator; what is secured is not washed, opened or moved on."""
    for call in case.evidence:
        why = reason(
            Bearing.HOLDS, "care.secured.evidence", stated("evidence", _ENTERED), call=call.id
        )
        yield _secured(f"{EVIDENCE}/{call.id}", why, texts)
    for call in case.casualty:
        why = reason(
            Bearing.HOLDS, "care.secured.casualty", stated("casualty", _ENTERED), call=call.id
        )
        yield _secured(f"{EVIDENCE}.casualty/{call.id}", why, texts)
    if case.component.state.custody is Custody.EVIDENCE and not case.evidence:
        why = reason(Bearing.HOLDS, "care.secured.custody", recorded("custody"))
        yield _secured(f"{EVIDENCE}.custody", why, texts)


def _secured(cause: str, why: Finding, texts: Texts) -> Hold:
    return open_hold(cause, "care.hold.evidence", why, texts.policy, Decider.INVESTIGATOR)


def torn_and_soiled(case: Case, texts: Texts) -> Iterator[Hold]:
    """Take torn gloves with body fluids on them out of use, until infection control decides."""
    if case.kind.layer is not Layer.GLOVE:
        return
    wet = {concern.exposure.call: concern for concern in case.concerns if concern.wet}
    for wearing in case.wearings:
        concern = wet.get(wearing.call.id)
        if concern and any(remark.torn for remark in wearing.remarks):
            contaminant = concern.exposure.contaminant
            why = reason(
                Bearing.FORBIDS,
                "care.torn.soiled",
                concern.ground,
                call=wearing.call.id,
                contaminant=contaminant,
            )
            cause = f"{TORN}/{wearing.call.id}"
            yield open_hold(cause, "care.hold.torn", why, texts.policy, Decider.INFECTION_CONTROL)


def refuse(case: Case) -> Finding | None:
    """Say why a retired or disposed component gets no care decision; None when it is in use."""
    life = case.component.state.life
    if life not in _ENDED:
        return None
    return reason(Bearing.FORBIDS, f"care.out.{life}", recorded("life"))
