"""Which planning intervals does a table hold, for what the department has not measured?"""

import json
import tomllib
from dataclasses import replace
from importlib.resources import files

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.job.codec import decode
from sootline.core.laundry.planning import PlanningTimes
from sootline.files.practice_tables import load_assumptions

_OURS = "drying.toml"


def load_planning_times() -> PlanningTimes:
    """Read the table that comes with the package, with what estimates of drying rest on."""
    table = files("sootline").joinpath("rules", "practice", _OURS)
    times = read_planning_times(table.read_text(encoding="utf-8"), name=_OURS)
    return replace(times, assumptions=load_assumptions())


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
