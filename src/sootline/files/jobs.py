"""Which job does a file hold?"""

from collections.abc import Mapping
from pathlib import Path

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.job.checks import check_job
from sootline.core.job.codec import decode
from sootline.core.job.jobs import Job
from sootline.files.reading import parse_json, read_text


def read_job(path: Path) -> Job:
    """Read a job from a file, whole.

    Raises:
        BadInputError: with every fault of the first kind found: unreadable file, no JSON, fields
            or values that do not fit, things named that are not there.
    """
    return to_job(read_text(path), name=path.name)


def to_job(text: str, *, name: str = "job") -> Job:
    """Read a job from its text; errors as `read_job`."""
    parse_json(text, name=name)
    return check_job(decode(Job, text))


def read_part(path: Path) -> Mapping[str, object]:
    """Read a part of a job: an object holding some of its fields.

    Raises:
        BadInputError: unreadable, no JSON, or not an object.
    """
    part = parse_json(read_text(path), name=path.name)
    if not isinstance(part, dict):
        raise BadInputError([Fault(place=path.name, message=MessageId("job.part_no_object"))])
    return part
