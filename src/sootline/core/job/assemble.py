"""How do the files a department has become one job?

Each part is an object holding some of a job's fields: the department and its members, the gear,
last night's call. Lists are put together in the order given; any other field may be said once.
"""

from collections.abc import Mapping, Sequence

from sootline.core.basis import BadInputError, Fault, MessageId


def assemble(parts: Sequence[tuple[str, Mapping[str, object]]]) -> dict[str, object]:
    """Put parts together into one document, not yet read as a job.

    Args:
        parts: (file name, object) in order.

    Raises:
        BadInputError: a field that is no list is given by two parts with different values.
    """
    whole: dict[str, object] = {}
    said_by: dict[str, str] = {}
    faults: list[Fault] = []
    for source, part in parts:
        for field, value in part.items():
            before = whole.get(field)
            if field not in whole:
                whole[field], said_by[field] = value, source
            elif isinstance(before, list) and isinstance(value, list):
                whole[field] = [*before, *value]
            elif before != value:
                faults.append(_said_twice(field, said_by[field], source))
    if faults:
        raise BadInputError(faults)
    return whole


def _said_twice(field: str, first: str, second: str) -> Fault:
    values = (("first", first), ("second", second))
    return Fault(place=field, message=MessageId("job.said_twice"), values=values)
