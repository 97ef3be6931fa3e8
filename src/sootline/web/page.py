"""What does every page have: language, light, the way through the app, where one is on it?"""

from dataclasses import dataclass
from uuid import uuid4

from django.conf import settings
from django.http import HttpRequest
from django.utils.functional import SimpleLazyObject

from sootline.web.answers import answers_of
from sootline.web.reports import who_of
from sootline.web.tongue import Light, language_of, light_of
from sootline.words import languages


@dataclass(frozen=True, kw_only=True)
class Stop:
    """One stop of the navigation.

    Args:
        route: its address by name.
        icon: its sign; the stops beyond the way have none.
        here: names of the routes that belong to it.
    """

    route: str
    icon: str = ""
    here: tuple[str, ...] = ()

    @property
    def label(self) -> str:
        """The message of its label."""
        return f"web.nav.{self.route}"


# The way of the gear, then what is looked up.
WAY = (
    Stop(route="front", icon="hook", here=("front",)),
    Stop(
        route="call",
        icon="call",
        here=(
            "call",
            "call-one",
            "call-person",
            "call-hazards",
            "call-guests",
            "guests",
            "needs",
            "hold",
        ),
    ),
    Stop(
        route="wash",
        icon="washer",
        here=("wash", "wash-load", "wash-changed", "drying", "machines", "costs"),
    ),
    Stop(
        route="check",
        icon="check",
        here=("check", "check-one", "check-then", "check-build"),
    ),
)
BEYOND = (
    Stop(route="pieces", here=("pieces", "piece", "piece-soil")),
    Stop(route="people", here=("people", "person", "person-new")),
    Stop(route="due", here=("due", "due-today", "due-month")),
    Stop(
        route="between",
        here=(
            "between",
            "inspect",
            "inspect-plan",
            "inspect-day",
            "inspect-one",
            "inspect-typed",
            "repairs",
            "repair",
            "contractor",
            "shipment-send",
            "shipment",
            "shipment-invoice",
            "recalls",
            "recall-new",
            "recall",
            "stores",
            "fit",
            "fit-measure",
        ),
    ),
    Stop(route="pocket", here=("pocket", "question")),
    Stop(route="handover", here=("handover",)),
    Stop(route="paper", here=("paper",)),
    Stop(route="rules", here=("rules", "rules-compare")),
    Stop(route="history", here=("history", "history-verify")),
)


def page(request: HttpRequest) -> dict[str, object]:
    """Return what the frame of every page shows."""
    match = request.resolver_match
    light = light_of(request)
    return {
        "lang": language_of(request),
        "light": light.value,
        "lights": [one.value for one in Light],
        "tongues": languages(),
        "demo": settings.DEMO,
        "station_device": getattr(request, "station_device", None),
        "way": WAY,
        "beyond": BEYOND,
        "beyond_routes": [*(name for stop in BEYOND for name in stop.here), "more"],
        "fresh_key": uuid4().hex,
        "who": who_of(request),
        "position": SimpleLazyObject(lambda: answers_of(request).desk.position),
        "route": match.url_name if match else "",
    }
