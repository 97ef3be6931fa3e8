"""Must it be disinfected, with which product, for how long, and whom to call first?

Nothing here ever proposes rinsing: gear with body fluids is bagged where it was used.
Source: 29 CFR 1910.1030(d)(4)(iv), contaminated laundry; the word per surface: the adopted
edition, and common practice where it is silent.
"""

from dataclasses import dataclass

from sootline.core.basis import Bearing, ContaminantId, Finding
from sootline.core.care.cases import Case, Concern, Texts, reason
from sootline.core.care.decisions import Disinfection
from sootline.core.care.offices import open_hold
from sootline.core.care.policy import Product, ProductUse
from sootline.core.exposure.calls import Answer
from sootline.core.exposure.grades import stated
from sootline.core.gear.labels import Act
from sootline.core.gear.sources import kind_traits
from sootline.core.gear.state import Hold
from sootline.core.rulebook.books import voices
from sootline.core.rulebook.contaminants import Decider

_OF_BOOTS = frozenset(("leather", "rubber"))
_DOES = {
    Disinfection.SANITISE: frozenset((ProductUse.SANITISER, ProductUse.DISINFECTANT)),
    Disinfection.DISINFECT: frozenset((ProductUse.DISINFECTANT,)),
}

_QUESTIONS: dict[str | None, str] = {
    "care.disinfection.banned": "care.hold.disinfect_banned",
    "care.disinfection.no_product": "care.hold.no_product",
}


@dataclass(frozen=True, kw_only=True)
class DisinfectionPlan:
    """What is asked for on top of washing, with what, and who must agree first."""

    word: Disinfection
    product: Product | None
    first: tuple[Finding, ...]
    reasons: tuple[Finding, ...]
    unknowns: tuple[Finding, ...]
    holds: tuple[Hold, ...]


def plan_disinfection(case: Case, texts: Texts) -> DisinfectionPlan | None:
    """Say what disinfection a component needs; None when nothing on it asks for any."""
    wet = [concern for concern in case.concerns if concern.wet]
    if not wet:
        return None
    word, spoken, unknowns = _word(case, texts)
    against = frozenset(concern.exposure.contaminant for concern in wet)
    product = _choose(case, texts, word, against)
    obstacle = _obstacle(case, product)
    return DisinfectionPlan(
        word=word,
        product=product,
        first=_call_first(case, wet),
        reasons=(spoken, *map(_before_sharing, wet), *([obstacle] if obstacle else [])),
        unknowns=(*unknowns, *_label_gaps(product)),
        holds=tuple(_hold(concern, obstacle, texts) for concern in wet),
    )


def _word(case: Case, texts: Texts) -> tuple[Disinfection, Finding, tuple[Finding, ...]]:
    """Choose the word of the first text that has one; where a text leaves it open, ask."""
    topic = "blood.hard_word" if case.kind.hard_surface else "blood.soft_word"
    spoken = voices(texts.rulebook, topic, kind_traits(case.kind, case.component.traits))
    asked = tuple(
        Finding(bearing=Bearing.ASKS, message=one.rule.question, ground=one.ground)
        for one in spoken
        if one.rule.value is None
    )
    for one in spoken:
        if one.rule.value is not None:
            word = Disinfection(str(one.rule.value))
            return word, reason(Bearing.REQUIRES, f"care.disinfection.{word}", one.ground), asked
    word = Disinfection.DISINFECT
    ground = next(concern.ground for concern in case.concerns if concern.wet)
    return word, reason(Bearing.REQUIRES, f"care.disinfection.{word}", ground), asked


def _choose(
    case: Case, texts: Texts, word: Disinfection, against: frozenset[ContaminantId]
) -> Product | None:
    """Choose a product whose label names all the materials, one with a contact time before others.

    A product whose label claims nothing yet is taken only with the question open.
    """
    materials = materials_of(case)
    texts_on_it = [case.component.label.care, *([case.guide.care] if case.guide else [])]
    allowing = [text.disinfectants for text in texts_on_it if text.disinfectants]
    fitting = [
        product
        for product in texts.policy.products
        if product.use in _DOES[word]
        and materials <= frozenset(product.materials)
        and (not product.against or against <= frozenset(product.against))
        and all(product.name in named for named in allowing)
    ]
    return min(
        fitting,
        key=lambda product: (not product.against, product.contact_min is None),
        default=None,
    )


def materials_of(case: Case) -> frozenset[str]:
    """Return every material a product's label must name before it is used on this component."""
    return frozenset(case.kind.materials) | _OF_BOOTS.intersection(case.component.traits)


def _obstacle(case: Case, product: Product | None) -> Finding | None:
    """Say what stands against disinfecting it here: a prohibition, or no product for it."""
    ban = case.terms.banned(Act.DISINFECT)
    if ban:
        return reason(Bearing.FORBIDS, "care.disinfection.banned", ban.ground, kind=case.kind.id)
    if product is None:
        ground = stated("products", "the products the department listed")
        materials = ", ".join(sorted(materials_of(case)))
        return reason(
            Bearing.FORBIDS,
            "care.disinfection.no_product",
            ground,
            kind=case.kind.id,
            materials=materials,
        )
    return None


def _hold(concern: Concern, obstacle: Finding | None, texts: Texts) -> Hold:
    """Hold it until infection control has seen the disinfection recorded, or found a way."""
    exposure, decider = concern.exposure, concern.rule or Decider.INFECTION_CONTROL
    question = _QUESTIONS.get(obstacle.message if obstacle else None, "care.hold.disinfect")
    cause = f"{exposure.contaminant}.disinfect/{exposure.call}"
    return open_hold(cause, question, obstacle or _before_sharing(concern), texts.policy, decider)


def _before_sharing(concern: Concern) -> Finding:
    """Say that nothing shares a drum, sink or cabinet with it until that is on record."""
    exposure = concern.exposure
    return reason(
        Bearing.HOLDS,
        "care.disinfection.before_sharing",
        concern.ground,
        contaminant=exposure.contaminant,
        call=exposure.call,
    )


def _call_first(case: Case, wet: list[Concern]) -> tuple[Finding, ...]:
    """Call infection control before anything else when it reached skin; ask when nobody said."""
    ground = wet[0].ground
    reached = {str(call.id) for call in case.reached_skin}
    answers = {
        Answer.YES if concern.exposure.call in reached else concern.exposure.reached_skin
        for concern in wet
    }
    member = case.component.owner
    if Answer.YES in answers:
        return (reason(Bearing.REQUIRES, "care.first.infection_control", ground, member=member),)
    if Answer.UNKNOWN in answers:
        return (reason(Bearing.ASKS, "care.first.ask_skin", ground, member=member),)
    return ()


def _label_gaps(product: Product | None) -> tuple[Finding, ...]:
    """Ask what the product's own label does not say here."""
    if product is None:
        return ()
    ground = stated("products", "the products the department listed")
    gaps = (
        (product.contact_min is None, "care.unknown.contact_time"),
        (not product.against, "care.unknown.product_claim"),
    )
    return tuple(
        reason(Bearing.ASKS, message, ground, product=product.name)
        for is_open, message in gaps
        if is_open
    )
