"""Which column of a list holds what, and how is that remembered?"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import BadInputError, Fault, KindId
from sootline.core.gear.catalogue import KINDS
from sootline.core.roster.dates import DateOrder
from sootline.core.roster.kinds import KIND_WORDS
from sootline.core.roster.statuses import STATUSES
from sootline.core.roster.tables import Table, fault
from sootline.core.roster.text import folded

MAPPING_VERSION = 1


class Field(StrEnum):
    """What a column may hold."""

    ID = "id"
    SERIAL = "serial"
    KIND = "kind"
    MEMBER = "member"
    CREW = "crew"
    ROLE = "role"
    PLACE = "place"
    SET = "set"
    SIZE = "size"
    CHEST = "chest"
    SLEEVE = "sleeve"
    WAIST = "waist"
    INSEAM = "inseam"
    HAND = "hand"
    FOOT = "foot"
    LENGTH = "length"
    RISE = "rise"
    CUT = "cut"
    WIDTH = "width"
    LETTER = "letter"
    MADE = "made"
    PURCHASED = "purchased"
    IN_SERVICE = "in-service"
    CLEANED = "cleaned"
    INSPECTED = "inspected"
    RETIRED = "retired"
    STATUS = "status"
    MAKER = "maker"
    STYLE = "style"
    LOT = "lot"
    EDITION = "edition"
    MASS = "mass"
    WASH_COUNT = "wash-count"
    EVENT = "event"
    DATE = "date"


_HEADERS = {
    Field.ID: "id; piece; piece id; piece number; item; item number; asset; asset number; "
    "asset tag; tag; barcode; inventory number; pieza; numero de inventario",
    Field.SERIAL: "serial; serial number; serial no; serial nr; sn; s n; serie; numero de serie; "
    "n de serie; no de serie; num serie",
    Field.KIND: "kind; type; gear type; item type; element; component; description; gear; "
    "tipo; clase; elemento; descripcion; prenda",
    Field.MEMBER: "member; member id; member code; member number; owner; assigned to; issued to; "
    "wearer; firefighter; badge; badge number; employee; employee number; id number; bombero; "
    "asignado a; miembro; portador",
    Field.CREW: "crew; shift; company; platoon; apparatus; turno; dotacion; guardia; compania",
    Field.ROLE: "role; rank; position; cargo; rango",
    Field.PLACE: "station; location; place; house; where; estacion; ubicacion; cuartel; lugar",
    Field.SET: "set; set number; set id; ensemble; juego; conjunto",
    Field.SIZE: "size; label size; talla; tamano",
    Field.CHEST: "chest; chest size; pecho",
    Field.SLEEVE: "sleeve; sleeve length; manga",
    Field.WAIST: "waist; waist size; cintura",
    Field.INSEAM: "inseam; inside leg; leg; entrepierna; largo de pierna",
    Field.HAND: "hand; hand size; glove size; mano",
    Field.FOOT: "foot; shoe size; boot size; pie; calzado",
    Field.LENGTH: "length; coat length; largo",
    Field.RISE: "rise; tiro",
    Field.CUT: "cut; corte",
    Field.WIDTH: "width; boot width; ancho",
    Field.LETTER: "letter; letter size; letra",
    Field.MADE: "made; made on; date made; manufactured; manufacture date; date of manufacture; "
    "manufacturing date; mfg date; mfd; mfr date; dom; d o m; date mfg; mfg; year made; "
    "date manufactured; month made; fabricado; fecha de fabricacion; fabricacion; f fabricacion",
    Field.PURCHASED: "purchased; purchase date; date purchased; bought; invoice date; invoice; "
    "fecha de compra; comprado; factura; fecha de factura",
    Field.IN_SERVICE: "in service; in service date; date in service; placed in service; "
    "put in service; first issued; issue date; issued; date issued; in service since; "
    "fecha de puesta en servicio; puesta en servicio; en servicio desde; fecha de entrega",
    Field.CLEANED: "advanced cleaning; last advanced cleaning; date of advanced cleaning; "
    "ultima limpieza avanzada; limpieza avanzada",
    Field.INSPECTED: "advanced inspection; last advanced inspection; date of advanced inspection; "
    "inspeccion avanzada; ultima inspeccion avanzada",
    Field.RETIRED: "retired; retired on; date retired; retirado el; fecha de baja",
    Field.STATUS: "status; state; condition; estado; situacion",
    Field.MAKER: "maker; manufacturer; brand; make; mfr; fabricante; marca",
    Field.STYLE: "style; model; style number; model number; modelo; estilo",
    Field.LOT: "lot; lot number; lot no; batch; lote; numero de lote",
    Field.EDITION: "edition; standard; standard edition; edicion; norma",
    Field.MASS: "mass; weight; dry weight; weight lb; weight lbs; weight kg; dry weight lb; "
    "dry weight kg; peso; peso kg; peso lb; peso en seco",
    Field.WASH_COUNT: "wash count; washes; number of washes; cleanings; times washed; lavados; "
    "numero de lavados",
    Field.EVENT: "event; act; what; evento; suceso",
    Field.DATE: "date; on; event date; fecha",
}  # fmt: skip
_FIELD_OF = {word.strip(): field for field, words in _HEADERS.items() for word in words.split(";")}
# Dates this program works out from others; a stated one is not believed.
WORKED_OUT = frozenset(
    (
        "retire by", "retire on", "retirement date", "retirement due", "expires", "expiration",
        "expiration date", "expiry", "expiry date", "end of life", "due", "next due",
        "next cleaning", "next inspection", "age", "years left", "vence", "fecha de vencimiento",
        "vencimiento", "edad",
    )
)  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class Column:
    """One column of a list.

    Args:
        header: the column's name as it stands in the list.
        kind: in a list with one line per person, whose piece the column speaks of ("coat").
    """

    header: str
    field: Field
    kind: str = ""


@dataclass(frozen=True, kw_only=True)
class Mapping:
    """How one department's list is read; kept beside its data for the next time.

    Args:
        version: of this form; an unknown version is refused.
        ignored: columns that are known and not read.
        kinds: what the department means by its own words for kinds.
        statuses: the same for status words; names of the program's own statuses.
        dates: in which order the list writes day and month.
        header_row: the row that names the columns; None is the first that is not empty.
    """

    version: int = MAPPING_VERSION
    columns: tuple[Column, ...] = ()
    ignored: tuple[str, ...] = ()
    kinds: tuple[tuple[str, tuple[KindId, ...]], ...] = ()
    statuses: tuple[tuple[str, str], ...] = ()
    dates: DateOrder | None = None
    encoding: str | None = None
    sheet: str | None = None
    header_row: int | None = None


def suggest_columns(header: Iterable[str]) -> tuple[Column, ...]:
    """Return what each column holds, judged by its name; a name that says nothing is left out."""
    found = (_column(name) for name in header)
    return tuple(column for column in found if column)


def place_columns(table: Table, mapping: Mapping) -> tuple[tuple[int, Column], ...]:
    """Return the columns of a table that are read, each with its position.

    Raises:
        BadInputError: the mapping names a column or a word that is not there, two columns hold
            the same thing, or nothing says of which kind the pieces are.
    """
    placed = _placed(table, mapping)
    faults = [*_mapping_faults(table, mapping), *_doubled(table, placed)]
    fields = {column.field for _, column in placed}
    in_kinds = any(column.kind for _, column in placed)
    if not faults and Field.KIND not in fields and Field.EVENT not in fields and not in_kinds:
        known = ", ".join(table.header)
        faults.append(fault(table.place(table.header_row), "roster.column.no_kind", known=known))
    if not faults and Field.EVENT in fields and not fields >= {Field.DATE}:
        faults.append(fault(table.place(table.header_row), "roster.column.no_date"))
    if faults:
        raise BadInputError(faults)
    return placed


def unread(table: Table, mapping: Mapping) -> tuple[str, ...]:
    """List the columns nothing is read from, though nobody said to leave them out."""
    read = {folded(column.header) for column in columns_of(table, mapping)}
    left = {folded(name) for name in mapping.ignored}
    return tuple(name for name in table.header if folded(name) not in read | left)


def columns_of(table: Table, mapping: Mapping) -> tuple[Column, ...]:
    """Return the remembered columns, or suggested ones where nothing is remembered."""
    if mapping.columns:
        return mapping.columns
    left = {folded(name) for name in mapping.ignored}
    return suggest_columns(name for name in table.header if folded(name) not in left)


def _column(header: str) -> Column | None:
    name = folded(header)
    if name in _FIELD_OF:
        return Column(header=header, field=_FIELD_OF[name])
    words = name.split()
    for cut in range(len(words) - 1, 0, -1):
        first, last = " ".join(words[:cut]), " ".join(words[cut:])
        for kind, rest in ((first, last), (last, first)):
            if kind in _KIND_HEADS and rest in _FIELD_OF:
                return Column(header=header, field=_FIELD_OF[rest], kind=kind)
    return None


_KINDS = frozenset(kind.id for kind in KINDS)
_KIND_HEADS = frozenset((*KIND_WORDS, "boots", "boot", "botas"))


def _placed(table: Table, mapping: Mapping) -> tuple[tuple[int, Column], ...]:
    position = {folded(name): index for index, name in enumerate(table.header)}
    return tuple(
        (position[folded(column.header)], column)
        for column in columns_of(table, mapping)
        if folded(column.header) in position
    )


def _mapping_faults(table: Table, mapping: Mapping) -> Iterator[Fault]:
    if mapping.version != MAPPING_VERSION:
        limit = MAPPING_VERSION
        yield fault("mapping", "roster.mapping.version", value=mapping.version, limit=limit)
    there = {folded(name) for name in table.header}
    for column in mapping.columns:
        if folded(column.header) not in there:
            place, known = table.place(table.header_row), ", ".join(table.header)
            yield fault(place, "roster.mapping.absent", column=column.header, known=known)
    for word, kinds in mapping.kinds:
        unknown = [kind for kind in kinds if kind not in _KINDS]
        if unknown or not kinds:
            known, value = ", ".join(sorted(_KINDS)), ", ".join(unknown)
            yield fault("mapping", "roster.mapping.kind", word=word, value=value, known=known)
    for word, status in mapping.statuses:
        if status not in STATUSES:
            known = ", ".join(STATUSES)
            yield fault("mapping", "roster.mapping.status", word=word, value=status, known=known)


def _doubled(table: Table, placed: Iterable[tuple[int, Column]]) -> Iterator[Fault]:
    first: dict[tuple[Field, str], str] = {}
    for index, column in placed:
        key = (column.field, folded(column.kind))
        if key in first:
            place = table.place(table.header_row, index)
            values = {"first": first[key], "second": column.header, "field": column.field.value}
            yield fault(place, "roster.column.twice", **values)
        first.setdefault(key, column.header)
