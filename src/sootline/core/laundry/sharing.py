"""Which company does a component keep in the drum, and with what may it never share?"""

from dataclasses import dataclass

from sootline.core.basis import Bearing, Finding, finding
from sootline.core.care.decisions import Separation
from sootline.core.gear.kinds import Layer
from sootline.core.laundry.goods import Goods, practice
from sootline.core.laundry.rooms import Company, Hanging, WashRoom
from sootline.core.rulebook.books import voices
from sootline.core.rulebook.rules import Rulebook

TOPIC = "wash.company"
# Shells shed what liners must not meet, and hooks tear linings: no policy puts them together.
_FIXED = {
    Layer.SHELL: Company.SHELLS,
    Layer.LINER: Company.LINERS,
    # Station and wildland wear is no structural gear; it never joins it.
    Layer.OTHER_WEAR: Company.OWN,
}


@dataclass(frozen=True, kw_only=True)
class Placing:
    """The company of one component, and why."""

    company: Company
    reasons: tuple[Finding, ...]


def place_in_company(goods: Goods, rulebook: Rulebook) -> Placing:
    """Say whether a component goes with the shells, with the liners, or as a load of its own.

    Shells and liners are fixed; for everything else the first text that speaks on the topic
    counts, and where all are silent it keeps to its own kind of goods.
    """
    fixed = _FIXED.get(goods.kind.layer)
    names = {"component": goods.id, "kind": goods.kind.id}
    warned: list[Finding] = []
    for spoken in voices(rulebook, TOPIC, goods.traits):
        value = spoken.rule.value
        if value is None:
            warned.append(finding(Bearing.ASKS, spoken.rule.question, spoken.ground, **names))
        elif fixed and value != fixed:
            message = "laundry.company.overruled"
            warned.append(finding(Bearing.WARNS, message, spoken.ground, **names, value=value))
        else:
            company = Company(str(value))
            message = f"laundry.company.{company}"
            said = finding(Bearing.REQUIRES, message, spoken.ground, **names)
            return Placing(company=company, reasons=(said, *warned))
    company = fixed or Company.OWN
    message = f"laundry.company.{company}" if fixed else "laundry.company.silent"
    said = finding(Bearing.REQUIRES, message, practice(TOPIC), **names)
    return Placing(company=company, reasons=(said, *warned))


def bagging(goods: Goods) -> Finding | None:
    """Say whether it goes in a closed mesh bag in the drum (straps with metal do), and why."""
    if not goods.kind.mesh_bag:
        return None
    ground = practice("wash.mesh_bag")
    return finding(
        Bearing.REQUIRES, "laundry.bagged", ground, component=goods.id, kind=goods.kind.id
    )


def set_together(room: WashRoom) -> bool:
    """Whether the room handles a set's layer (coat and trousers) as one: its places hold sets."""
    return any(place.holds is Hanging.SET for place in room.drying)


def sharing_key(goods: Goods, company: Company, room: WashRoom) -> tuple[str, ...]:
    """Return what two components must have in common to share a drum or a sink.

    The company, in a load of its own also the layer; the very same hazards; and where one is to
    be alone, the same component, or the same set in a room that handles a set's layer as one.
    """
    separation = goods.decision.separation
    own = goods.kind.id if goods.kind.layer is Layer.OTHER_WEAR else goods.kind.layer.value
    alone = goods.set_layer if set_together(room) else goods.id
    return (
        company.value,
        own if company is Company.OWN else "",
        "+".join(sorted(separation.hazards)),
        alone if separation.alone else "",
    )


def apart(separation: Separation) -> bool:
    """Whether a hazard sets it apart from ordinary soil at all."""
    return separation.alone or bool(separation.hazards)
