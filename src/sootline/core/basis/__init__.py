"""Dates as spans, quantities as entered, findings with their ground, ids, errors."""

from sootline.core.basis.assumptions import Assumption, Assumptions
from sootline.core.basis.bands import Band
from sootline.core.basis.errors import BadInputError, Fault, SootlineError, UnreadableValueError
from sootline.core.basis.findings import Bearing, Confidence, Finding, Ground, finding
from sootline.core.basis.ids import (
    BagId,
    CallId,
    ComponentId,
    ContaminantId,
    DeviceId,
    EditionId,
    GuideId,
    InstallationId,
    ItemId,
    KindId,
    MachineId,
    MemberId,
    MessageId,
    PlaceId,
    RuleId,
    SetId,
)
from sootline.core.basis.intervals import MinuteSpan
from sootline.core.basis.moments import Moment, require_offset
from sootline.core.basis.quantities import (
    AtMostForm,
    Limit,
    Quantity,
    Side,
    Standing,
    parse_limit,
    quantity,
)
from sootline.core.basis.spans import DateSpan, Reading, add_months
from sootline.core.basis.text import MappingForm, Schema, TextForm, document_form

__all__ = [
    "Assumption",
    "Assumptions",
    "AtMostForm",
    "BadInputError",
    "BagId",
    "Band",
    "Bearing",
    "CallId",
    "ComponentId",
    "Confidence",
    "ContaminantId",
    "DateSpan",
    "DeviceId",
    "EditionId",
    "Fault",
    "Finding",
    "Ground",
    "GuideId",
    "InstallationId",
    "ItemId",
    "KindId",
    "Limit",
    "MachineId",
    "MappingForm",
    "MemberId",
    "MessageId",
    "MinuteSpan",
    "Moment",
    "PlaceId",
    "Quantity",
    "Reading",
    "RuleId",
    "Schema",
    "SetId",
    "Side",
    "SootlineError",
    "Standing",
    "TextForm",
    "UnreadableValueError",
    "add_months",
    "document_form",
    "finding",
    "parse_limit",
    "quantity",
    "require_offset",
]
