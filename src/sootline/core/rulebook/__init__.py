"""Rules as values: what each text says, how well that is known, who speaks, what would change."""

from sootline.core.rulebook.books import POLICY, Assembly, Spoken, assemble, voices
from sootline.core.rulebook.compare import Change, Difference, compare_editions
from sootline.core.rulebook.contaminants import ContaminantRule, Decider, Knowledge, Level
from sootline.core.rulebook.documents import RuleForm, write_rule
from sootline.core.rulebook.reading import read_edition, read_rule, read_rules
from sootline.core.rulebook.reading_contaminants import read_contaminants
from sootline.core.rulebook.rules import Edition, EditionStatus, Rule, Rulebook, RuleKind, Value
from sootline.core.rulebook.topics import SCOPES, TOPICS, Topic, looser, value_text

__all__ = [
    "POLICY",
    "SCOPES",
    "TOPICS",
    "Assembly",
    "Change",
    "ContaminantRule",
    "Decider",
    "Difference",
    "Edition",
    "EditionStatus",
    "Knowledge",
    "Level",
    "Rule",
    "RuleForm",
    "RuleKind",
    "Rulebook",
    "Spoken",
    "Topic",
    "Value",
    "assemble",
    "compare_editions",
    "looser",
    "read_contaminants",
    "read_edition",
    "read_rule",
    "read_rules",
    "value_text",
    "voices",
    "write_rule",
]
