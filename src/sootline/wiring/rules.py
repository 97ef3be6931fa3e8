"""Which rule texts answer?"""

from sootline.files.rules import RuleFiles, read_policy
from sootline.tasks.ports import Rules

RULES: Rules = RuleFiles()

__all__ = ["RULES", "read_policy"]
