"""Who was where in what, what met each component, and how well is that known?"""

from sootline.core.exposure.calls import (
    Answer,
    Building,
    Call,
    Decon,
    DeconMethod,
    Done,
    Hazard,
    Presence,
    Remark,
    Survey,
    Zone,
)
from sootline.core.exposure.codes import CodeForm, IncidentCode, ask_about, read_code
from sootline.core.exposure.grade import grade_exposure
from sootline.core.exposure.grades import SMOKE, Exposure
from sootline.core.exposure.wearing import Wearing, find_wearings

__all__ = [
    "SMOKE",
    "Answer",
    "Building",
    "Call",
    "CodeForm",
    "Decon",
    "DeconMethod",
    "Done",
    "Exposure",
    "Hazard",
    "IncidentCode",
    "Presence",
    "Remark",
    "Survey",
    "Wearing",
    "Zone",
    "ask_about",
    "find_wearings",
    "grade_exposure",
    "read_code",
]
