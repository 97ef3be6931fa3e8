"""Which figures do the shipped tables of assumptions and of published reductions hold?"""

import json
import tomllib
from functools import cache
from importlib.resources import files
from typing import TypeVar

from sootline.core.basis import Assumptions
from sootline.core.job.codec import decode
from sootline.core.machines import Reductions

_T = TypeVar("_T")


@cache
def load_assumptions() -> Assumptions:
    """Read what estimates of washing and drying rest on."""
    return _read(Assumptions, "assumptions.toml")


@cache
def load_reductions() -> Reductions:
    """Read what studies report of each step."""
    return _read(Reductions, "reductions.toml")


def _read(form: type[_T], name: str) -> _T:
    table = files("sootline").joinpath("rules", "practice", name)
    return decode(form, json.dumps(tomllib.loads(table.read_text(encoding="utf-8"))))
