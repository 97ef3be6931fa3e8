"""Washers as they are set: spin, bath, detergent, rinses, moisture left, costs."""

from sootline.core.machines.costs import Cost, CostItem, CostKind, CostSheet, Price, reckon_cost
from sootline.core.machines.detergents import (
    Detergent,
    DoseRow,
    hardness_class,
    soap_bound_g,
)
from sootline.core.machines.drums import Drum, SpinSpeed, loading_lb_ft3, volume_l
from sootline.core.machines.heating import heating_kwh
from sootline.core.machines.in_force import limits_in_force, resolved, stricter_labels
from sootline.core.machines.moisture import (
    Moisture,
    WeighedSpin,
    moisture_after,
    scale_moisture,
    weighed_share,
)
from sootline.core.machines.programme_check import (
    BathReading,
    Setting,
    WashLimits,
    check_programme,
)
from sootline.core.machines.reductions import (
    Act,
    LabResult,
    Measured,
    Method,
    Published,
    ReductionEvent,
    ReductionRecord,
    Reductions,
    lay_out_reductions,
)
from sootline.core.machines.rinsing import RinseCount, carry_over, count_rinses
from sootline.core.machines.spin import (
    force_g,
    highest_speed_rpm,
    set_point_g,
    speed_rpm,
    spread_of_g,
)
from sootline.core.machines.wash_count import mark_washes

__all__ = [
    "Act",
    "BathReading",
    "Cost",
    "CostItem",
    "CostKind",
    "CostSheet",
    "Detergent",
    "DoseRow",
    "Drum",
    "LabResult",
    "Measured",
    "Method",
    "Moisture",
    "Price",
    "Published",
    "ReductionEvent",
    "ReductionRecord",
    "Reductions",
    "RinseCount",
    "Setting",
    "SpinSpeed",
    "WashLimits",
    "WeighedSpin",
    "carry_over",
    "check_programme",
    "count_rinses",
    "force_g",
    "hardness_class",
    "heating_kwh",
    "highest_speed_rpm",
    "lay_out_reductions",
    "limits_in_force",
    "loading_lb_ft3",
    "mark_washes",
    "moisture_after",
    "reckon_cost",
    "resolved",
    "scale_moisture",
    "set_point_g",
    "soap_bound_g",
    "speed_rpm",
    "spread_of_g",
    "stricter_labels",
    "volume_l",
    "weighed_share",
]
