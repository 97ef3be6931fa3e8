"""Which steps of preparation does a component need, on the terms it may be washed?"""

from sootline.core.gear.kinds import Applies, Kind, Preparation, WashMethod
from sootline.core.gear.terms import CareTerms


def list_preparation(kind: Kind, terms: CareTerms) -> tuple[Preparation, ...]:
    """List the steps in order; the maker's text decides which way the barrier faces.

    Where label and guide are silent the moisture barrier goes inward and the parts are taken
    apart. Source: common practice, no published source.
    """
    taken = _applying(terms)
    return tuple(step for step in kind.preparation if step.applies in taken)


def _applying(terms: CareTerms) -> frozenset[Applies]:
    in_one_piece = bool(terms.assembled.value)
    outward = bool(terms.barrier_outward.value)
    applying = {Applies.ALWAYS, Applies.IN_ONE_PIECE if in_one_piece else Applies.TAKEN_APART}
    if terms.method.wash is WashMethod.MACHINE:
        applying.add(Applies.IN_DRUM)
    if not in_one_piece:
        applying.add(Applies.BARRIER_OUTWARD if outward else Applies.BARRIER_INWARD)
    return frozenset(applying)
