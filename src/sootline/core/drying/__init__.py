"""Moist air, the time that gear takes to dry in it as an interval, and when it has ended."""

from sootline.core.drying.calibrating import Calibration, Ratio, calibrate
from sootline.core.drying.capping import judge_heat
from sootline.core.drying.cloths import Cloth, cloth_of
from sootline.core.drying.curves import CurvePoint, LimitPoint, drying_curve, limit_by_humidity
from sootline.core.drying.ending import judge_weight
from sootline.core.drying.estimating import (
    Bound,
    DryingEstimate,
    Surroundings,
    Wetness,
    estimate_drying,
)
from sootline.core.drying.falling import Moistures, drying_hours, moisture_after_hours
from sootline.core.drying.filling import WetPiece
from sootline.core.drying.for_plans import DryingOutlook, PlaceEstimate, estimate_drying_times
from sootline.core.drying.hanging import flux_kg_m2h, surface_c
from sootline.core.drying.logging_loads import compare_loads
from sootline.core.drying.moist_air import MoistAir, moist_air, pressure_pa
from sootline.core.drying.rates import Batch, Blown, free_rate_kg_h
from sootline.core.drying.readings import Fan, LoggedLoad, Readings, RoomAir
from sootline.core.drying.rooms import (
    Remedy,
    RoomBalance,
    RoomDiagnosis,
    balance_room,
    diagnose_room,
)
from sootline.core.drying.streams import Stream, exchanged_kg_h, stream_limit_kg_h

__all__ = [
    "Batch",
    "Blown",
    "Bound",
    "Calibration",
    "Cloth",
    "CurvePoint",
    "DryingEstimate",
    "DryingOutlook",
    "Fan",
    "LimitPoint",
    "LoggedLoad",
    "MoistAir",
    "Moistures",
    "PlaceEstimate",
    "Ratio",
    "Readings",
    "Remedy",
    "RoomAir",
    "RoomBalance",
    "RoomDiagnosis",
    "Stream",
    "Surroundings",
    "WetPiece",
    "Wetness",
    "balance_room",
    "calibrate",
    "cloth_of",
    "compare_loads",
    "diagnose_room",
    "drying_curve",
    "drying_hours",
    "estimate_drying",
    "estimate_drying_times",
    "exchanged_kg_h",
    "flux_kg_m2h",
    "free_rate_kg_h",
    "judge_heat",
    "judge_weight",
    "limit_by_humidity",
    "moist_air",
    "moisture_after_hours",
    "pressure_pa",
    "stream_limit_kg_h",
    "surface_c",
]
