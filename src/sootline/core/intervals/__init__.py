"""Due days and first days out, over dates that may be known only in part."""

from sootline.core.intervals.dues import Due, Matter, Standing
from sootline.core.intervals.retirement import made_when, set_first_day_out
from sootline.core.intervals.schedule import cleaning_reasons, list_due

__all__ = [
    "Due",
    "Matter",
    "Standing",
    "cleaning_reasons",
    "list_due",
    "made_when",
    "set_first_day_out",
]
