"""Which files does the demo department have, and which job do they make?"""

import json
from importlib.resources import files

from sootline.core.job.assemble import assemble
from sootline.core.job.jobs import Job
from sootline.files.jobs import to_job

_PARTS = ("department.json", "gear.json", "last-night.json")


def demo_files() -> tuple[tuple[str, str], ...]:
    """Return the demo department's files by name, as text."""
    folder = files("sootline").joinpath("demo")
    return tuple((name, folder.joinpath(name).read_text(encoding="utf-8")) for name in _PARTS)


def demo_job() -> Job:
    """Put the demo department's files together as one job."""
    whole = assemble([(name, json.loads(text)) for name, text in demo_files()])
    return to_job(json.dumps(whole), name="demo")
