"""On which outline, and where on it, can a finding be placed? Drawn by us, from no maker's sheet.

Left and right are the wearer's. A place is kept as "figure/spot"; words somebody typed stay words.
"""

from dataclasses import dataclass

from sootline.core.basis import KindId
from sootline.core.gear import Element, find_kind


@dataclass(frozen=True, kw_only=True)
class Spot:
    """One place on a figure.

    Args:
        number: as the drawing shows it.
        x, y: where the number stands in the drawing, of 200 by 220.
    """

    id: str
    number: int
    x: int
    y: int


@dataclass(frozen=True, kw_only=True)
class Figure:
    """One outline with its places."""

    id: str
    paths: tuple[str, ...]
    spots: tuple[Spot, ...]


def _figure(
    name: str, paths: tuple[str, ...], *spots: tuple[str, int, int], first: int = 1
) -> Figure:
    placed = tuple(
        Spot(id=spot, number=number, x=x, y=y) for number, (spot, x, y) in enumerate(spots, first)
    )
    return Figure(id=name, paths=paths, spots=placed)


_COAT = (
    "M75 24 L60 30 L38 44 L16 128 L40 136 L56 86 L56 204 L144 "
    "204 L144 86 L160 136 L184 128 L162 44 L140 30 L125 24"
)
_LEGS = "M58 20 L142 20 L152 206 L110 206 L100 84 L90 206 L48 206 Z"
_COAT_FRONT = _figure(
    "coat-front",
    (
        f"{_COAT} L112 36 L88 36 Z",
        "M100 36 L100 204",
        "M64 150 H92 V182 H64 Z M108 150 H136 V182 H108 Z",
        "M20 114 L44 122 M180 114 L156 122",
    ),
    ("coat-front/collar", 100, 18),
    ("coat-front/right-sleeve", 44, 84),
    ("coat-front/left-sleeve", 156, 84),
    ("coat-front/right-cuff", 26, 146),
    ("coat-front/left-cuff", 174, 146),
    ("coat-front/chest", 78, 84),
    ("coat-front/closure", 100, 116),
    ("coat-front/pockets", 122, 166),
    ("coat-front/hem", 78, 212),
)
_COAT_BACK = _figure(
    "coat-back",
    (f"{_COAT} Q100 38 75 24 Z", "M56 62 H144", "M56 186 H144"),
    ("coat-back/yoke", 100, 48),
    ("coat-back/left-sleeve-behind", 44, 84),
    ("coat-back/right-sleeve-behind", 156, 84),
    ("coat-back/back", 100, 116),
    ("coat-back/tail", 100, 196),
    first=10,
)
_TROUSERS_FRONT = _figure(
    "trousers-front",
    (
        _LEGS,
        "M100 20 V84",
        "M57 34 H143",
        "M54 104 H92 V136 H52 Z M108 104 H146 L148 136 H108 Z",
        "M49 192 H91 M109 192 H151",
    ),
    ("trousers-front/waist", 72, 28),
    ("trousers-front/fly", 100, 58),
    ("trousers-front/right-knee", 72, 120),
    ("trousers-front/left-knee", 128, 120),
    ("trousers-front/right-leg", 72, 164),
    ("trousers-front/left-leg", 130, 164),
    ("trousers-front/right-cuff", 70, 204),
    ("trousers-front/left-cuff", 132, 204),
)
_TROUSERS_BACK = _figure(
    "trousers-back",
    (_LEGS, "M100 20 V84", "M57 34 H143"),
    ("trousers-back/waist-behind", 78, 28),
    ("trousers-back/seat", 100, 66),
    ("trousers-back/left-leg-behind", 72, 140),
    ("trousers-back/right-leg-behind", 130, 140),
    first=9,
)
_HOOD = _figure(
    "hood",
    (
        "M60 40 Q100 4 140 40 L146 120 L176 190 Q100 216 24 190 L54 120 Z",
        "M100 52 A26 34 0 1 0 100.1 52",
    ),
    ("hood/crown", 100, 34),
    ("hood/opening", 100, 124),
    ("hood/side", 62, 96),
    ("hood/bib", 100, 178),
)
_HELMET = _figure(
    "helmet",
    (
        "M30 116 Q34 34 100 34 Q166 34 170 116 Z",
        "M12 116 H188 L196 130 H4 Z",
        "M100 34 V116",
        "M56 130 L50 176 Q100 200 150 176 L144 130",
        "M70 184 Q100 224 130 184",
    ),
    ("helmet/crown", 66, 76),
    ("helmet/brim", 168, 124),
    ("helmet/inside", 130, 92),
    ("helmet/ear-cover", 100, 158),
    ("helmet/strap", 100, 204),
)
_GLOVES = _figure(
    "gloves",
    (
        "M60 200 L56 140 L40 84 Q40 72 50 76 L66 112 L66 32 Q74 20 "
        "82 32 L86 96 L90 20 Q100 8 108 20 L108 96 "
        "L116 30 Q126 20 132 32 L128 108 L140 60 Q150 54 154 66 "
        "L144 140 L140 200 Z",
        "M58 168 H142",
    ),
    ("gloves/thumb", 44, 104),
    ("gloves/fingers", 100, 58),
    ("gloves/palm", 100, 128),
    ("gloves/back-of-hand", 126, 146),
    ("gloves/wristlet", 100, 184),
)
_BOOTS = _figure(
    "boots",
    (
        "M70 16 L126 16 L124 120 Q128 150 166 160 Q186 166 184 190 L62 190 Q58 150 68 120 Z",
        "M60 190 H186 V204 H60 Z",
        "M74 16 V40 M122 16 V40",
    ),
    ("boots/pull-loops", 98, 30),
    ("boots/shaft", 96, 86),
    ("boots/heel", 78, 168),
    ("boots/toe", 162, 178),
    ("boots/sole", 120, 198),
)
_BY_ELEMENT: dict[Element, tuple[Figure, ...]] = {
    Element.COAT: (_COAT_FRONT, _COAT_BACK),
    Element.TROUSERS: (_TROUSERS_FRONT, _TROUSERS_BACK),
    Element.COVERALL: (_COAT_FRONT, _COAT_BACK, _TROUSERS_FRONT, _TROUSERS_BACK),
    Element.HOOD: (_HOOD,),
    Element.HELMET: (_HELMET,),
    Element.GLOVES: (_GLOVES,),
    Element.BOOTS: (_BOOTS,),
}
FIGURES = {one.id: one for some in _BY_ELEMENT.values() for one in some}


def figures_of(kind: KindId) -> tuple[Figure, ...]:
    """Return the outlines of a kind of piece; none where there is nothing to draw."""
    return _BY_ELEMENT.get(find_kind(kind).element, ())


def is_spot(place: str) -> bool:
    """Whether a place is one on an outline."""
    figure = FIGURES.get(place.partition("/")[0])
    return figure is not None and place in [one.id for one in figure.spots]
