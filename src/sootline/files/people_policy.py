"""Which policy on people do the shipped table and the department's own file make together?"""

import json
import tomllib
from functools import cache
from importlib.resources import files
from pathlib import Path

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.job.codec import decode
from sootline.files.reading import read_text
from sootline.tasks.people_policy import PeoplePolicy, PolicyTable, settle_policy

OWN = "people.toml"


@cache
def read_people_policy(folder: Path) -> PeoplePolicy:
    """Read the policy; a change of the file counts from the next start.

    Args:
        folder: the data directory, where the department's own file may lie.

    Raises:
        BadInputError: the department's file cannot be read, or says something that is not known
            or out of its range.
    """
    shipped = files("sootline").joinpath("rules", "practice", OWN).read_text(encoding="utf-8")
    own = folder / OWN
    if not own.exists():
        return settle_policy(_table(shipped))
    try:
        return settle_policy(_table(shipped), _table(read_text(own)))
    except tomllib.TOMLDecodeError as error:
        values = (("file", OWN), ("reason", str(error)))
        fault = Fault(place=OWN, message=MessageId("accounts.policy.unreadable"), values=values)
        raise BadInputError([fault]) from error


def _table(text: str) -> PolicyTable:
    return decode(PolicyTable, json.dumps(tomllib.loads(text)))
