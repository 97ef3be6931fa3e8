"""Which files and clock answer the ports, when everything works from files?

The one place where commands meet what reads and writes; each name below is bound here only.
"""

import time
from collections.abc import Callable

from sootline.files.demo import demo_files, demo_job
from sootline.files.instances import read_question
from sootline.files.jobs import read_job, read_part, to_job
from sootline.files.mapping import mapping_text, read_mapping
from sootline.files.planning_table import load_planning_times
from sootline.files.registers import read_register, register_text
from sootline.files.rules import RuleFiles, read_policy
from sootline.files.tables import Wish, read_table
from sootline.tasks.ports import Rules

RULES: Rules = RuleFiles()

__all__ = [
    "RULES",
    "Wish",
    "demo_files",
    "demo_job",
    "load_planning_times",
    "mapping_text",
    "read_job",
    "read_mapping",
    "read_part",
    "read_policy",
    "read_question",
    "read_register",
    "read_table",
    "register_text",
    "stop_after",
    "to_job",
]


def stop_after(seconds: float) -> Callable[[], bool]:
    """Return what a search asks again and again: are these seconds over?"""
    end = time.monotonic() + seconds
    return lambda: time.monotonic() >= end
