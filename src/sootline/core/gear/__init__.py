"""Kinds, labels, the terms of care, the state of a component, sets as views."""

from sootline.core.gear.catalogue import KINDS, find_kind
from sootline.core.gear.components import Component
from sootline.core.gear.events import Event, EventKind, Refusal
from sootline.core.gear.kinds import (
    Applies,
    DryMethod,
    Element,
    Kind,
    Layer,
    Preparation,
    WashMethod,
)
from sootline.core.gear.labels import Act, CareText, Guide, Label
from sootline.core.gear.preparing import list_preparation
from sootline.core.gear.resolve import resolve_months, resolve_terms
from sootline.core.gear.sets import ElementView, Lacking, SetView, view_sets
from sootline.core.gear.state import Assembly, CareStage, Custody, Hold, Life, State
from sootline.core.gear.terms import (
    Ban,
    CareTerms,
    ResolvedFlag,
    ResolvedInterval,
    ResolvedLimit,
    ResolvedMethod,
    Voice,
)
from sootline.core.gear.transitions import apply

__all__ = [
    "KINDS",
    "Act",
    "Applies",
    "Assembly",
    "Ban",
    "CareStage",
    "CareTerms",
    "CareText",
    "Component",
    "Custody",
    "DryMethod",
    "Element",
    "ElementView",
    "Event",
    "EventKind",
    "Guide",
    "Hold",
    "Kind",
    "Label",
    "Lacking",
    "Layer",
    "Life",
    "Preparation",
    "Refusal",
    "ResolvedFlag",
    "ResolvedInterval",
    "ResolvedLimit",
    "ResolvedMethod",
    "SetView",
    "State",
    "Voice",
    "WashMethod",
    "apply",
    "find_kind",
    "list_preparation",
    "resolve_months",
    "resolve_terms",
    "view_sets",
]
