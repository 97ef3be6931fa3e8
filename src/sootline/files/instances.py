"""Does a file hold a job, or the neutral form of a planning problem?"""

from pathlib import Path

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.job.codec import decode
from sootline.core.job.jobs import Job
from sootline.core.washplan.instance import Instance
from sootline.files.jobs import to_job
from sootline.files.reading import parse_json, read_text


def read_question(path: Path) -> Job | Instance:
    """Read a planning question; its kind is read from its content.

    Raises:
        BadInputError: unreadable, neither kind, or with faults of its own kind.
    """
    text = read_text(path)
    document = parse_json(text, name=path.name)
    fields = document.keys() if isinstance(document, dict) else ()
    if "department" in fields:
        return to_job(text, name=path.name)
    if "pieces" in fields or "washers" in fields:
        return decode(Instance, text)
    raise BadInputError([Fault(place=path.name, message=MessageId("job.neither"))])
