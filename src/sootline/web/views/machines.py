"""Are the washers set within every limit, how fast may a drum spin, and what does a load cost?"""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from sootline.core.basis import Quantity, UnreadableValueError
from sootline.core.job.jobs import Job
from sootline.core.machines import CostKind, reckon_cost
from sootline.core.machines.bath_sheet import BathAsked, reckon_bath
from sootline.core.machines.spin_sheet import SpinAsked, reckon_spin
from sootline.web.answers import answers_of
from sootline.web.entries.costs import COVERS, ROWS, CostForm
from sootline.web.entries.readings import DEGREES, BathForm, ResultForm
from sootline.web.kept_readings import Kept, ReadingForm, keep_reading
from sootline.web.reading.machines import read_bath, read_costs, read_machines
from sootline.wiring.practice import load_assumptions

_GET_POST = require_http_methods(["GET", "HEAD", "POST"])


@_GET_POST
def machines(request: HttpRequest) -> HttpResponse:
    """Show every programme with its findings; take what was read in a bath, or a result."""
    answers, what = answers_of(request), request.POST.get("what", "")
    programmes = _programmes(answers.job)
    forms: dict[str, ReadingForm] = {
        "bath": BathForm(programmes, request.POST),
        "result": ResultForm(request.POST),
    }
    form = forms.get(what)
    kept = Kept()
    if form is not None:
        kept = keep_reading(request, form, answers.job, f"machine.screen.kept_{what}")
    if kept.done:
        return redirect("machines")
    facts = {
        "shown": read_machines(answers.job, answers.machines, load_assumptions()),
        "results": answers.job.readings.laboratory,
        "programmes": programmes,
        "degrees": DEGREES,
        "form": form,
        "what": what,
        "question": kept.question,
        "asked": request.GET,
        **_spin(request),
        **_bath(request),
    }
    return render(request, "machines/machines.html", facts, status=422 if form else 200)


@_GET_POST
def costs(request: HttpRequest) -> HttpResponse:
    """Show what a load and a set cost at the department's prices; take a new sheet of them."""
    job = answers_of(request).job
    form = CostForm(request.POST) if request.method == "POST" else None
    kept = Kept()
    if form is not None:
        kept = keep_reading(request, form, job, "machine.screen.kept_costs")
    if kept.done:
        return redirect("costs")
    sheet = job.readings.costs
    facts = {
        "sheet": sheet,
        "shown": sheet and read_costs(sheet, reckon_cost(sheet)),
        "rows": [(kind.value, unit, per) for kind, unit, per in ROWS],
        "covers": [CostKind(one).value for one in COVERS],
        "form": form,
        "question": kept.question,
    }
    return render(request, "machines/costs.html", facts, status=422 if form else 200)


def _programmes(job: Job) -> list[str]:
    return [
        f"{washer.id} · {programme.id}"
        for washer in job.wash_room.washers
        for programme in washer.programmes
    ]


def _spin(request: HttpRequest) -> dict[str, object]:
    """Reckon the drum that was asked about in the address, if any was."""
    if not request.GET.get("diameter"):
        return {}
    speed = request.GET.get("speed", "").strip()
    try:
        asked = SpinAsked(
            diameter=Quantity.parse(request.GET["diameter"]),
            limit=Quantity.parse(request.GET.get("limit", "")),
            speed=Quantity.parse(f"{speed} rpm") if speed else None,
        )
        sheet = reckon_spin(asked, load_assumptions())
    except UnreadableValueError as error:
        return {"spin_fault": error}
    return {"spin": sheet, "percent": f"{sheet.spread * 100:.1f}"}


def _bath(request: HttpRequest) -> dict[str, object]:
    """Reckon the bath that was asked about in the address, if any was."""
    given = request.GET
    if not given.get("water"):
        return {}
    hardness = given.get("hardness", "").strip()
    try:
        asked = BathAsked(
            water=Quantity.parse(given["water"]),
            load=Quantity.parse(given.get("load", "")),
            inlet=Quantity.parse(given.get("inlet", "")),
            bath=Quantity.parse(given.get("to", "")),
            hardness=Quantity.parse(hardness) if hardness else None,
            spun="unspun" not in given,
        )
        sheet = reckon_bath(asked, load_assumptions())
    except UnreadableValueError as error:
        return {"bath_fault": error}
    return {"bath": read_bath(sheet)}
