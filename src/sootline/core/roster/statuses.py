"""In what state is a piece, by the word a list gives it?

A word that keeps a piece off people without saying why ("out of service", "on hold") comes in as
an open hold with its question: the safest reading, until a named person answers.
"""

from dataclasses import dataclass
from difflib import get_close_matches

from sootline.core.gear.state import Custody, Life
from sootline.core.roster.text import folded
from sootline.core.roster.unreadable import UnreadableCellError


@dataclass(frozen=True, kw_only=True)
class Status:
    """What a status word says.

    Args:
        custody: None leaves it to the owner: with the member, or on the spare rack.
        hold: the question of the hold it comes in with, as a message id; empty holds nothing.
    """

    life: Life = Life.IN_SERVICE
    custody: Custody | None = None
    hold: str = ""


STATUSES: dict[str, Status] = {
    "in service": Status(),
    "reserve": Status(life=Life.RESERVE, custody=Custody.SPARE_RACK),
    "spare": Status(custody=Custody.SPARE_RACK),
    "training only": Status(life=Life.TRAINING_ONLY),
    "retired": Status(life=Life.RETIRED),
    "disposed": Status(life=Life.DISPOSED),
    "at repair": Status(custody=Custody.REPAIR),
    "at contractor": Status(custody=Custody.CONTRACTOR),
    "on loan": Status(custody=Custody.LOAN),
    "evidence": Status(custody=Custody.EVIDENCE),
    "not seen": Status(custody=Custody.NOT_SEEN),
    "out of service": Status(hold="roster.ask.out_of_service"),
    "on hold": Status(hold="roster.ask.on_hold"),
}
_WORDS = {
    "in service": "in service; in use; active; issued; assigned; current; front line; frontline; "
    "primary; en servicio; en uso; activo; activa; asignado; asignada",
    "reserve": "reserve; in reserve; sealed reserve; storage; stored; secondary; second set; "
    "reserva; en reserva; almacenado",
    "spare": "spare; loaner; pool; available; repuesto; disponible",
    "training only": "training only; training; solo entrenamiento; entrenamiento; capacitacion",
    "retired": "retired; expired; condemned; retirado; retirada; dado de baja; dada de baja; baja",
    "disposed": "disposed; destroyed; scrapped; discarded; desechado; desechada; destruido",
    "at repair": "at repair; in repair; out for repair; repair; en reparacion",
    "at contractor": "at contractor; at cleaner; out for cleaning; at laundry; con el contratista",
    "on loan": "on loan; loaned; lent; prestado; prestada; en prestamo",
    "evidence": "evidence; evidencia",
    "not seen": "not seen; lost; missing; not found; perdido; perdida; extraviado; extraviada",
    "out of service": "out of service; oos; o o s; not in service; fuera de servicio",
    "on hold": "on hold; hold; quarantine; quarantined; en espera; cuarentena; en cuarentena",
}
_STATUS_OF = {word.strip(): name for name, words in _WORDS.items() for word in words.split(";")}


def read_status(text: str, own: dict[str, str]) -> Status:
    """Return what a status word says; the department's own words come first.

    Args:
        own: what the department means by its own words, folded, as keys of STATUSES.

    Raises:
        UnreadableCellError: the word is not known.
    """
    word = folded(text)
    status = own.get(word) or _STATUS_OF.get(word)
    if status is None:
        near = get_close_matches(word, [*own, *_STATUS_OF], n=3, cutoff=0.6)
        raise UnreadableCellError("roster.status.unknown", near=", ".join(near or STATUSES))
    return STATUSES[status]
