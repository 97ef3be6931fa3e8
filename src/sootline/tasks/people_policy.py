"""How are people known at a screen here: how long, how many digits, which entries are their own?"""

import datetime as dt
from dataclasses import dataclass

from sootline.core.basis import BadInputError, Fault, MessageId


@dataclass(frozen=True, kw_only=True)
class PolicyLine:
    """One value of the policy.

    Args:
        least, most: what a department may choose from; None where the shipped line stands.
    """

    id: str
    value: int
    least: int | None = None
    most: int | None = None
    unit: str = ""
    source: str = ""
    confidence: str = ""


@dataclass(frozen=True, kw_only=True)
class PolicyTable:
    """Lines of a policy, as a file holds them."""

    line: tuple[PolicyLine, ...]


@dataclass(frozen=True, kw_only=True)
class PeoplePolicy:
    """The values that count.

    Args:
        idle: after which what was begun by a name at a station device is closed.
        pin_digits: the fewest digits of a PIN.
        own_entry: how long an entry is its writer's own to put right.
        session: after which everybody signs in anew.
    """

    idle: dt.timedelta
    pin_digits: int
    own_entry: dt.timedelta
    session: dt.timedelta


def settle_policy(shipped: PolicyTable, own: PolicyTable | None = None) -> PeoplePolicy:
    """Return the policy: the department's values where it has its own, else the shipped ones.

    Raises:
        BadInputError: with every line of the department's that is not known, or out of its range.
    """
    lines = {line.id: line for line in shipped.line}
    faults: list[Fault] = []
    values = {line.id: line.value for line in shipped.line}
    for line in own.line if own else ():
        known = lines.get(line.id)
        if known is None:
            faults.append(_fault(line, "accounts.policy.unknown", ", ".join(lines)))
        elif not (known.least or 0) <= line.value <= (known.most or line.value):
            faults.append(_fault(line, "accounts.policy.range", f"{known.least}–{known.most}"))
        else:
            values[line.id] = line.value
    if faults:
        raise BadInputError(faults)
    return PeoplePolicy(
        idle=dt.timedelta(minutes=values["device.idle_min"]),
        pin_digits=values["pin.digits"],
        own_entry=dt.timedelta(hours=values["entry.own_h"]),
        session=dt.timedelta(hours=values["session.whole_h"]),
    )


def _fault(line: PolicyLine, message: str, known: str) -> Fault:
    values = (("value", str(line.value)), ("known", known))
    return Fault(place=line.id, message=MessageId(message), values=values)
