"""Which figures do the shipped tables of assumptions and of published reductions hold?"""

import json
import tomllib
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import TypeVar

from sootline.core.basis import Assumptions
from sootline.core.job.codec import decode
from sootline.core.machines import Reductions
from sootline.files.reading import parse_json, read_text

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


def read_sheet(form: type[_T], path: Path) -> _T:
    """Read a department's own sheet (its prices, a product's label) from a JSON file.

    Raises:
        BadInputError: unreadable, or with every fault of its content.
    """
    text = read_text(path)
    parse_json(text, name=path.name)
    return decode(form, text)
