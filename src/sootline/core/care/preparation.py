"""What must be done before a component is washed or put aside, in order, and why not skip it?"""

from functools import lru_cache

from sootline.core.basis import Bearing, Ground, KindId, MessageId
from sootline.core.care.cases import Case, practice, reason
from sootline.core.care.decisions import Fate, Step
from sootline.core.gear.kinds import Applies, Preparation
from sootline.core.gear.preparing import list_preparation
from sootline.core.gear.terms import CareTerms

_ASSEMBLED = (Applies.IN_ONE_PIECE, Applies.TAKEN_APART)
_LEAK_PROOF = ("care.prep.leak_proof", "care.skip.leak_proof")
_ANY_BAG = ("care.prep.bag", "care.skip.bag")
_ASIDE = (
    ("care.prep.mark", "care.skip.mark"),
    ("care.prep.keep_shut", "care.skip.keep_shut"),
)
_FACING = (Applies.BARRIER_OUTWARD, Applies.BARRIER_INWARD)


def prepare(case: Case, fate: Fate, *, sealed: bool, wet: Ground | None) -> tuple[Step, ...]:
    """List the steps in order: to put aside what is sealed, or to make ready what is washed.

    Args:
        wet: the ground for leak-proof bags where body fluids are on it.
    """
    if fate is Fate.WASH:
        return tuple(
            _step(case.kind.id, step, _ground(case, step.applies, case.terms))
            for step in list_preparation(case.kind, case.terms)
        )
    return _put_aside(wet) if sealed else ()


@lru_cache(maxsize=4096)
def _step(kind: KindId, step: Preparation, ground: Ground) -> Step:
    return Step(
        act=step.act,
        skipped=step.skipped,
        reason=reason(Bearing.REQUIRES, "care.prep.before_wash", ground, kind=kind),
    )


def _ground(case: Case, applies: Applies, terms: CareTerms) -> Ground:
    """Cite the maker where the maker decides between two ways; otherwise common practice."""
    if applies in _ASSEMBLED and terms.assembled.ground:
        return terms.assembled.ground
    if applies in _FACING and terms.barrier_outward.ground:
        return terms.barrier_outward.ground
    return case.kind.ground


@lru_cache(maxsize=64)
def _put_aside(wet: Ground | None) -> tuple[Step, ...]:
    why = reason(Bearing.REQUIRES, "care.prep.put_aside", wet or practice("seal"))
    return tuple(
        Step(act=MessageId(act), skipped=MessageId(skipped), reason=why)
        for act, skipped in (_LEAK_PROOF if wet else _ANY_BAG, *_ASIDE)
    )
