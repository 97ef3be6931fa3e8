"""A department's own list of gear, taken in whole or refused whole."""

from sootline.core.roster.columns import Column, Field, Mapping, suggest_columns
from sootline.core.roster.dates import DateOrder
from sootline.core.roster.duplicates import LikelyDuplicate
from sootline.core.roster.reading import Intake, Wearer, read_list
from sootline.core.roster.statuses import STATUSES
from sootline.core.roster.tables import Row, Table, fault, list_ground
from sootline.core.roster.text import folded, marked, unmarked
from sootline.core.roster.worklist import (
    Choice,
    Decision,
    DecisionRecord,
    Missing,
    MissingFact,
)

__all__ = [
    "STATUSES",
    "Choice",
    "Column",
    "DateOrder",
    "Decision",
    "DecisionRecord",
    "Field",
    "Intake",
    "LikelyDuplicate",
    "Mapping",
    "Missing",
    "MissingFact",
    "Row",
    "Table",
    "Wearer",
    "fault",
    "folded",
    "list_ground",
    "marked",
    "read_list",
    "suggest_columns",
    "unmarked",
]
