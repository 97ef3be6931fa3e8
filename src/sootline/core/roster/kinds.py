"""Which kinds of component does a list mean by a word?

A list usually has one line for a whole coat, while shell and liner are washed, dated and retired
one by one. Such a word names several kinds. The drag device is not among them: whether the coat
has one is for eyes to see, so it goes on the worklist. A bare "boots" names none: leather and
rubber are washed differently, and the officer says once which it is.
"""

from difflib import get_close_matches

from sootline.core.basis import KindId
from sootline.core.roster.text import folded
from sootline.core.roster.unreadable import UnreadableCellError

Kinds = tuple[KindId, ...]

_WORDS: dict[str, str] = {
    "coat-shell coat-liner": "coat; coats; jacket; turnout coat; bunker coat; structural coat; "
    "fire coat; turnout jacket; bunker jacket; chaqueta; chaqueton; saco; abrigo; casaca; chamarra",
    "coat-shell": "coat shell; coat outer shell; outer shell coat; jacket shell; "
    "capa exterior de chaqueton",
    "coat-liner": "coat liner; jacket liner; liner coat; coat inner liner; coat thermal liner; "
    "forro de chaqueton; forro chaqueton",
    "drag-device": "drag device; drag rescue device; drd; drag strap; dispositivo de arrastre",
    "trouser-shell trouser-liner": "trousers; trouser; pants; pant; bunker pants; turnout pants; "
    "structural pants; fire pants; bunker trousers; turnout trousers; pantalon; pantalones",
    "trouser-shell": "trouser shell; pants shell; pant shell; trouser outer shell; "
    "pant outer shell; capa exterior de pantalon",
    "trouser-liner": "trouser liner; pants liner; pant liner; trouser thermal liner; "
    "forro de pantalon; forro pantalon",
    "coverall-shell coverall-liner": "coverall; coveralls; overol; mono",
    "coverall-shell": "coverall shell",
    "coverall-liner": "coverall liner",
    "suspenders": "suspenders; braces; tirantes",
    "knee-pads": "knee pads; knee pad; knee inserts; rodilleras",
    "hood": "hood; hoods; knit hood; flash hood; monja; capucha; caperuza",
    "hood-particulate": "particulate hood; particulate blocking hood; hood particulate; "
    "barrier hood; capucha con barrera de particulas",
    "gloves": "gloves; glove; glove pair; structural gloves; fire gloves; guantes; guante",
    "boots-leather": "leather boots; boots leather; leather boot; botas de cuero; boots leather",
    "boots-rubber": "rubber boots; boots rubber; rubber boot; botas de goma; botas de hule; "
    "botas de caucho",
    "helmet-shell helmet-padding ear-neck-cover": "helmet; helmets; fire helmet; casco; cascos",
    "helmet-shell": "helmet shell",
    "helmet-padding": "helmet padding; helmet suspension; helmet liner; impact liner",
    "ear-neck-cover": "ear cover; ear covers; ear flaps; neck cover; cubrenuca; ear neck cover",
    "chin-strap": "chin strap; barbiquejo; barboquejo",
    "face-shield": "face shield; faceshield; visor",
    "goggles": "goggles; gafas; antiparras",
    "front-piece": "front piece; helmet front",
    "wristlets": "wristlets; wristlet; munequeras",
    "name-panel": "name panel; name patch",
    "mic-strap": "mic strap; radio mic strap",
    "insoles": "insoles; plantillas",
    "escape-belt": "escape belt; ladder belt",
    "escape-kit": "escape kit; bailout kit; kit de escape",
    "mask": "mask; scba mask; facepiece; face piece; mascara",
    "station-wear": "station wear",
    "wildland-wear": "wildland coat; wildland pants; wildland gear",
    "rescue-wear": "rescue coat; rescue pants; extrication gear",
}


def _kinds(ids: str) -> Kinds:
    return tuple(KindId(kind) for kind in ids.split())


_CHOICES: dict[str, Kinds] = {
    word: _kinds(ids)
    for ids, words in (
        ("boots-leather boots-rubber", ("boots", "boot", "fire boots", "botas", "bota")),
        ("coat-liner trouser-liner", ("liner", "thermal liner", "inner liner", "forro")),
        ("coat-shell trouser-shell", ("shell", "outer shell", "capa exterior")),
    )
    for word in words
}
KIND_WORDS: dict[str, Kinds] = {
    word.strip(): _kinds(ids) for ids, words in _WORDS.items() for word in words.split(";")
}
KIND_WORDS |= {folded(kind): (kind,) for kinds in [*KIND_WORDS.values()] for kind in kinds}


def read_kinds(text: str, own: dict[str, Kinds]) -> Kinds:
    """Return the kinds a word names; the department's own words come first.

    Args:
        own: what the department means by its own words, folded.

    Raises:
        UnreadableCellError: the word is not known, or may be one of several kinds.
    """
    word = folded(text)
    kinds = own.get(word) or KIND_WORDS.get(word)
    if kinds:
        return kinds
    if word in _CHOICES:
        raise UnreadableCellError("roster.kind.several", known=", ".join(_CHOICES[word]))
    near = get_close_matches(word, [*own, *KIND_WORDS, *_CHOICES], n=3, cutoff=0.6)
    if near:
        raise UnreadableCellError("roster.kind.near", near=", ".join(near))
    raise UnreadableCellError("roster.kind.unknown")
