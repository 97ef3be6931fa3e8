"""Stores: supplies with a minimum and an expiry, and the machines' log."""

from sootline.core.upkeep.stores.machine_log import (
    Chore,
    ChoreDue,
    LogEntry,
    Routine,
    hold_readings,
    list_chores,
)
from sootline.core.upkeep.stores.supplies import Supply, judge_supplies

__all__ = [
    "Chore",
    "ChoreDue",
    "LogEntry",
    "Routine",
    "Supply",
    "hold_readings",
    "judge_supplies",
    "list_chores",
]
