"""In which deciding offices may somebody act tonight?"""

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from sootline.core.care.policy import Appointment
from sootline.core.rulebook import Decider
from sootline.tasks.rights import Role

_OF_ROLE: Mapping[str, Decider] = MappingProxyType(
    {
        Role.SAFETY_OFFICER.value: Decider.SAFETY_OFFICER,
        Role.INFECTION_OFFICER.value: Decider.INFECTION_CONTROL,
        Role.GEAR_OFFICER.value: Decider.GEAR_OFFICER,
    }
)


def offices_of(
    roles: Iterable[str], member: str, appointments: Iterable[Appointment]
) -> tuple[Decider, ...]:
    """Return the offices of an account, by its roles and by who is appointed tonight.

    Args:
        member: whose account it is.
        appointments: persons and deputies by number, as the department names them.
    """
    found = [_OF_ROLE[role] for role in roles if role in _OF_ROLE]
    found += [one.office for one in appointments if member and member in (one.person, one.deputy)]
    return tuple(dict.fromkeys(found))
