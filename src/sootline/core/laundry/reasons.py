"""Why is a component kept out or apart, and up to which limits may its sort be washed?"""

from collections.abc import Iterator, Sequence

from sootline.core.basis import Bearing, Finding, Ground, finding
from sootline.core.care.decisions import Fate
from sootline.core.gear.kinds import WashMethod
from sootline.core.gear.state import Custody
from sootline.core.gear.terms import ResolvedLimit
from sootline.core.laundry.goods import Goods, practice

_BATH = "wash.bath_temp"
_DETERGENT = ("wash.ph_low", "wash.ph_high")
_NOT_WASHED = {
    Fate.HOOK: Bearing.NOTES,
    Fate.LOOK: Bearing.NOTES,
    Fate.HOLD: Bearing.HOLDS,
    Fate.EVIDENCE: Bearing.HOLDS,
    Fate.OUT: Bearing.FORBIDS,
}
_NOT_HERE = (
    Custody.CONTRACTOR,
    Custody.REPAIR,
    Custody.LOAN,
    Custody.EVIDENCE,
    Custody.NOT_SEEN,
)


def kept_out_reason(goods: Goods) -> Finding | None:
    """Say why a component is not washed now; None lets it in.

    Held, not here, sealed, secured as evidence, out of use, or simply without need; and where the
    label wants shell and liner washed in one piece, which no load may do, the gear officer is
    asked.
    """
    decision = goods.decision
    names = {"component": goods.id, "kind": goods.kind.id}
    ground = decision.reasons[0].ground if decision.reasons else practice("wash.kept_out")
    if hold := next(iter(decision.open_holds), None):
        held = hold.reason.ground if hold.reason else ground
        values = {**names, "decider": hold.decider, "question": hold.question}
        return finding(Bearing.HOLDS, "laundry.out.held", held, **values)
    if goods.component.state.custody in _NOT_HERE:
        values = {**names, "custody": goods.component.state.custody}
        return finding(Bearing.NOTES, "laundry.out.not_here", ground, **values)
    if decision.fate is not Fate.WASH:
        message = f"laundry.out.{decision.fate}"
        return finding(_NOT_WASHED[decision.fate], message, ground, **names)
    if decision.sealed:
        return finding(Bearing.HOLDS, "laundry.out.sealed", ground, **names)
    assembled = decision.terms.assembled
    if assembled.value and decision.wash is WashMethod.MACHINE:
        said = assembled.ground or ground
        return finding(Bearing.ASKS, "laundry.out.assembled", said, **names)
    return None


def separation_reason(goods: Goods) -> Finding:
    """Say by which hazards a component is set apart, and whether it is to be alone."""
    separation = goods.decision.separation
    ground = hazard_ground(goods)
    message = "laundry.alone" if separation.alone else "laundry.apart"
    values = {"component": goods.id, "hazards": ", ".join(separation.hazards)}
    return finding(Bearing.REQUIRES, message, ground, **values)


def disinfection_reason(goods: Goods) -> Finding | None:
    """Say that it is disinfected or sanitised, and that recorded, before it shares anything."""
    decision = goods.decision
    if decision.disinfection is None:
        return None
    values = {"component": goods.id, "word": decision.disinfection}
    if decision.contact_min is None:
        message = "laundry.disinfect.no_time"
        return finding(Bearing.ASKS, message, hazard_ground(goods), **values)
    timed = {**values, "product": decision.product, "minutes": decision.contact_min}
    return finding(Bearing.REQUIRES, "laundry.disinfect.first", hazard_ground(goods), **timed)


def hazard_ground(goods: Goods) -> Ground:
    """Return the ground of the reason that names the hazard, or of common practice."""
    rules = {f"contaminant.{hazard}" for hazard in goods.decision.separation.hazards}
    return next(
        (one.ground for one in goods.decision.reasons if one.ground.rule in rules),
        practice("wash.separation"),
    )


def limits_of(members: Sequence[Goods], method: WashMethod) -> Iterator[Finding]:
    """State what a sort must stay within: the detergent, and by hand the water.

    The strictest limit of all members counts; where a member has none, it is asked for.
    """
    by_hand = () if method is WashMethod.MACHINE else (_BATH,)
    for topic in (*by_hand, *_DETERGENT):
        limits = [goods.decision.terms.limit(topic) for goods in members]
        word = topic.removeprefix("wash.")
        bindings = [limit.binding for limit in limits if limit.binding]
        if len(bindings) < len(limits):
            yield finding(Bearing.ASKS, f"laundry.limit.ask.{word}", _asking(limits, topic))
        if bindings:
            strictest = bindings[0]
            for binding in bindings[1:]:
                if binding[0].stricter(strictest[0]):
                    strictest = binding
            values = {"limit": strictest[0]}
            yield finding(Bearing.LIMITS, f"laundry.limit.{word}", strictest[1], **values)


def _asking(limits: Sequence[ResolvedLimit], topic: str) -> Ground:
    unset = [ground for limit in limits for ground in limit.unset]
    return unset[0] if unset else practice(topic)
