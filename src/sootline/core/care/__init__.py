"""The least each component needs, what it bears, its holds, its preparation, and why."""

from sootline.core.care.decide import decide_care
from sootline.core.care.decisions import (
    Decision,
    Disinfection,
    Due,
    Fate,
    Separation,
    Step,
)
from sootline.core.care.policy import (
    Appointment,
    BuildingHold,
    CarePolicy,
    Product,
    ProductUse,
)

__all__ = [
    "Appointment",
    "BuildingHold",
    "CarePolicy",
    "Decision",
    "Disinfection",
    "Due",
    "Fate",
    "Product",
    "ProductUse",
    "Separation",
    "Step",
    "decide_care",
]
