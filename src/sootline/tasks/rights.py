"""Who may do what? Offices on one side, rights on the other; the table is all there is.

Source: common practice, no published source.
"""

from collections.abc import Iterable, Mapping
from enum import StrEnum
from types import MappingProxyType


class Role(StrEnum):
    """An office somebody holds; one person may hold several."""

    MEMBER = "member"
    HELPER = "helper"
    OFFICER = "officer"
    GEAR_OFFICER = "gear-officer"
    SAFETY_OFFICER = "safety-officer"
    INFECTION_OFFICER = "infection-officer"
    INSPECTOR = "inspector"
    AUDITOR = "auditor"
    ADMINISTRATOR = "administrator"


class Right(StrEnum):
    """Something that not everybody may do.

    What a person was exposed to is health data: seeing it is a right of its own, and every look
    is recorded.
    """

    SEE_OWN = "see-own"
    SEE_READINESS = "see-readiness"
    SEE_GEAR = "see-gear"
    SEE_HISTORY = "see-history"
    SEE_EXPOSURE = "see-exposure"
    REPORT = "report"
    WORK_WASH_ROOM = "work-wash-room"
    CHECK = "check"
    MANAGE_GEAR = "manage-gear"
    RECORD_CALLS = "record-calls"
    END_HOLDS = "end-holds"
    CORRECT_OTHERS = "correct-others"
    RETIRE = "retire"
    EXPORT = "export"
    SEE_LOOKS = "see-looks"
    RUN_STATION = "run-station"
    ADMINISTER = "administer"


# What takes a second factor besides the password: whoever may do it could undo or carry off much.
GUARDED = frozenset(
    {Right.CORRECT_OTHERS, Right.RETIRE, Right.EXPORT, Right.RUN_STATION, Right.ADMINISTER}
)
# What a station device may do while nobody has said who is there.
AT_A_DEVICE = frozenset({Right.SEE_READINESS, Right.SEE_GEAR})


_EVERYBODY = frozenset({Right.SEE_OWN, Right.SEE_READINESS, Right.REPORT})
_LOOKS = frozenset({Right.SEE_READINESS, Right.SEE_GEAR, Right.SEE_HISTORY})
_FLOOR = _EVERYBODY | {Right.SEE_GEAR, Right.WORK_WASH_ROOM}
_COMPANY = _FLOOR | {Right.CHECK, Right.RECORD_CALLS, Right.SEE_HISTORY}
_SAFETY = _EVERYBODY | _LOOKS | {Right.SEE_EXPOSURE, Right.END_HOLDS, Right.RECORD_CALLS}

RIGHTS: Mapping[Role, frozenset[Right]] = MappingProxyType(
    {
        Role.MEMBER: _EVERYBODY,
        Role.HELPER: _FLOOR,
        Role.OFFICER: _COMPANY | {Right.RUN_STATION},
        Role.GEAR_OFFICER: _COMPANY
        | {Right.MANAGE_GEAR, Right.END_HOLDS, Right.CORRECT_OTHERS, Right.RETIRE, Right.EXPORT}
        | {Right.RUN_STATION},
        Role.SAFETY_OFFICER: _SAFETY,
        Role.INFECTION_OFFICER: _SAFETY,
        Role.INSPECTOR: _LOOKS | {Right.CHECK},
        Role.AUDITOR: _LOOKS | {Right.SEE_LOOKS},
        Role.ADMINISTRATOR: frozenset({Right.ADMINISTER, Right.RUN_STATION, Right.SEE_OWN}),
    }
)


def may(roles: Iterable[str], right: Right) -> bool:
    """Whether somebody in these offices has a right; an office that is not known gives none."""
    return any(right in RIGHTS[Role(role)] for role in roles if role in set(Role))
