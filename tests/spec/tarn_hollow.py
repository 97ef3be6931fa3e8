"""The job of Tarn Hollow: 14 sets back at 04:20, one with blood, one washer, six drying places.

An invented department; its numbers are chosen so that the answer can be worked out by hand.
"""

import json

from sootline.core.job.jobs import Job
from sootline.files.jobs import to_job

_PARTS = {
    "coat-shell": "4 lb",
    "trouser-shell": "3.2 lb",
    "coat-liner": "3 lb",
    "trouser-liner": "2 lb",
    "hood": "0.25 lb",
}
_SHELLS, _LINERS = ["coat-shell", "trouser-shell"], ["coat-liner", "trouser-liner"]
_ENDED = {
    "cause": "blood.disinfect/call-1",
    "question": "care.hold.disinfect",
    "decider": "infection-control",
    "deputy": "safety-officer",
    "escalate_after_h": 4,
    "released_by": "infection control, M60",
    "released_at": "2026-02-03T04:15+00:00",
}


def tarn_hollow(goal: str, by: str | None = None) -> Job:
    """Read the job from its document, for one of the goals."""
    members = [f"M{number:02}" for number in range(1, 15)]
    request = {"start": "2026-02-03T04:20:00+00:00", "goal": goal, **({"by": by} if by else {})}
    document = {
        "version": 1,
        "title": "Tarn Hollow",
        "now": "2026-02-03T04:20:00+00:00",
        "department": _department(),
        "members": [{"id": member} for member in members],
        "components": [
            _component(member, kind, mass) for member in members for kind, mass in _PARTS.items()
        ],
        "calls": [_call(members)],
        "wash_room": _wash_room(),
        "request": request,
    }
    return to_job(json.dumps(document))


def _department() -> dict[str, object]:
    return {
        "name": "Tarn Hollow",
        "edition": "nfpa-1851/2020",
        "care": {
            "products": [
                {
                    "name": "fabric sanitiser",
                    "use": "sanitiser",
                    "materials": ["fabric"],
                    "against": ["blood"],
                    "contact_min": 10,
                }
            ]
        },
    }


def _component(member: str, kind: str, mass: str) -> dict[str, object]:
    one: dict[str, object] = {
        "id": f"{kind}-{member}",
        "kind": kind,
        "owner": member,
        "set": f"set-{member}",
        "mass": mass,
    }
    return {**one, "state": {"holds": [_ENDED]}} if member == "M14" else one


def _call(members: list[str]) -> dict[str, object]:
    return {
        "id": "call-1",
        "at": "2026-02-03T01:10:00+00:00",
        "title": "warehouse",
        "people": [
            {"member": member, "zones": ["inside"], "on_air": "yes", "smoke": "yes"}
            for member in members
        ],
        "remarks": [
            {
                "component": f"{kind}-M14",
                "contaminant": "blood",
                "reached_skin": "no",
                "rinsed": "no",
                "said_by": "M14",
            }
            for kind in _PARTS
        ],
    }


def _wash_room() -> dict[str, object]:
    programme = {"id": "gear", "bath_temp": "105 °F", "extraction": "100 G", "minutes": "60 min"}
    cabinet = {"id": "six places", "method": "rack", "places": 6, "holds": "set"}
    return {
        "washers": [{"id": "W1", "limit": "42 lb", "programmes": [programme]}],
        "drying": [
            {**cabinet, "kinds": [*_SHELLS, *_LINERS]},
            {"id": "table", "method": "flat", "places": 1, "kinds": ["hood"]},
        ],
        "drying_times": [
            {"place": "six places", "kinds": _SHELLS, "minutes": "150 min", "measured": True},
            {"place": "six places", "kinds": _LINERS, "minutes": "210 min", "measured": True},
            {"place": "table", "minutes": "60 min", "measured": True},
        ],
        "work_times": [{"prepare": 0, "hand": 0, "check": 0}],
        "load_min": 10,
        "unload_min": 0,
    }
