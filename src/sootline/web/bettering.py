"""Is a better plan looked for, and how far is that: how many of the given seconds are spent?"""

from dataclasses import dataclass
from uuid import uuid4

from django.http import HttpRequest

from sootline.core.basis import MemberId
from sootline.core.ledger.kinds import Established
from sootline.tasks.errands import Errand, ErrandKind, Wish
from sootline.tasks.plan_wash import PlanResult
from sootline.web.reports import actor_of
from sootline.wiring.errands import errands

_GIVEN_S = 30


@dataclass(frozen=True, kw_only=True)
class Bettering:
    """The search for a better plan, as the wash room shows it.

    Args:
        mark: names the plan that is on the page; another one makes the page old.
    """

    errand: Errand
    mark: str


def ask_better(request: HttpRequest) -> None:
    """Ask for a better plan than the one just made."""
    user = request.user
    said = {
        "established": getattr(user, "established", Established.SIGNED_IN).value,
        "device": str(getattr(user, "device", "browser")),
    }
    wish = Wish(
        kind=ErrandKind.IMPROVE,
        by=MemberId(actor_of(request)),
        station=_station(request),
        total=_GIVEN_S,
        said=said,
        key=f"better-{request.POST.get('key', '')[:64] or uuid4().hex}",
    )
    errands().ask(wish)


def bettering(request: HttpRequest, plan: PlanResult | None) -> Bettering | None:
    """Return the search for a plan better than this; None where nobody asked for one."""
    errand = errands().newest(ErrandKind.IMPROVE, _station(request))
    if errand is None or plan is None or errand.asked_at < plan.aim.start:
        return None
    return Bettering(errand=errand, mark=mark_of_plan(plan))


def mark_of_plan(plan: PlanResult) -> str:
    """Name a plan among those for one aim."""
    return f"{plan.plan.objective}-{plan.plan.makespan}-{len(plan.worksheet.loads)}"


def _station(request: HttpRequest) -> str | None:
    return getattr(request.user, "station", "") or None
