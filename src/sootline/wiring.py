"""Which files answer the ports, when everything works from files?

The one place where commands meet what reads and writes; each name below is bound here only.
"""

from sootline.files.jobs import read_job, read_part, to_job
from sootline.files.rules import RuleFiles, read_policy
from sootline.tasks.ports import Rules

RULES: Rules = RuleFiles()

__all__ = ["RULES", "read_job", "read_part", "read_policy", "to_job"]
