"""Repairs: what work a flaw takes, where it is done, and what it costs against what is left."""

from sootline.core.upkeep.repairs.facts import Choice, Decided, Price, Repair
from sootline.core.upkeep.repairs.weighing import Weighing, Worth, weigh_repair
from sootline.core.upkeep.repairs.works import Work, WorkPlace, place_work, work_of

__all__ = [
    "Choice",
    "Decided",
    "Price",
    "Repair",
    "Weighing",
    "Work",
    "WorkPlace",
    "Worth",
    "place_work",
    "weigh_repair",
    "work_of",
]
