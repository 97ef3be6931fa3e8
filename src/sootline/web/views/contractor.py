"""What goes out to a contractor, what came back, what lacks, what is charged, how long it takes?"""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.safestring import mark_safe
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from sootline.core.basis import ComponentId
from sootline.core.exposure.calls import Answer
from sootline.core.gear import KINDS
from sootline.core.upkeep.contractor import Arrival, Service
from sootline.paper.manifest import print_manifests
from sootline.tasks.check_contractor import ProviderTime, ShipmentResult
from sootline.tasks.year_deeds import Confirmed, YearFact
from sootline.web.answers import Answers, answers_of
from sootline.web.entries.shipment import InvoiceForm, ReceiveForm, SendForm, WordForm
from sootline.web.reading.staying import draw_turnaround
from sootline.web.reports import actor_of, report
from sootline.web.tongue import language_of
from sootline.web.views.paper import as_pdf, page_of
from sootline.wiring.rules import RULES

_GET_POST = require_http_methods(["GET", "HEAD", "POST"])
_TO_SEE = (
    Arrival.PROBABLE,
    Arrival.UNIDENTIFIED,
    Arrival.FOREIGN,
    Arrival.NOT_SENT,
    Arrival.TWICE,
    Arrival.CONFIRMED,
)


@require_safe
def contractor(request: HttpRequest) -> HttpResponse:
    """List shipments, those that lack something first, and how long each provider takes."""
    answers, lang = answers_of(request), language_of(request)
    shipments = sorted(answers.contractor.shipments, key=lambda one: one.settled)
    drawn = [
        (one, _shares(one), mark_safe(draw_turnaround(one.turnaround, one.provider, lang)))  # noqa: S308  # our drawing
        for one in answers.contractor.providers
    ]
    facts = {"shipments": shipments, "providers": drawn}
    return render(request, "contractor/contractor.html", facts)


@_GET_POST
def send(request: HttpRequest) -> HttpResponse:
    """Pack the van: which pieces, for what, with which hazards."""
    answers = answers_of(request)
    contaminants = [str(one.id) for one in RULES.contaminants()]
    form = SendForm(contaminants, request.POST or None)
    if request.method == "POST" and form.is_valid():
        manifest = form.manifest(answers.job)
        values = {"n": str(len(manifest.pieces)), "provider": manifest.provider, "id": manifest.id}
        about = tuple(one.component for one in manifest.pieces)
        if report(request, "year.contractor.sent", YearFact(fact=manifest), about=about,
                  values=values):  # fmt: skip
            return redirect("shipment", shipment=manifest.id)
    facts = {
        "form": form,
        "services": list(Service),
        "contaminants": contaminants,
        "present": list(Answer),
        "providers": list(dict.fromkeys(one.provider for one in answers.job.upkeep.manifests)),
        "by": actor_of(request),
        "pieces": request.GET.get("pieces", ""),
    }
    return render(request, "contractor/send.html", facts, status=422 if form.errors else 200)


@_GET_POST
def shipment(request: HttpRequest, shipment: str) -> HttpResponse:
    """Show one shipment, and take in what came out of the van."""
    answers = answers_of(request)
    found = _of(answers, shipment)
    form = ReceiveForm([kind.id for kind in KINDS], request.POST or None)
    if request.method == "POST" and form.is_valid():
        receipt = form.receipt(shipment, answers.job)
        values = {"n": str(len(receipt.pieces)), "id": shipment}
        if report(request, "year.contractor.received", YearFact(fact=receipt),
                  about=tuple(one.read for one in receipt.pieces if one.read),
                  values=values):  # fmt: skip
            return redirect("shipment", shipment=shipment)
    facts = _facts(answers, found) | {"form": form, "by": actor_of(request)}
    return render(request, "contractor/shipment.html", facts, status=422 if form.errors else 200)


@require_POST
def confirm(request: HttpRequest, shipment: str) -> HttpResponse:
    """Keep a named person's word on which piece it is."""
    answers = answers_of(request)
    _of(answers, shipment)
    form, receipts = WordForm(request.POST), answers.job.upkeep.receipts
    if not form.is_valid() or form.cleaned_data["receipt"] >= len(receipts):
        raise Http404
    given = form.cleaned_data
    word = Confirmed(
        receipt=receipts[given["receipt"]],
        line=given["line"],
        component=ComponentId(given["component"]),
        by=given["by"].strip(),
    )
    values = {"piece": given["component"], "by": word.by}
    report(request, "year.contractor.confirmed", YearFact(fact=word), about=(word.component,),
           values=values)  # fmt: skip
    return redirect("shipment", shipment=shipment)


@_GET_POST
def invoice(request: HttpRequest, shipment: str) -> HttpResponse:
    """Hold an invoice against what was sent, ordered, back and agreed."""
    answers = answers_of(request)
    found = _of(answers, shipment)
    form = InvoiceForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        came = form.invoice(shipment, answers.job)
        if report(request, "year.contractor.invoiced", YearFact(fact=came),
                  values={"number": came.number, "id": shipment}):  # fmt: skip
            return redirect("shipment-invoice", shipment=shipment)
    facts = {"result": found, "form": form, "services": list(Service)}
    return render(request, "contractor/invoice.html", facts, status=422 if form.errors else 200)


@require_safe
def manifest(request: HttpRequest, shipment: str) -> HttpResponse:
    """Print the manifest as it travels, and the form to count and sign when it comes back."""
    answers = answers_of(request)
    pdf = print_manifests([_of(answers, shipment).sheet], page_of(request, answers))
    return as_pdf(pdf, f"manifest-{shipment}")


def _shares(one: ProviderTime) -> list[tuple[str, int | None]]:
    """Return which share of the pieces is back within how many days."""
    return [(f"{share * 100:.0f} %", days) for share, days in one.turnaround.quantiles]


def _of(answers: Answers, name: str) -> ShipmentResult:
    for one in answers.contractor.shipments:
        if one.reconciled.manifest.id == name:
            return one
    raise Http404


def _facts(answers: Answers, found: ShipmentResult) -> dict[str, object]:
    pieces = {one.id: one for one in answers.job.components}
    receipts = answers.job.upkeep.receipts
    return {
        "result": found,
        "missing": [pieces[one] for one in found.reconciled.missing],
        "back": [pieces[one] for one in found.reconciled.back],
        "to_see": [
            (one, receipts[one.receipt].pieces[one.line], [pieces[name] for name in one.candidates])
            for one in found.reconciled.arrived
            if one.arrival in _TO_SEE
        ],
        "said": [one for one in found.said if one.message.startswith("contractor.missing.")],
        "kinds": [kind.id for kind in KINDS],
    }
