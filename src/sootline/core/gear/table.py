"""Which event leads from where to where, and what stands in its way? The one table.

Source: common practice, no published source.
"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.gear.events import EventKind
from sootline.core.gear.state import CareStage, Custody, Life


class Obstacle(StrEnum):
    """What stands in the way of an event; the first six are looked for row by row."""

    OPEN_HOLD = "open_hold"
    NO_NAME = "no_name"
    NOT_ENTITLED = "not_entitled"
    HOLD_ALREADY = "hold_already"
    NOT_INVESTIGATOR = "not_investigator"
    NOT_TOGETHER = "not_together"
    DISPOSED = "disposed"
    RETIRED = "retired"
    NOT_RETIRED = "not_retired"
    EVIDENCE = "evidence"
    NOT_CHECKED = "not_checked"
    NOT_FROM_HERE = "not_from_here"


@dataclass(frozen=True, kw_only=True)
class Transition:
    """One row: an event, from which states it leads on, what is in its way, what it changes.

    Args:
        stages, custodies, lives: where the component may be for this row to count.
        stage, custody, life: what it is afterwards; None leaves it as it was.
    """

    event: EventKind
    stages: frozenset[CareStage]
    custodies: frozenset[Custody]
    lives: frozenset[Life]
    obstacles: tuple[Obstacle, ...]
    stage: CareStage | None
    custody: Custody | None
    life: Life | None

    def starts(self, stage: CareStage, custody: Custody, life: Life) -> bool:
        """Whether the row counts for a component that is there."""
        return stage in self.stages and custody in self.custodies and life in self.lives


S, C, L, E, G = CareStage, Custody, Life, EventKind, Obstacle

HERE = frozenset({C.HOOK, C.MEMBER, C.SPARE_RACK, C.BAG, C.WASH_ROOM})
UNBAGGED = HERE - {C.BAG}
WASH_ROOM = frozenset({C.WASH_ROOM})
ANYWHERE = frozenset(C)
ANY_STAGE = frozenset(S)
NOT_RUNNING = ANY_STAGE - {S.IN_WASHER}
NOT_CHECKED = NOT_RUNNING - {S.CHECKED}
CHECKED = frozenset({S.CHECKED})
USED = frozenset({L.IN_SERVICE, L.RESERVE, L.TRAINING_ONLY})
ISSUED = frozenset({L.IN_SERVICE, L.TRAINING_ONLY})
KEPT = USED | {L.RETIRED}
RETIRED = frozenset({L.RETIRED})


def _row(
    event: EventKind,
    stages: frozenset[CareStage] | CareStage,
    custodies: frozenset[Custody] | Custody,
    *obstacles: Obstacle,
    lives: frozenset[Life] = USED,
    stage: CareStage | None = None,
    custody: Custody | None = None,
    life: Life | None = None,
) -> Transition:
    return Transition(
        event=event,
        stages=frozenset({stages}) if isinstance(stages, CareStage) else stages,
        custodies=frozenset({custodies}) if isinstance(custodies, Custody) else custodies,
        lives=lives,
        obstacles=obstacles,
        stage=stage,
        custody=custody,
        life=life,
    )


_WEAR = (
    _row(E.ISSUED, CHECKED, UNBAGGED, G.OPEN_HOLD, custody=C.MEMBER, lives=frozenset({L.RESERVE}),
         life=L.IN_SERVICE),
    _row(E.ISSUED, CHECKED, UNBAGGED, G.OPEN_HOLD, custody=C.MEMBER, lives=ISSUED),
    # Worn is a fact, also on hold or wet: it is recorded without blame, and the hold stays.
    _row(E.WORN, NOT_RUNNING, HERE | {C.NOT_SEEN}, stage=S.WORN, custody=C.MEMBER,
         lives=frozenset({L.RESERVE}), life=L.IN_SERVICE),
    _row(E.WORN, NOT_RUNNING, HERE | {C.NOT_SEEN}, stage=S.WORN, custody=C.MEMBER, lives=ISSUED),
    _row(E.WORN, NOT_RUNNING, C.LOAN, stage=S.WORN),
    _row(E.LOOKED_OVER, S.WORN, UNBAGGED, G.OPEN_HOLD, G.NO_NAME, stage=S.CHECKED),
    _row(E.RETURNED_SOILED, NOT_RUNNING, UNBAGGED, stage=S.TO_WASH, custody=C.WASH_ROOM),
    _row(E.RETURNED_SOILED, NOT_RUNNING, C.BAG, stage=S.TO_WASH),
    _row(E.BAGGED, NOT_RUNNING, HERE, stage=S.TO_WASH, custody=C.BAG),
)  # fmt: skip

_WASH = (
    _row(E.SORTED, S.TO_WASH, HERE, G.OPEN_HOLD, custody=C.WASH_ROOM),
    _row(E.PUT_IN_WASHER, S.TO_WASH, WASH_ROOM, G.OPEN_HOLD, stage=S.IN_WASHER),
    # A hold may open while the drum turns; that the drum stopped is still a fact.
    _row(E.WASHER_ENDED, S.IN_WASHER, WASH_ROOM, stage=S.WASHED),
    _row(E.WASHER_FAILED, S.IN_WASHER, WASH_ROOM, stage=S.TO_WASH),
    _row(E.WASHED_BY_HAND, S.TO_WASH, WASH_ROOM, G.OPEN_HOLD, G.NO_NAME, stage=S.WASHED),
    _row(E.HUNG, frozenset({S.WASHED, S.DRYING, S.TO_CHECK}), WASH_ROOM, G.OPEN_HOLD,
         stage=S.DRYING),
    _row(E.DRIED, S.DRYING, WASH_ROOM, G.OPEN_HOLD, stage=S.TO_CHECK),
    _row(E.TOUCH_CHECKED, S.TO_CHECK, UNBAGGED, G.OPEN_HOLD, G.NO_NAME, stage=S.CHECKED),
    _row(E.REBUILT, CHECKED, UNBAGGED, G.OPEN_HOLD, G.NO_NAME),
    _row(E.BACK_ON_HOOK, CHECKED, UNBAGGED, G.OPEN_HOLD, G.NOT_TOGETHER, custody=C.HOOK),
    _row(E.BACK_ON_SPARE_RACK, CHECKED, UNBAGGED, G.OPEN_HOLD, G.NOT_TOGETHER,
         custody=C.SPARE_RACK),
)  # fmt: skip

_AWAY = (
    _row(E.SENT_TO_CONTRACTOR, NOT_RUNNING, HERE, G.OPEN_HOLD, custody=C.CONTRACTOR),
    _row(E.RECEIVED_WASHED, ANY_STAGE, C.CONTRACTOR, lives=KEPT, stage=S.TO_CHECK,
         custody=C.WASH_ROOM),
    _row(E.RECEIVED_UNWASHED, ANY_STAGE, C.CONTRACTOR, lives=KEPT, stage=S.TO_WASH,
         custody=C.WASH_ROOM),
    _row(E.SENT_TO_REPAIR, frozenset({S.TO_CHECK, S.CHECKED}), HERE, G.OPEN_HOLD,
         custody=C.REPAIR),
    _row(E.BACK_FROM_REPAIR, ANY_STAGE, C.REPAIR, lives=KEPT, stage=S.TO_CHECK,
         custody=C.WASH_ROOM),
    _row(E.LENT, CHECKED, UNBAGGED, G.OPEN_HOLD, lives=frozenset({L.RESERVE}), custody=C.LOAN,
         life=L.IN_SERVICE),
    _row(E.LENT, CHECKED, UNBAGGED, G.OPEN_HOLD, lives=ISSUED, custody=C.LOAN),
    _row(E.CAME_BACK, CHECKED, C.LOAN, lives=KEPT, stage=S.TO_CHECK, custody=C.WASH_ROOM),
    _row(E.CAME_BACK, NOT_CHECKED, C.LOAN, lives=KEPT, stage=S.TO_WASH, custody=C.WASH_ROOM),
    # What belongs to others goes back as it is, held or soiled, with what is known of it.
    _row(E.HANDED_BACK, NOT_RUNNING, HERE, G.NO_NAME, lives=KEPT, custody=C.LOAN),
    _row(E.LOST_SIGHT, NOT_RUNNING, ANYWHERE - {C.EVIDENCE, C.NOT_SEEN}, lives=KEPT,
         custody=C.NOT_SEEN),
    # Nobody knows where it was meanwhile, and what is not known lowers nothing.
    _row(E.FOUND, CHECKED, C.NOT_SEEN, lives=KEPT, stage=S.TO_CHECK, custody=C.WASH_ROOM),
    _row(E.FOUND, NOT_CHECKED, C.NOT_SEEN, lives=KEPT, stage=S.TO_WASH, custody=C.WASH_ROOM),
)  # fmt: skip

# Retired gear may still be held, secured, lost, found and brought back, until it is disposed of.
_DECIDED = (
    _row(E.HOLD_OPENED, ANY_STAGE, ANYWHERE, G.HOLD_ALREADY, lives=KEPT),
    _row(E.HOLD_RELEASED, ANY_STAGE, ANYWHERE, G.NO_NAME, G.NOT_ENTITLED, lives=KEPT),
    _row(E.EVIDENCE_TAKEN, S.IN_WASHER, ANYWHERE - {C.EVIDENCE}, G.NO_NAME, lives=KEPT,
         stage=S.TO_WASH, custody=C.EVIDENCE),
    _row(E.EVIDENCE_TAKEN, NOT_RUNNING, ANYWHERE - {C.EVIDENCE}, G.NO_NAME, lives=KEPT,
         custody=C.EVIDENCE),
    _row(E.EVIDENCE_RETURNED, CHECKED, C.EVIDENCE, G.NO_NAME, G.NOT_INVESTIGATOR, lives=KEPT,
         stage=S.TO_CHECK, custody=C.WASH_ROOM),
    _row(E.EVIDENCE_RETURNED, NOT_CHECKED, C.EVIDENCE, G.NO_NAME, G.NOT_INVESTIGATOR, lives=KEPT,
         stage=S.TO_WASH, custody=C.WASH_ROOM),
    _row(E.TRAINING_MARKED, ANY_STAGE, ANYWHERE, G.NO_NAME,
         lives=frozenset({L.IN_SERVICE, L.RESERVE}), life=L.TRAINING_ONLY),
    _row(E.RETIRED, NOT_RUNNING, ANYWHERE, G.NO_NAME, life=L.RETIRED),
    _row(E.DISPOSED, NOT_RUNNING, HERE, G.OPEN_HOLD, G.NO_NAME, lives=RETIRED, life=L.DISPOSED),
)  # fmt: skip

TRANSITIONS: tuple[Transition, ...] = (*_WEAR, *_WASH, *_AWAY, *_DECIDED)
