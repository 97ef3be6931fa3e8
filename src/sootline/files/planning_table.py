"""Which planning intervals does a table hold, for what the department has not measured?"""

import json
import tomllib
from importlib.resources import files

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.job.codec import decode
from sootline.core.laundry.planning import PlanningTimes

_OURS = "drying.toml"


def load_planning_times() -> PlanningTimes:
    """Read the table that comes with the package."""
    table = files("sootline").joinpath("rules", "practice", _OURS)
    return read_planning_times(table.read_text(encoding="utf-8"), name=_OURS)


def read_planning_times(text: str, *, name: str) -> PlanningTimes:
    """Read a table of planning intervals from the text of a TOML file.

    Args:
        name: what the file is called where a fault points at it.

    Raises:
        BadInputError: with every fault, each with its place.
    """
    try:
        document = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        values = (("problem", str(error)[:120]),)
        fault = Fault(place=name, message=MessageId("rules.fault.toml"), values=values)
        raise BadInputError([fault]) from None
    return decode(PlanningTimes, json.dumps(document, default=str))
