"""Which incident codes are known, and which question does each raise?

A short table of our own; the codes themselves are public facts. Source: a public lookup table of
the 178 NFIRS 5.0 codes; "110" existed for conversion only (value from memory). NERIS: incident
types read in July 2025 and June 2026; branches not listed here are taken as given.
"""

from enum import StrEnum


class Question(StrEnum):
    """What a code makes us ask."""

    SMOKE = "smoke"
    ENSEMBLE = "ensemble"
    BLOOD = "blood"
    HAZARDOUS = "hazardous"
    ELECTRICAL = "electrical"
    WORN = "worn"


def _codes(*spans: str) -> frozenset[str]:
    """Write out spans of codes ("111-118")."""
    return frozenset(
        str(number) for span in spans for number in range(int(span[:3]), int(span[-3:]) + 1)
    )


_FIRE = _codes("100", "110-118", "120-123", "130-138", "150-155", "160-164")
_PLANTS = _codes("140-143", "170-173")
_PRESSURE = _codes("200", "210-213", "220-223", "231", "240-244", "251")
_RESCUE = _codes(
    "300", "311", "320-324", "331", "340-343", "350-357", "360-365", "370-372", "381"
)  # fmt: skip
_HAZARDOUS = _codes("400", "410-413", "420-424", "430-431", "451", "471")
_ELECTRICAL = _codes("440-445")
_OTHER_DANGER = _codes("460-463", "480-482")
_SERVICE = _codes(
    "500", "510-512", "520-522", "531", "540-542", "550-555", "561", "571", "600", "611",
    "621-622", "631-632", "641", "650-653", "661", "671-672", "700", "710-715", "721", "730-736",
    "740-746", "751", "800", "811-815", "900", "911",
)  # fmt: skip

NFIRS_SERIES = (
    _FIRE, _PLANTS, _PRESSURE, _RESCUE, _HAZARDOUS, _ELECTRICAL, _OTHER_DANGER, _SERVICE,
)  # fmt: skip
NFIRS_QUESTIONS: tuple[tuple[frozenset[str], tuple[Question, ...]], ...] = (
    (_FIRE | _PRESSURE, (Question.SMOKE,)),
    (_PLANTS, (Question.ENSEMBLE, Question.SMOKE)),
    (_RESCUE, (Question.BLOOD,)),
    (_HAZARDOUS, (Question.HAZARDOUS,)),
    (_ELECTRICAL, (Question.ELECTRICAL, Question.SMOKE)),
    (_OTHER_DANGER, (Question.HAZARDOUS, Question.BLOOD)),
)

# The list of 2025 and the interface of 2026 spell one word differently.
RESPELLED = {"BACKOUNTRY_RESCUE": "BACKCOUNTRY_RESCUE"}

TYPE_TOPS = frozenset(
    ("FIRE", "HAZSIT", "LAWENFORCE", "MEDICAL", "NOEMERG", "PUBSERV", "RESCUE")
)  # fmt: skip
TYPE_LEAVES: dict[tuple[str, ...], tuple[str, ...]] = {
    ("FIRE",): ("STRUCTURE_FIRE", "OUTSIDE_FIRE", "SPECIAL_FIRE", "TRANSPORTATION_FIRE"),
    ("FIRE", "STRUCTURE_FIRE"): (
        "STRUCTURAL_INVOLVEMENT_FIRE",
        "ROOM_AND_CONTENTS_FIRE",
        "CONFINED_COOKING_APPLIANCE_FIRE",
        "CHIMNEY_FIRE",
    ),
    ("FIRE", "SPECIAL_FIRE"): ("ESS_FIRE", "EXPLOSION", "INFRASTRUCTURE_FIRE"),
    ("HAZSIT",): ("HAZARDOUS_MATERIALS", "HAZARD_NONCHEM", "OVERPRESSURE", "INVESTIGATION"),
    ("HAZSIT", "HAZARDOUS_MATERIALS"): (
        "FUEL_SPILL_ODOR",
        "GAS_LEAK_ODOR",
        "CARBON_MONOXIDE_RELEASE",
        "BIOLOGICAL_RELEASE_INCIDENT",
        "RADIOACTIVE_RELEASE_INCIDENT",
        "HAZMAT_RELEASE_TRANSPORT",
        "HAZMAT_RELEASE_FACILITY",
    ),
    ("HAZSIT", "INVESTIGATION"): ("ODOR", "SMOKE_INVESTIGATION"),
    ("NOEMERG",): ("FALSE_ALARM", "GOOD_INTENT", "CANCELLED"),
}
TYPE_QUESTIONS: dict[tuple[str, ...], tuple[Question, ...]] = {
    ("FIRE",): (Question.SMOKE,),
    ("FIRE", "OUTSIDE_FIRE"): (Question.ENSEMBLE, Question.SMOKE),
    ("HAZSIT",): (Question.HAZARDOUS,),
    ("HAZSIT", "INVESTIGATION"): (Question.SMOKE,),
    ("HAZSIT", "HAZARD_NONCHEM"): (Question.ELECTRICAL, Question.SMOKE),
    ("MEDICAL",): (Question.BLOOD,),
    ("RESCUE",): (Question.BLOOD,),
    ("LAWENFORCE",): (Question.BLOOD, Question.HAZARDOUS),
    ("NOEMERG",): (Question.WORN,),
    ("PUBSERV",): (Question.WORN,),
}
